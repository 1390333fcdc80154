import { InputError } from "../measure/errors";
import type { Field } from "../headings/vocabulary/vocabulary";
import { choice, Unanswered, type Question } from "../headings/questions";
import type { RecogniseOptions } from "../headings/recognition";
import { recogniseColumns } from "../headings/recognise";
import type { Book, BookSheet, BookTable } from "../workbook/book";
import type { Area } from "../workbook/cellRef";
import { ownColumns, ownSheets } from "../workbook/ownMarks";
import { keptRanges } from "./keptRanges";
import { rememberedWords } from "./wordsSheet";
import { sheetNamed } from "../workbook/sheetNamed";

/** The sheet that holds the survey, and how it was found. */
export interface ChosenSheet {
  readonly sheet: BookSheet;
  /** The table on it that holds the survey, if one does. */
  readonly table: BookTable | undefined;
  /** Messages for the user. */
  readonly said: string;
}

/**
 * The sheet or table named, or the only sheet that shows and has columns for the size of an item. Sheets of an earlier
 * run are passed over.
 *
 * @throws InputError when there is no such sheet, when none looks like a survey, or when several do
 */
export function chooseSheet(book: Book, name?: string, options: RecogniseOptions = {}): ChosenSheet {
  if (name !== undefined) return named(book, name, options);
  const own = new Set(ownSheets(book).map(({ sheet }) => sheet));
  const shown = book.sheets.filter((sheet) => sheet.cells && sheet.state === "visible" && !own.has(sheet.name));
  const surveys = shown.flatMap((sheet) => surveysOn(book, sheet, options).map((table) => ({ sheet, table })));
  const [survey, ...more] = surveys;
  if (survey && more.length === 0)
    return { ...survey, said: sentence(survey, shown.length > 1 ? ", the only one that looks like a survey" : "") };
  if (survey) {
    const names = surveys.map(({ sheet, table }) => table?.name ?? sheet.name);
    throw whichSheet(
      {
        got: `a workbook in which ${quotedList(names)} look like surveys`,
        expected: "reads one survey",
        cure: "name the sheet",
      },
      names,
      "Several sheets look like surveys. Which one, or all of them?",
      // Tables of one sheet may differ; sheets are read together when their headings are alike.
      surveys.every(({ table }) => table === undefined),
    );
  }
  if (shown.length === 1)
    return {
      sheet: shown[0]!,
      table: undefined,
      said: sentence({ sheet: shown[0]!, table: undefined }, ", the only one"),
    };
  const names = shown.map((sheet) => sheet.name);
  throw whichSheet(
    {
      got: `a workbook in which no sheet has columns for height, width and depth (${quotedList(names)})`,
      expected: "needs one",
      cure: "name the sheet, and its headings",
    },
    names,
    "No sheet has columns for height, width and depth. Which one is the survey?",
  );
}

/** `--sheet all`: every sheet that looks like a survey, as one. */
export const ALL_SHEETS = "all";

/** The sheets that look like surveys, without those of an earlier run. */
export function surveySheets(book: Book, options: RecogniseOptions = {}): readonly BookSheet[] {
  const own = new Set(ownSheets(book).map(({ sheet }) => sheet));
  return book.sheets.filter(
    (sheet) =>
      sheet.cells && sheet.state === "visible" && !own.has(sheet.name) && surveysOn(book, sheet, options).length > 0,
  );
}

function whichSheet(
  error: Pick<InputError, "got" | "expected" | "cure">,
  names: readonly string[],
  text: string,
  together = false,
): Unanswered {
  const question: Question = {
    about: "sheet",
    text,
    rows: [],
    choices: [
      ...names.map((sheet) => choice(sheet, { sheet })),
      ...(together ? [choice("all of them, as one survey", { sheet: ALL_SHEETS })] : []),
    ],
  };
  return new Unanswered({ argument: "sheet", ...error }, names.length === 0 ? [] : [question]);
}

function quotedList(names: readonly string[]): string {
  return names.map((name) => `"${name}"`).join(", ");
}

/** Rows by which a sheet is judged. */
const JUDGED = 130;

function named(book: Book, name: string, options: RecogniseOptions): ChosenSheet {
  const table = book.tables.find((t) => t.name.toLowerCase() === name.trim().toLowerCase());
  const isSheet = book.sheets.some((s) => s.name.toLowerCase() === name.trim().toLowerCase());
  if (table && !isSheet) return chosen(sheetNamed(book, table.sheet), table);
  const sheet = sheetNamed(book, name);
  const tables = surveysOn(book, sheet, options);
  return chosen(sheet, tables.length === 1 ? tables[0] : undefined);
}

function chosen(sheet: BookSheet, table: BookTable | undefined): ChosenSheet {
  return { sheet, table, said: sentence({ sheet, table }, "") };
}

/** The tables of a sheet that look like a survey; where none does, the sheet's plain cells (undefined) may. */
function surveysOn(book: Book, sheet: BookSheet, options: RecogniseOptions): readonly (BookTable | undefined)[] {
  const looks = (table: BookTable | undefined) => looksLikeSurvey(book, sheet, table, options);
  const tables = book.tables.filter((table) => table.sheet === sheet.name && table.headerRow && looks(table));
  return tables.length > 0 ? tables : [undefined].filter(looks);
}

function looksLikeSurvey(
  book: Book,
  sheet: BookSheet,
  table: BookTable | undefined,
  options: RecogniseOptions,
): boolean {
  const lastRow = (table?.area.top ?? 0) + JUDGED;
  const { rows } = book.grid(sheet.name, { lastRow });
  try {
    const words = [...rememberedWords(book, sheet.name), ...(options.words ?? [])];
    const { columns, ask, headingRow } = recogniseColumns(rows, {
      ...options,
      words,
      ...surveyPlace(book, sheet, table),
    });
    const found = Object.values(columns);
    const inside = ({ top, left, bottom, right }: Area) =>
      top <= headingRow && headingRow <= bottom && found.every(({ column }) => left <= column && column <= right);
    // A stock table has widths and heights too, and a board guide sizes.
    if (keptRanges(book, sheet.name).some(inside)) return false;
    const has = (field: Field) => columns[field] !== undefined || ask.some((question) => question.field === field);
    return has("dimensions") || (has("height") && has("width") && has("depth"));
  } catch (error) {
    if (error instanceof InputError) return false;
    throw error;
  }
}

/** What recognition must know of a sheet: the table that holds the survey, and the columns of an earlier run. */
export function surveyPlace(
  book: Book,
  sheet: BookSheet,
  table: BookTable | undefined,
): Pick<RecogniseOptions, "region" | "ignore"> {
  const ignore = ownColumns(book)
    .filter((column) => column.sheet === sheet.name)
    .map(({ column }) => column);
  if (!table) return { ignore };
  const { top, bottom, left, right } = table.area;
  const region = {
    headingRow: top,
    firstColumn: left,
    lastColumn: right,
    lastRow: table.totalsRow ? bottom - 1 : bottom,
  };
  return { ignore, region };
}

function sentence({ sheet, table }: { sheet: BookSheet; table: BookTable | undefined }, why: string): string {
  return `sheet "${sheet.name}"${table ? `, table ${table.name}` : ""}${why}`;
}
