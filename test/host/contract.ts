import { strFromU8 } from "fflate";
import { ALL_ROWS, UNDECIDED } from "../../src/headings/questions";
import { DEMO_SURVEY } from "../../src/cli/demoSurvey";
import type { BookPort, WrittenEdits } from "../../src/host/port";
import { typedFormula } from "../../src/workbook/formulaText";
import { bookOf, type Book } from "../../src/workbook/book";
import { cellName, parseCell } from "../../src/workbook/cellRef";
import { cellLooksOf } from "../../src/workbook/cellLooks";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import { withBoards } from "../../src/filling/boardColumns";
import { PREFERRED_BOARD } from "../../src/settings/definitions/materialSettings";
import { csvToWorkbook } from "../../src/filling/fillCsv";
import { fillWorkbook } from "../../src/filling/fillWorkbook";
import { headedFigure } from "../../src/filling/headedFigure";
import { openWorkbook, type Workbook } from "../../src/workbook/openWorkbook";
import { readCsv } from "../../src/workbook/readCsv";
import { readSheet } from "../../src/workbook/readSheet";
import { sheetLook } from "../../src/workbook/sheetLook";
import { surveyEdits, type FillOptions } from "../../src/filling/surveyEdits";
import { writeCsv } from "../../src/workbook/writeCsv";
import { readBookSurvey } from "../../src/filling/readBookSurvey";
import { packageOf, partsOf } from "../workbook/made/package";
import { livedIn } from "../workbook/made/livedIn";

/** What a cell holds: a formula as it is typed, or a value; with its number format. */
export type Held = readonly [content: string | number | boolean, format: string];

/** A workbook that is open in a host. */
export interface OpenInHost {
  readonly port: Pick<BookPort, "read" | "write">;
  /** The cells of a sheet that hold something, by name. */
  readonly held: (sheet: string) => Promise<ReadonlyMap<string, Held>>;
  readonly close: () => Promise<void>;
}

/** What every host must do alike: columns land where the command line puts them, with the same formulas and formats. */
export function contractOf(
  host: string,
  open: (bytes: Uint8Array) => Promise<OpenInHost>,
  files: readonly string[] = Object.keys(FILES),
): void {
  describe.each(Object.entries(FILES).filter(([name]) => files.includes(name)))(`${host}, %s`, (_, bytes) => {
    let at: OpenInHost;
    const own = bytes();
    const file = openWorkbook(own);
    const first = file.sheets[0]!.name;
    const filled = openWorkbook(fillWorkbook(file, FILL).edit.bytes);
    beforeAll(async () => {
      at = await open(own);
    });
    afterAll(() => at.close());

    const add = async (figures: readonly string[] = FIGURES): Promise<WrittenEdits> =>
      at.port.write(surveyEdits(await at.port.read(), { ...FILL, figures }).edits);
    const names = async () => plainNames((await at.port.read()).names);
    const state = async () => {
      const { tables, sheets } = await at.port.read();
      return { held: sorted(await at.held(first)), names: await names(), tables, sheets: sheets.length };
    };

    test("it reads the sheets, tables, names and cells that a file holds", async () => {
      const theirs = bookOf(file);
      const book = await at.port.read();
      expect(book.sheets).toEqual(theirs.sheets.filter(({ cells }) => cells).map(plainSheet));
      expect(book.tables.map(plainTable)).toEqual(theirs.tables.map(plainTable));
      expect(plainNames(book.names)).toEqual(plainNames(theirs.names));
      for (const { name } of book.sheets) {
        const ours = book.grid(name).rows;
        const calculated = calculatedIn(file, name);
        const enteredIn = (rows: typeof ours) =>
          rows.flatMap((row, r) =>
            row.flatMap((value, c) => {
              const cell = cellName(r + 1, c + 1);
              return value === null || calculated.has(cell) ? [] : [[cell, number(value)]];
            }),
          );
        expect(enteredIn(ours)).toEqual(enteredIn(theirs.grid(name).rows));
        expect(book.grid(name.toUpperCase(), { lastRow: 2 }).rows).toEqual(ours.slice(0, 2));
      }
      expect(() => book.grid("nowhere")).toThrow('sheet: got "nowhere"');
    });

    // Each write takes a browser a second: the tests of one state share it, and the last takes all back.
    describe("with columns added", () => {
      let before: Awaited<ReturnType<typeof state>>;
      let step: WrittenEdits;
      beforeAll(async () => {
        before = await state();
        step = await add();
      });

      test("columns go where the command line puts them, with its formulas and number formats", async () => {
        const { columns, notes } = fillWorkbook(file, FILL).edit;
        expect([step.columns, step.notes]).toEqual([columns, notes]);
        for (const { name } of filled.sheets.filter(({ cells }) => cells)) {
          const spilled = spilledIn(filled, name);
          expect(sorted(await at.held(name), spilled)).toEqual(sorted(heldInFile(filled, name), spilled));
        }
        expect((await at.port.read()).tables.map(plainTable)).toEqual(filled.tables.map(plainTable));
        expect(await names()).toEqual(plainNames(filled.names));
      });

      test("a name grows from the range that was read, and a number never goes over a formula", async () => {
        const settings = async () => (await at.port.read()).names.find(({ name }) => name === "settings")!.refersTo;
        const read = await settings();
        const after = read.replace(/\d+$/, (last) => String(Number(last) + 1));
        const grow = (grownFrom: string) =>
          at.port.write({ names: [{ name: "settings", refersTo: after, grownFrom }] });
        await (await grow(after)).undo();
        expect(await settings()).toBe(read);
        const grown = await grow(read);
        expect(await settings()).toBe(after);
        await grown.undo();
        expect(await settings()).toBe(read);
        const [name] = [...(await at.held(first))].find(([, [content]]) => String(content).startsWith("="))!;
        const cell = { sheet: first, ...parseCell(name)!, content: 1, typed: true } as const;
        await expect(at.port.write({ cells: [cell] })).rejects.toThrow(`a formula in ${name}`);
      });

      describe("and written a second time", () => {
        let between: typeof before;
        let second: WrittenEdits;
        beforeAll(async () => {
          between = await state();
          second = await add(FEWER);
        });

        test("a second run writes its columns in place, and drops those that are no longer asked for", async () => {
          const twice = fillWorkbook(filled, { ...FILL, figures: FEWER }).edit;
          expect(second.columns).toEqual(twice.columns);
          expect(second.columns.every(({ replaced }) => replaced)).toBe(true);
          const now = openWorkbook(twice.bytes);
          expect(sorted(await at.held(first))).toEqual(sorted(heldInFile(now, first)));
          expect((await at.port.read()).tables.map(plainTable)).toEqual(now.tables.map(plainTable));
        });

        test("steps taken back, the last first, leave the workbook as it was", async () => {
          await expect(step.undo()).rejects.toThrow("takes back the last step first");
          await second.undo();
          expect(await state()).toEqual(between);
          await step.undo();
          expect(await state()).toEqual(before);
          expect(before.sheets).toBe(file.sheets.length);
        });
      });
    });
  });

  test.each([
    ["1900", false, ["000042", "2024-03-08", "8/3", "1 1/2", "MS 7"]],
    ["1904", true, ["000042", "2028-03-09", "9/3", "1 1/2", "MS 7"]],
  ])(`${host}, identifiers are as displayed, dates counted from %s`, async (_, date1904, expected) => {
    const bytes = formattedIdentifiers(date1904);
    const at = await open(bytes);
    const identifiers = (book: Book) =>
      FORMATTED.map((_format, i) => {
        const { sized } = readBookSurvey(book, { sheet: `Sheet ${i}`, recognise: {}, settings: ["unit=mm"] });
        return sized.survey.items[0]!.identifier;
      });
    expect(identifiers(bookOf(openWorkbook(bytes)))).toEqual(expected);
    expect(identifiers(await at.port.read())).toEqual(expected);
    await at.close();
  });
}

/** The workbook with its dates counted from 1904. */
function withCalendarOf1904(bytes: Uint8Array): Uint8Array {
  const parts = partsOf(bytes);
  const book = strFromU8(parts["xl/workbook.xml"]!);
  expect(book).not.toContain("<workbookPr");
  return packageOf({ ...parts, "xl/workbook.xml": book.replace("<sheets>", '<workbookPr date1904="1"/><sheets>') });
}

/** Identifiers that a number format makes of numbers, one sheet a format. */
const FORMATTED: readonly (readonly [format: string, number: number])[] = [
  ["000000", 42],
  ["yyyy-mm-dd", 45_359],
  ["d/m", 45_359],
  ["# ?/?", 1.5],
  ['"MS "0', 7],
];

function formattedIdentifiers(date1904: boolean): Uint8Array {
  const [first, ...more] = FORMATTED.map(([format, number], i) => ({
    name: `Sheet ${i}`,
    rows: [
      ["shelfmark", "height mm", "width mm", "depth mm", "enclosure"],
      [number, 300, 210, 40, "tray"],
    ],
    formats: [format],
  }));
  const bytes = createWorkbook([first!, ...more]);
  return date1904 ? withCalendarOf1904(bytes) : bytes;
}

export const FIGURES = ["outside height", "outside width", "caliper", "mass", "cautions", "problem"];
/** The headings of what a fill adds: a column for the user's choice of board, then the figures with their board first. */
export const headingsOf = (figures: readonly string[]): readonly string[] => [
  PREFERRED_BOARD,
  ...withBoards(figures).map((name) => headedFigure(name, "mm")),
];
const FEWER = ["outside height", "outside width", "problem"];
export const FILL: FillOptions = {
  figures: FIGURES,
  settings: [],
  recognise: { words: [{ word: ALL_ROWS, meaning: UNDECIDED }] },
  values: false,
  cutList: false,
};

const BESIDE = [
  ["Shelf survey", null, null, null],
  [null, null, null, null],
  ["shelfmark", "height mm", "width mm", "depth mm"],
  ["B 1", 300, 210, 40],
  ["B 2", 250.5, 180, 30],
  ["B 3", null, 90, 12],
];

/** Surveys in a table, in bare cells, and in a workbook that has been lived in. */
export const FILES: Readonly<Record<string, () => Uint8Array>> = {
  "a survey in a table": () => csvToWorkbook(readCsv(writeCsv(DEMO_SURVEY.slice(0, 12))), {}),
  "a survey in bare cells": () => createWorkbook([{ name: "Shelves of 2024", rows: BESIDE, headingRow: 3 }]),
  "a survey with totals and merged cells": livedIn,
};

/** The cells of a file as a host would tell them. */
export function heldInFile(workbook: Workbook, sheet: string): ReadonlyMap<string, Held> {
  const grid = readSheet(workbook, sheet, { formulas: true });
  const { styles } = sheetLook(workbook, sheet);
  const looks = cellLooksOf(workbook);
  const held = new Map<string, Held>();
  const put = (name: string, content: string | number | boolean): void => {
    const { row, column } = parseCell(name)!;
    const style = styles.get(row)?.get(column);
    held.set(name, [content, style === undefined ? "General" : looks[style]!.format]);
  };
  grid.rows.forEach((row, r) =>
    row.forEach((value, c) => {
      const plain = number(value);
      if (plain !== null) put(cellName(r + 1, c + 1), plain);
    }),
  );
  for (const [name, formula] of grid.formulas) put(name, `=${typedFormula(formula)}`);
  return held;
}

function plainTable({ name, sheet, area, headerRow, totalsRow, columns }: Book["tables"][number]) {
  return { name, sheet, area, headerRow, totalsRow, columns };
}

/** Each name with its sheet, if only that knows it, its comment and whether it is hidden. */
function plainNames(names: Book["names"]): readonly string[] {
  return names.map(({ name, sheet, comment, hidden }) => JSON.stringify([name, sheet, comment, hidden])).sort();
}

function plainSheet({ name, state, cells }: { name: string; state: string; cells: boolean }) {
  return { name, state, cells };
}

/** A date as the number that a sheet keeps, an error as its text. */
function number(value: unknown): string | number | boolean | null {
  if (typeof value !== "object" || value === null) return value as string | number | boolean | null;
  return "error" in value ? (value.error as string) : (value as { serial: number }).serial;
}

function sorted(held: ReadonlyMap<string, Held>, but: ReadonlySet<string> = new Set()) {
  return [...held].filter(([name]) => !but.has(name)).sort(([a], [b]) => (a < b ? -1 : 1));
}

/** Cells that the array formula of another fills: some hosts list them, some do not. */
function spilledIn(workbook: Workbook, sheet: string): ReadonlySet<string> {
  const spilled = new Set<string>();
  for (const [row, cells] of sheetLook(workbook, sheet).formulas)
    for (const [column, { fills }] of cells)
      for (let r = fills?.top ?? 1; r <= (fills?.bottom ?? 0); r++)
        for (let c = fills!.left; c <= fills!.right; c++) if (r !== row || c !== column) spilled.add(cellName(r, c));
  return spilled;
}

/** Cells whose value a host may have calculated again. */
function calculatedIn(workbook: Workbook, sheet: string): ReadonlySet<string> {
  const { formulas } = readSheet(workbook, sheet, { formulas: true });
  return new Set([...formulas.keys(), ...spilledIn(workbook, sheet)]);
}
