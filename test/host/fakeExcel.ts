import { areaName, overlap, parseArea, type Area } from "../../src/workbook/cellRef";
import { format } from "numfmt";
import { DAYS_1904, isDateFormat } from "../../src/workbook/sheetValue";
import { EXCELS, officePage, type Answer, type ExcelName } from "./officeScript";
import { OfficeError, wireTo, type AnyKind, type Kind } from "./wire";
import {
  type FakeColumn,
  blankSheet,
  cellOf,
  deleteSheet,
  enter,
  mendHeadings,
  mergedIn,
  STANDARD_HEIGHT,
  STANDARD_WIDTH,
  usedArea,
  type FakeCell,
  type FakeChart,
  type FakeName,
  type FakeSheet,
  type FakeTable,
  type FakeWorkbook,
} from "./fakeWorkbook";

/** What a cell shows. Excel writes dates by the calendar of the workbook. */
function displayed({ value, format: code }: FakeCell, date1904: boolean): string {
  if (typeof value === "string") return value;
  if (typeof value === "boolean") return String(value).toUpperCase();
  return format(code, isDateFormat(code) && date1904 ? value + DAYS_1904 : value, { locale: "en" });
}

/** Excel with a workbook open, as far as the port uses it. */
export interface FakeExcel {
  readonly rounds: () => number;
  /** What each run was given beside its work. */
  readonly runs: () => readonly object[];
  /** Tells whoever listens that something was selected, or changed. */
  readonly fire: (event: "onSelectionChanged" | "onChanged" | "onCalculated", sheet?: string) => Promise<void>;
  /** Shows the pane, or hides it: its page lives on. */
  readonly show: (shown: boolean) => Promise<void>;
  readonly listeners: () => number;
  readonly close: () => void;
}

/** The newest set of functions of Excel that is asked for. */
const NEWEST = 20;

/** Microsoft's numbers of the events, and of what is too large. */
const EVENTS = { onChanged: 10, onCalculated: 16 } as const;
const VISIBILITY_CHANGED = 65_539;
const REQUEST_TOO_LARGE = 5103;
const ANSWER_TOO_LARGE = 5104;

/**
 * Puts Microsoft's `Excel` and `Office` in place, with this workbook behind them.
 *
 * @param supports the newest set of ExcelApi that it has: 20 is 1.20
 */
export function fakeExcel(book: FakeWorkbook, supports = NEWEST, name: ExcelName = "Excel on the web"): FakeExcel {
  let rounds = 0;
  const runs: object[] = [];
  const followed = { onChanged: 0, onCalculated: 0 };
  const answered = wireTo(kindsOf(book, followed), book);
  const { most, pieces } = EXCELS[name];
  const answer = (request: string): Answer => {
    rounds++;
    if (Buffer.byteLength(request) > most) return tooLarge(REQUEST_TOO_LARGE);
    const body = answered(request);
    if (Buffer.byteLength(body) > most) return tooLarge(ANSWER_TOO_LARGE);
    return { status: "succeeded", value: { data: [200, null, inPieces(body, pieces)] } };
  };
  const isSetSupported = (set: string, version: string) =>
    set === "ExcelApi" && Number(version.replace("1.", "")) <= supports;
  const page = officePage(name, { answer, isSetSupported });
  const run = page.Excel.run as (...given: unknown[]) => Promise<unknown>;
  page.Excel.run = (...given: unknown[]) => {
    runs.push(given[0] as object);
    return run(...given);
  };
  const before = Reflect.get(globalThis, "Excel") as unknown;
  Object.assign(globalThis, { Excel: page.Excel, Office: page.Office });
  return {
    rounds: () => rounds,
    fire: async (event, sheetName) => {
      const sheet = book.sheets.find((each) => each.name === sheetName);
      if (event === "onSelectionChanged") for (const listener of page.selecting) listener({});
      else if (followed[event] > 0) page.send(EVENTS[event], sheet === undefined ? {} : { worksheetId: idOf(sheet) });
      await new Promise(setImmediate);
    },
    show: async (shown) => {
      page.send(VISIBILITY_CHANGED, { visibility: shown ? "Visible" : "Hidden" }, "");
      await new Promise(setImmediate);
    },
    listeners: () => followed.onChanged + followed.onCalculated + page.selecting.size,
    runs: () => runs,
    close: () => void Object.assign(globalThis, { Excel: before, Office: undefined }),
  };
}

function tooLarge(code: number): Answer {
  return { status: "failed", error: { code, message: "too large" } };
}

/** An answer as Excel for Windows hands it over: in pieces, which the script joins. */
function inPieces(body: string, length: number): string | readonly string[] {
  if (body.length <= length) return body;
  return Array.from({ length: Math.ceil(body.length / length) }, (_, i) => body.slice(i * length, (i + 1) * length));
}

/** Excel's own name of a sheet, which it keeps. */
function idOf(sheet: FakeSheet): string {
  const known = ids.get(sheet) ?? `{${++made}}`;
  ids.set(sheet, known);
  return known;
}

const ids = new WeakMap<FakeSheet, string>();
let made = 0;

/** The smallest rectangle around two. */
function around(one: Area, two: Area): Area {
  return {
    top: Math.min(one.top, two.top),
    left: Math.min(one.left, two.left),
    bottom: Math.max(one.bottom, two.bottom),
    right: Math.max(one.right, two.right),
  };
}

interface FakeRange {
  readonly sheet: FakeSheet;
  readonly area: Area;
}

function kindsOf(book: FakeWorkbook, followed: Record<keyof typeof EVENTS, number>): AnyKind {
  const any = <Model>(kind: Kind<Model>): AnyKind => kind;
  const missing = (what: string) => new OfficeError("ItemNotFound", what);
  const changeable = ({ sheet }: FakeRange): void => {
    if (sheet.locked) throw new OfficeError("AccessDenied", `"${sheet.name}" is protected`);
  };
  const each = ({ sheet, area }: FakeRange, work: (cell: FakeCell, row: number, column: number) => void): void => {
    for (let row = area.top; row <= area.bottom; row++)
      for (let column = area.left; column <= area.right; column++) work(cellOf(sheet, row, column), row, column);
  };
  const read = ({ sheet, area }: FakeRange, of: (cell: FakeCell) => unknown): unknown[][] =>
    Array.from({ length: area.bottom - area.top + 1 }, (_, r) =>
      Array.from({ length: area.right - area.left + 1 }, (_unused, c) => {
        const cell = sheet.cells.get(area.top + r)?.get(area.left + c);
        return of(cell ?? { value: "", format: "General", bold: false });
      }),
    );
  const write = (
    range: FakeRange,
    values: readonly (readonly unknown[])[],
    into: (c: FakeCell, v: unknown) => void,
  ) => {
    changeable(range);
    const { top, left, bottom, right } = range.area;
    if (values.length !== bottom - top + 1 || values.some((row) => row.length !== right - left + 1))
      throw new OfficeError("InvalidArgument", `other rows or columns than ${areaName(range.area)}`);
    each(range, (cell, row, column) => into(cell, values[row - top]![column - left]));
    mendHeadings(book);
  };
  const used = (sheet: FakeSheet) => {
    const area = usedArea(sheet);
    return area && { sheet, area };
  };

  const font = any<FakeRange>({
    set: { bold: (range, bold: boolean) => each(range, (cell) => (cell.bold = bold)) },
  });
  const format = any<FakeRange>({
    get: { columnWidth: ({ sheet, area }) => sheet.widths.get(area.left) ?? STANDARD_WIDTH },
    set: {
      columnWidth: (range, width: number) => {
        changeable(range);
        for (let column = range.area.left; column <= range.area.right; column++) range.sheet.widths.set(column, width);
      },
    },
    part: { font: [() => font, (range) => range] },
  });
  const listAt = ({ sheet, area }: FakeRange) => sheet.lists.find((list) => areaName(list.area) === areaName(area));
  const validation = any<FakeRange>({
    set: {
      rule: (own, { list }: { list: { source: string } }) => {
        changeable(own);
        own.sheet.lists.push({ area: own.area, source: list.source, refuses: true });
      },
      ignoreBlanks: (own, ignored: boolean) => {
        if (!ignored || listAt(own) === undefined) throw new OfficeError("InvalidOperation", "no rule to ignore");
      },
      errorAlert: (own, { showAlert }: { showAlert: boolean }) => void (listAt(own)!.refuses = showAlert),
    },
    act: {
      clear: ({ sheet, area }) => (sheet.lists = sheet.lists.filter((list) => !overlap(list.area, area))),
    },
  });
  const areas = any<readonly FakeRange[]>({
    get: { address: (ranges) => ranges.map(({ sheet, area }) => `${sheet.name}!${areaName(area)}`).join(",") },
  });
  const range: AnyKind = any<FakeRange>({
    get: {
      rowIndex: ({ area }) => area.top - 1,
      columnIndex: ({ area }) => area.left - 1,
      rowCount: ({ area }) => area.bottom - area.top + 1,
      columnCount: ({ area }) => area.right - area.left + 1,
      address: ({ sheet, area }) => `${sheet.name}!${areaName(area)}`,
      values: (own) => read(own, ({ value }) => value),
      formulas: (own) => read(own, ({ formula, value }) => formula ?? value),
      numberFormat: (own) => read(own, (cell) => cell.format),
      left: ({ sheet, area }) => {
        let points = 0;
        for (let column = 1; column < area.left; column++) points += sheet.widths.get(column) ?? STANDARD_WIDTH;
        return points;
      },
      top: ({ area }) => (area.top - 1) * STANDARD_HEIGHT,
      height: ({ area }) => (area.bottom - area.top + 1) * STANDARD_HEIGHT,
      text: (own) => read(own, (cell) => displayed(cell, book.date1904)),
    },
    set: {
      formulas: (own, values: unknown[][]) => write(own, values, enter),
      numberFormat: (own, values: unknown[][]) => write(own, values, (cell, value) => (cell.format = String(value))),
    },
    part: {
      dataValidation: [() => validation, (own) => own],
      format: [() => format, (own) => own],
      worksheet: [() => worksheet, ({ sheet }) => sheet],
    },
    find: {
      // Microsoft's script writes more than 1,500 cells in pieces of rows.
      getRow: [
        () => range,
        ({ sheet, area }, row: number) => ({ sheet, area: { ...area, top: area.top + row, bottom: area.top + row } }),
      ],
      getBoundingRect: [() => range, ({ sheet, area }, to: FakeRange) => ({ sheet, area: around(area, to.area) })],
      getMergedAreasOrNullObject: [
        () => areas,
        ({ sheet, area }) => {
          const found = mergedIn(sheet, area).map((merged) => ({ sheet, area: merged }));
          return found.length === 0 ? undefined : found;
        },
      ],
    },
    act: {
      _ValidateArraySize: ({ area }, rows: number, columns: number) => {
        if (rows !== area.bottom - area.top + 1 || columns !== area.right - area.left + 1)
          throw new OfficeError("InvalidArgument", `other rows or columns than ${areaName(area)}`);
      },
      clear: (own, what: string) => {
        changeable(own);
        const { area, sheet } = own;
        for (const [row, cells] of sheet.cells)
          for (const [column, cell] of row < area.top || row > area.bottom ? [] : cells) {
            if (column < area.left || column > area.right) continue;
            delete cell.formula;
            cell.value = "";
            if (what === "All") Object.assign(cell, { format: "General", bold: false });
          }
        mendHeadings(book);
      },
      copyFrom: (own, from: FakeRange, what: string) => {
        changeable(own);
        if (what !== "Formats") throw new Error("this stand-in for Excel copies formats only");
        each(own, (cell, row, column) => {
          const { top, left, bottom, right } = from.area;
          const [r, c] = [(row - own.area.top) % (bottom - top + 1), (column - own.area.left) % (right - left + 1)];
          const { format: code, bold } = cellOf(from.sheet, top + r, left + c);
          Object.assign(cell, { format: code, bold });
        });
      },
      select: ({ sheet, area }) => {
        if (book.active?.sheet !== sheet.name) throw new OfficeError("InvalidSelection", "a sheet that is not active");
        book.active = { sheet: sheet.name, row: area.top, column: area.left };
      },
    },
  });
  const filter = any<FakeSheet>({
    get: { isDataFiltered: (sheet) => sheet.filtered, criteria: (sheet) => sheet.criteria ?? [] },
    find: { getRangeOrNullObject: [() => range, (sheet) => sheet.filter && { sheet, area: sheet.filter }] },
    act: {
      // A filter over other cells starts empty.
      apply: (sheet, { area }: FakeRange, index?: number, criteria?: { readonly criterion1: string }) => {
        const before = sheet.filter && areaName(sheet.filter) === areaName(area) ? (sheet.criteria ?? []) : [];
        const all = [...before];
        if (index !== undefined) all[index] = criteria;
        const only = criteria && { index, criterion: criteria.criterion1 };
        Object.assign(sheet, { filter: area, criteria: all, only });
      },
      clearCriteria: (sheet) => (sheet.only = undefined),
    },
  });
  const named = any<FakeName>({
    get: {
      name: ({ name }) => name,
      formula: ({ formula }) => formula,
      comment: ({ comment }) => comment,
      visible: ({ visible }) => visible,
      scope: ({ scope }) => (scope === undefined ? "Workbook" : "Worksheet"),
    },
    set: { visible: (name, visible: boolean) => (name.visible = visible) },
    act: { delete: (name) => (book.names = book.names.filter((other) => other !== name)) },
  });
  const findName = (wanted: string) =>
    book.names.find(({ name, scope }) => scope === undefined && name.toLowerCase() === wanted.toLowerCase());
  const names = any<FakeWorkbook>({
    items: [() => named, () => book.names],
    find: {
      getItem: [
        () => named,
        (_, wanted: string) => {
          const name = findName(wanted);
          if (!name) throw missing(wanted);
          return name;
        },
      ],
      add: [
        () => named,
        (_, name: string, formula: string, comment: string) => {
          if (findName(name) || !formula.startsWith("=")) throw new OfficeError("InvalidArgument", `the name ${name}`);
          const made = { name, formula, comment, visible: true };
          book.names.push(made);
          return made;
        },
      ],
    },
  });
  const sheetNames = any<FakeSheet>({
    items: [() => named, (sheet) => book.names.filter(({ scope }) => scope === sheet.name)],
  });
  const columnFilter = any<FakeColumn>({
    act: {
      applyCustomFilter: ({ table: own, index }, criterion: string) => (own.only = { index, criterion }),
      clear: ({ table: own }) => (own.only = undefined),
    },
  });
  const column = any<FakeColumn>({
    get: { name: ({ name }) => name },
    part: { filter: [() => columnFilter, (own) => own] },
  });
  const columns = any<FakeTable>({
    items: [
      () => column,
      (own) => {
        const { sheet, area } = own;
        const names = read({ sheet, area: { ...area, bottom: area.top } }, ({ value }) => String(value))[0] as string[];
        return names.map((name, index) => ({ table: own, index, name }));
      },
    ],
  });
  const table = any<FakeTable>({
    get: {
      name: ({ name }) => name,
      showHeaders: ({ headers }) => headers,
      showTotals: ({ totals }) => totals,
    },
    set: {
      name: (own, name: string) => {
        if (findName(name) || book.tables.some((other) => other.name === name))
          throw new OfficeError("InvalidArgument", `the table name ${name}`);
        own.name = name;
      },
    },
    part: { worksheet: [() => worksheet, ({ sheet }) => sheet], columns: [() => columns, (own) => own] },
    find: {
      getRange: [() => range, ({ sheet, area }) => ({ sheet, area })],
      convertToRange: [
        () => range,
        (own) => {
          book.tables = book.tables.filter((other) => other !== own);
          return { sheet: own.sheet, area: own.area };
        },
      ],
    },
    act: {
      resize: (own, { sheet, area }: FakeRange) => {
        const others = book.tables.filter((other) => other !== own && other.sheet === sheet);
        if (sheet !== own.sheet || area.top !== own.area.top || others.some((other) => overlap(other.area, area)))
          throw new OfficeError("InvalidArgument", `a table cannot be ${areaName(area)}`);
        own.area = area;
        mendHeadings(book);
      },
    },
  });
  const sheetTables = any<FakeSheet>({
    find: {
      add: [
        () => table,
        (_, { sheet, area }: FakeRange, headers: boolean) => {
          if (book.tables.some((other) => other.sheet === sheet && overlap(other.area, area)))
            throw new OfficeError("InvalidArgument", "a table over another");
          const made = { name: `Table${book.tables.length + 1}`, sheet, area, headers, totals: false };
          book.tables.push(made);
          return made;
        },
      ],
    },
  });
  const protection = any<{ locked: boolean }>({ get: { protected: ({ locked }) => locked } });
  const panes = any<FakeSheet>({
    find: {
      getLocationOrNullObject: [
        () => range,
        (sheet) => {
          const { frozen: bottom, frozenColumns: right } = sheet;
          if (bottom + right === 0) return undefined;
          return { sheet, area: { top: 1, left: 1, bottom: bottom || 1_048_576, right: right || 16_384 } };
        },
      ],
    },
    act: {
      freezeRows: (sheet, rows: number) => Object.assign(sheet, { frozen: rows, frozenColumns: 0 }),
      freezeColumns: (sheet, columns: number) => Object.assign(sheet, { frozen: 0, frozenColumns: columns }),
      freezeAt: (sheet, address: string) => {
        const { bottom, right } = parseArea(address)!;
        Object.assign(sheet, { frozen: bottom, frozenColumns: right });
      },
      unfreeze: (sheet) => Object.assign(sheet, { frozen: 0, frozenColumns: 0 }),
    },
  });
  const floating = any<FakeChart>({
    get: {
      left: ({ left }) => left,
      top: ({ top }) => top,
      width: ({ width }) => width,
      height: ({ height }) => height,
    },
  });
  const charts = any<FakeSheet>({ items: [() => floating, (sheet) => sheet.charts] });
  const shapes = any<FakeSheet>({ items: [() => floating, () => []] });
  const worksheet: AnyKind = any<FakeSheet>({
    key: "id",
    get: { id: (sheet) => idOf(sheet), name: ({ name }) => name, visibility: ({ visibility }) => visibility },
    part: {
      protection: [() => protection, (sheet) => sheet],
      names: [() => sheetNames, (sheet) => sheet],
      autoFilter: [() => filter, (sheet) => sheet],
      charts: [() => charts, (sheet) => sheet],
      shapes: [() => shapes, (sheet) => sheet],
      freezePanes: [() => panes, (sheet) => sheet],
      tables: [() => sheetTables, (sheet) => sheet],
    },
    find: {
      getRange: [
        () => range,
        (sheet, address: string | undefined) => {
          const area =
            address === undefined ? { top: 1, left: 1, bottom: 1_048_576, right: 16_384 } : parseArea(address);
          if (!area) throw new OfficeError("InvalidArgument", `the range ${address}`);
          return { sheet, area };
        },
      ],
      getUsedRangeOrNullObject: [() => range, (sheet) => used(sheet)],
    },
    act: {
      activate: (sheet) => (book.active = { sheet: sheet.name, row: 1, column: 1 }),
      delete: (sheet) => {
        if (book.locked || book.sheets.length === 1) throw new OfficeError("InvalidOperation", "the sheet stays");
        deleteSheet(book, sheet);
      },
    },
  });
  const findSheet = (wanted: string) =>
    book.sheets.find((sheet) => idOf(sheet) === wanted || sheet.name.toLowerCase() === wanted.toLowerCase());
  const worksheets = any<FakeWorkbook>({
    items: [() => worksheet, () => book.sheets],
    act: {
      _RegisterDataChangedEvent: () => void followed.onChanged++,
      _UnregisterDataChangedEvent: () => void followed.onChanged--,
      _RegisterCalculatedEvent: () => void followed.onCalculated++,
      _UnregisterCalculatedEvent: () => void followed.onCalculated--,
    },
    find: {
      getItem: [
        () => worksheet,
        (_, wanted: string) => {
          const sheet = findSheet(wanted);
          if (!sheet) throw missing(wanted);
          return sheet;
        },
      ],
      add: [
        () => worksheet,
        (_, name: string) => {
          if (book.locked || findSheet(name)) throw new OfficeError("InvalidArgument", `the sheet ${name}`);
          const made = blankSheet(name);
          book.sheets.push(made);
          return made;
        },
      ],
    },
  });
  const tables = any<FakeWorkbook>({
    items: [() => table, () => book.tables],
    find: {
      getItem: [
        () => table,
        (_, wanted: string) => {
          const found = book.tables.find(({ name }) => name === wanted);
          if (!found) throw missing(wanted);
          return found;
        },
      ],
    },
  });
  const application = any<FakeWorkbook>({
    get: { calculationMode: ({ calculation }) => calculation },
    act: { suspendApiCalculationUntilNextSync: () => undefined },
  });
  return any<FakeWorkbook>({
    part: {
      application: [() => application, (own) => own],
      worksheets: [() => worksheets, (own) => own],
      tables: [() => tables, (own) => own],
      names: [() => names, (own) => own],
      protection: [() => protection, (own) => own],
    },
    find: {
      getActiveCell: [
        () => range,
        () => {
          const { active } = book;
          if (!active) throw new OfficeError("InvalidOperation", "a chart sheet");
          const { sheet, row, column: at } = active;
          return { sheet: findSheet(sheet)!, area: { top: row, bottom: row, left: at, right: at } };
        },
      ],
    },
  });
}
