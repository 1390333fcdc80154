import { InputError, NoAnswer } from "../measure/errors";
import { STARTER_STOCK, stockCells } from "../settings/starterStock";
import { settingsOf } from "../settings/settingsOf";
import { settingsTable } from "../settings/settingsTable";
import type { Cell } from "../survey/answers";
import { figureOf, type Figure } from "../survey/figures";
import type { RecogniseOptions } from "../survey/recognise";
import { rowFormula, type FormulaPlace } from "../survey/rowFormula";
import { sizeSurvey, type SizedSurvey } from "../survey/sizeSurvey";
import { cutListTable, surveyTable } from "../survey/surveyAnswers";
import { cellName, parseArea, type Area } from "./cellRef";
import { chooseSheet, surveyPlace } from "./chooseSheet";
import { editWorkbook } from "./editWorkbook";
import type { CellContent, EditResult, NewColumn, NewName, NewSheet, PlainContent } from "./edits";
import type { Workbook } from "./openWorkbook";
import { readSheet } from "./readSheet";
import type { SheetValue } from "./sheetValue";

export interface FillOptions {
  /** Names of figures; `problem` is always among them. */
  readonly figures: readonly string[];
  /** Settings texts of this run, shared by all rows; they go into a new settings sheet, or into each formula. */
  readonly settings: readonly unknown[];
  readonly sheet?: string;
  readonly recognise: RecogniseOptions;
  /** Plain values instead of live formulas. */
  readonly values: boolean;
  readonly cutList: boolean;
  readonly onProgress?: (fraction: number) => void;
}

export interface Filled {
  readonly edit: EditResult;
  readonly sized: SizedSurvey;
  /** What the user should be told, in plain words. */
  readonly said: readonly string[];
}

/** Names of the ranges that formulas read their settings and stock from, and of the sheets made for them. */
export const SETTINGS_NAME = "settings";
export const STOCK_NAME = "stock";
export const CUTLIST_SHEET = "Cut list";

/**
 * Fills the survey of a workbook: figures as live formulas with their results in new columns beside it, a settings and
 * a stock sheet where there are none, a cut list when asked. Nothing else is touched.
 *
 * @throws InputError when there is no survey to read, or the workbook may not be changed
 */
export function fillWorkbook(workbook: Workbook, options: FillOptions): Filled {
  const chosen = chooseSheet(workbook, options.sheet, options.recognise);
  const grid = readSheet(workbook, chosen.sheet.name);
  const cells = plainCells(grid.rows, grid.uncached);
  const found = {
    settings: namedRange(workbook, SETTINGS_NAME),
    stock: namedRange(workbook, STOCK_NAME),
  };
  const stored = [found.settings, found.stock].filter((range) => range !== undefined);
  const given = [...stored, ...options.settings];
  const sized = sizeSurvey(cells, given, {
    ...options.recognise,
    ...surveyPlace(workbook, chosen.sheet, chosen.table),
  });
  const { recognition } = sized.survey;
  const table = surveyTable(sized, options.figures, cells);
  const shared = options.values ? [] : sharedArguments(found.settings !== undefined, options.settings);
  const place: FormulaPlace = {
    survey: sized.survey,
    settings: sized.settings,
    cell: (column, row) => `$${cellName(row, column)}`,
    shared,
  };
  const columns = options.figures.map((name, index) =>
    column(name, index, table, sized, options.values ? undefined : place),
  );
  const sheets = newSheets(found, options, sized);
  const edit = editWorkbook(
    workbook,
    {
      columns: {
        sheet: chosen.sheet.name,
        ...(chosen.table === undefined ? {} : { table: chosen.table.name }),
        headingRow: recognition.headingRow,
        firstRow: recognition.firstRow,
        lastRow: recognition.lastRow,
        lastColumn: recognition.lastColumn,
        columns,
      },
      sheets: sheets.map(({ sheet }) => sheet),
      names: sheets.flatMap(({ name }) => (name === undefined ? [] : [name])),
    },
    options.onProgress,
  );
  const uncached = grid.uncached.length;
  const said = [
    chosen.said,
    ...recognition.said,
    ...(uncached === 0
      ? []
      : [
          `${uncached} formulas hold no result (${grid.uncached.slice(0, 5).join(", ")}): open the file in a spreadsheet and save it`,
        ]),
    ...edit.notes,
  ];
  return { edit, sized, said };
}

function column(
  name: string,
  index: number,
  table: readonly (readonly Cell[])[],
  { survey, outcomes, settings }: SizedSurvey,
  place: FormulaPlace | undefined,
): NewColumn {
  const figure = figureOf(name);
  const cells = survey.items.map((item, row): CellContent => {
    const result = plainContent(table[row + 1]![index]!);
    const outcome = outcomes[row]!;
    // The rows of a shared box are answered together, which no formula of one row can do.
    const live =
      place !== undefined && figure !== undefined && outcome.state !== "totals" && outcome.state !== "in box";
    if (!live || item.box !== "") return result;
    return { formula: rowFormula(figure, item, place), result: result === "" ? SHOWN_BLANK : result };
  });
  const format = figure === undefined ? undefined : FORMATS[figure.kind]?.[settings.unit === "in" ? "in" : "mm"];
  return { heading: name, cells, ...(format === undefined ? {} : { format }) };
}

const FORMATS: Readonly<Partial<Record<Figure["kind"], { readonly mm: string; readonly in: string }>>> = {
  length: { mm: "0.0", in: "0.000" },
  area: { mm: "0.000", in: "0.00" },
  count: { mm: "0", in: "0" },
  mass: { mm: "0.00", in: "0.00" },
};

/** LibreOffice takes an empty stored text for no result at all, and shows #NAME? where it lacks our functions. */
const SHOWN_BLANK = "\u00a0";

function plainContent(cell: Cell): PlainContent {
  if (cell instanceof NoAnswer) return { error: "#N/A" };
  if (cell instanceof InputError) return { error: "#VALUE!" };
  return cell;
}

/** Settings of this run are written in each formula only where a settings sheet was there before, which is the user's. */
function sharedArguments(hadSettings: boolean, settings: readonly unknown[]): readonly string[] {
  const texts = hadSettings ? settings.filter((each): each is string => typeof each === "string") : [];
  return [SETTINGS_NAME, STOCK_NAME, ...texts.map((text) => `"${text.replaceAll('"', '""')}"`)];
}

interface MadeSheet {
  readonly sheet: NewSheet;
  readonly name?: NewName;
}

function newSheets(
  found: { readonly settings: unknown; readonly stock: unknown },
  options: FillOptions,
  sized: SizedSurvey,
): readonly MadeSheet[] {
  const made: MadeSheet[] = [];
  if (!options.values && found.settings === undefined) {
    const [headings = [], ...rows] = settingsTable(settingsOf(options.settings));
    const kept = [headings, ...rows].map(([setting, value, , fallback, unit, meaning, standing]) =>
      [setting, value, unit, meaning, standing, fallback].map((cell) => cell ?? ""),
    );
    made.push(namedSheet(SETTINGS_NAME, kept, [22, 16, 10, 70, 18, 40]));
  }
  if (!options.values && found.stock === undefined) {
    const stock = sized.settings.stock.length > 0 ? sized.settings.stock : STARTER_STOCK;
    made.push(namedSheet(STOCK_NAME, stockCells(stock)));
  }
  if (options.cutList)
    made.push({
      sheet: { name: CUTLIST_SHEET, rows: cutListTable(sized).map((row) => row.map(plainText)), replaceable: true },
    });
  return made;
}

function namedSheet(
  name: string,
  rows: readonly (readonly (string | number)[])[],
  widths?: readonly number[],
): MadeSheet {
  const last = cellName(rows.length, rows[0]!.length).replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2");
  return {
    sheet: { name, rows, ...(widths === undefined ? {} : { widths }) },
    name: { name, refersTo: `${name}!$A$1:${last}` },
  };
}

/** In a list for reading, an error says why. */
function plainText(cell: Cell): PlainContent {
  return cell instanceof NoAnswer || cell instanceof InputError ? cell.message : cell;
}

/** A range that the workbook names: its cells as values. */
function namedRange(workbook: Workbook, name: string): readonly (readonly unknown[])[] | undefined {
  const defined = workbook.names.find((each) => each.name.toLowerCase() === name && each.sheet === undefined);
  if (defined === undefined) return undefined;
  const match = /^'?((?:[^'!]|'')+)'?!(\$?[A-Z]+\$?\d+:\$?[A-Z]+\$?\d+)$/.exec(defined.refersTo);
  if (match === null)
    throw new InputError(
      `the name ${name}`,
      `"${defined.refersTo}"`,
      "it must mean one range of cells, such as settings!$A$1:$B$60",
    );
  const area: Area = parseArea(match[2]!.replaceAll("$", ""))!;
  const { rows, uncached } = readSheet(workbook, match[1]!.replaceAll("''", "'"));
  const cells = plainCells(rows, uncached);
  return cells.slice(area.top - 1, area.bottom).map((row) => {
    const kept = row.slice(area.left - 1, area.right);
    return [...kept, ...Array.from({ length: area.right - area.left + 1 - kept.length }, () => null)];
  });
}

/** What a formula without a stored result reads as: refused by every measure, never taken for a blank. */
const UNCALCULATED = "formula not calculated";

function plainCells(rows: readonly (readonly SheetValue[])[], uncached: readonly string[]): unknown[][] {
  const cells: unknown[][] = rows.map((row) => row.map(plainValue));
  for (const name of uncached) {
    const area = parseArea(name);
    if (area === undefined) continue;
    while (cells.length < area.top) cells.push([]);
    const row = cells[area.top - 1]!;
    while (row.length < area.left) row.push(null);
    row[area.left - 1] = UNCALCULATED;
  }
  return cells;
}

function plainValue(value: SheetValue): unknown {
  if (typeof value !== "object" || value === null) return value;
  return "error" in value ? value.error : value.serial;
}
