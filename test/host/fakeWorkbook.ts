import { typedFormula } from "../../src/workbook/formulaText";
import { overlap, parseCell, sheetArea, type Area } from "../../src/workbook/cellRef";
import { cellLooksOf } from "../../src/workbook/cellLooks";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { readSheet } from "../../src/workbook/readSheet";
import { sheetLook } from "../../src/workbook/sheetLook";
import { OfficeError } from "./wire";

/** A cell as Excel keeps it. */
export interface FakeCell {
  formula?: string;
  value: string | number | boolean;
  format: string;
  bold: boolean;
}

export interface FakeSheet {
  name: string;
  visibility: "Visible" | "Hidden" | "VeryHidden";
  locked: boolean;
  /** By row, then by column. */
  cells: Map<number, Map<number, FakeCell>>;
  widths: Map<number, number>;
  /** Lists to choose from: where, by what formula, and whether another text is refused. */
  lists: { readonly area: Area; readonly source: string; refuses: boolean }[];
  merged: readonly Area[];
  /** Charts, in points from the first cell. */
  charts: readonly FakeChart[];
  filter: Area | undefined;
  filtered: boolean;
  /** What the filter goes by, column by column of its own. */
  criteria?: readonly unknown[];
  only?: FakeCriterion | undefined;
  frozen: number;
  frozenColumns: number;
}

export interface FakeChart {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface FakeTable {
  name: string;
  sheet: FakeSheet;
  area: Area;
  headers: boolean;
  totals: boolean;
  only?: FakeCriterion | undefined;
}

/** What a filter lets through, by the number of its column from 0. */
export interface FakeCriterion {
  readonly index: number;
  readonly criterion: string;
}

export interface FakeColumn {
  readonly table: FakeTable;
  readonly index: number;
  readonly name: string;
}

export interface FakeName {
  name: string;
  formula: string;
  comment: string;
  visible: boolean;
  /** The sheet that alone knows it. */
  scope?: string;
}

/** A workbook as it lies open in Excel, with what it does to what is entered; it calculates nothing. */
export interface FakeWorkbook {
  sheets: FakeSheet[];
  tables: FakeTable[];
  names: FakeName[];
  locked: boolean;
  date1904: boolean;
  calculation: "Automatic" | "Manual";
  active: { sheet: string; row: number; column: number } | undefined;
}

export const STANDARD_WIDTH = 48;
export const STANDARD_HEIGHT = 15;

export function fakeWorkbook(bytes: Uint8Array): FakeWorkbook {
  const workbook = openWorkbook(bytes);
  const looks = cellLooksOf(workbook);
  const sheets = workbook.sheets.map((info): FakeSheet => {
    const sheet = blankSheet(info.name);
    const grid = readSheet(workbook, info.name, { formulas: true });
    const look = sheetLook(workbook, info.name);
    for (const [row, cells] of look.styles)
      for (const [column, style] of cells) {
        const { format, bold } = looks[style]!;
        Object.assign(cellOf(sheet, row, column), { format, bold });
      }
    grid.rows.forEach((cells, r) =>
      cells.forEach((value, c) => {
        if (value === null) return;
        const plain = typeof value === "object" ? ("error" in value ? value.error : value.serial) : value;
        cellOf(sheet, r + 1, c + 1).value = plain;
      }),
    );
    for (const [name, formula] of grid.formulas) {
      const { row, column } = parseCell(name)!;
      cellOf(sheet, row, column).formula = `=${typedFormula(formula)}`;
    }
    const visibility = ({ visible: "Visible", hidden: "Hidden", veryHidden: "VeryHidden" } as const)[info.state];
    return { ...sheet, visibility, locked: grid.locked, merged: grid.merged, filter: look.filter };
  });
  return {
    sheets,
    tables: workbook.tables.map((table) => ({
      name: table.name,
      sheet: sheets.find(({ name }) => name === table.sheet)!,
      area: table.area,
      headers: table.headerRow,
      totals: table.totalsRow,
    })),
    names: workbook.names.map(({ name, refersTo, comment, hidden, sheet }) => ({
      name,
      formula: `=${refersTo}`,
      comment,
      visible: !hidden,
      ...(sheet === undefined ? {} : { scope: sheet }),
    })),
    locked: workbook.structureLocked,
    date1904: workbook.date1904,
    calculation: "Automatic",
    active: { sheet: sheets[0]!.name, row: 1, column: 1 },
  };
}

export function blankSheet(name: string): FakeSheet {
  return {
    name,
    visibility: "Visible",
    locked: false,
    cells: new Map(),
    widths: new Map(),
    lists: [],
    merged: [],
    charts: [],
    filter: undefined,
    filtered: false,
    frozen: 0,
    frozenColumns: 0,
  };
}

export function cellOf(sheet: FakeSheet, row: number, column: number): FakeCell {
  let cells = sheet.cells.get(row);
  if (!cells) sheet.cells.set(row, (cells = new Map<number, FakeCell>()));
  let cell = cells.get(column);
  if (!cell) cells.set(column, (cell = { value: "", format: "General", bold: false }));
  return cell;
}

/** The rectangle around all cells that hold something. */
export function usedArea(sheet: FakeSheet): Area | undefined {
  const area = { top: Infinity, left: Infinity, bottom: 0, right: 0 };
  for (const [row, cells] of sheet.cells)
    for (const [column, { value, formula }] of cells) {
      if (value === "" && formula === undefined) continue;
      area.top = Math.min(area.top, row);
      area.bottom = Math.max(area.bottom, row);
      area.left = Math.min(area.left, column);
      area.right = Math.max(area.right, column);
    }
  return area.bottom === 0 ? undefined : area;
}

/** Enters something as a user would type it: null leaves the cell alone. */
export function enter(cell: FakeCell, typed: unknown): void {
  if (typed === null) return;
  delete cell.formula;
  if (typeof typed !== "string") cell.value = typed as number | boolean;
  else if (typed.startsWith("'")) cell.value = typed.slice(1);
  else if (cell.format === "@") cell.value = typed;
  else if (/^[=+\-@]./.test(typed) && Number.isNaN(Number(typed))) {
    if (/_xldudf_|_xlfn\./i.test(typed)) throw new OfficeError("InvalidArgument", `the formula ${typed}`);
    cell.formula = typed.startsWith("=") ? typed : `=${typed}`;
    cell.value = "#BUSY!";
  } else cell.value = converted(typed);
}

/** Headings of a table are texts, each its own, and never blank. */
export function mendHeadings({ tables }: FakeWorkbook): void {
  for (const { sheet, area } of tables.filter(({ headers }) => headers)) {
    const seen = new Set<string>();
    for (let column = area.left; column <= area.right; column++) {
      const cell = cellOf(sheet, area.top, column);
      const wanted = cell.value === "" ? "Column" : String(cell.value);
      let heading = cell.value === "" ? `${wanted}1` : wanted;
      for (let number = 2; seen.has(heading.toLowerCase()); number++) heading = `${wanted}${number}`;
      seen.add(heading.toLowerCase());
      cell.value = heading;
    }
  }
}

export function deleteSheet(book: FakeWorkbook, gone: FakeSheet): void {
  book.sheets = book.sheets.filter((sheet) => sheet !== gone);
  book.tables = book.tables.filter(({ sheet }) => sheet !== gone);
  const start = sheetArea(gone.name, { top: 1, left: 1, bottom: 1, right: 1 }).replace(/!.*/, "!");
  for (const name of book.names)
    if (name.formula.startsWith(`=${start}`) || name.formula.startsWith(`=${gone.name}!`)) name.formula = "=#REF!";
}

export function mergedIn(sheet: FakeSheet, area: Area): readonly Area[] {
  return sheet.merged.filter((each) => overlap(each, area));
}

/** What Excel makes of a text that looks like something else. */
function converted(typed: string): string | number | boolean {
  if (/^(true|false)$/i.test(typed)) return /^t/i.test(typed);
  if (typed.trim() !== "" && !Number.isNaN(Number(typed))) return Number(typed);
  const date = /^\d{1,4}[/-]\d{1,2}(?:[/-]\d{1,4})?$/.test(typed) || /^[a-z]{3,9} \d{1,2}$/i.test(typed);
  return date || /^[$€£]?\d[\d.,]*%?$/.test(typed) ? 45_000 : typed;
}
