import { InputError, NoAnswer } from "../measure/errors";
import { PREFERRED_BOARD } from "../settings/definitions/materialSettings";
import { readGiven, type Given, type GivenValue } from "../settings/given";
import { GUIDE_CELLS, GUIDE_HEADINGS } from "../settings/starterGuide";
import { STARTER_STOCK, stockCells } from "../settings/starterStock";
import { settingsTable } from "../settings/settingsTable";
import { plainRows, type Cell } from "../item/answers";
import type { Figure } from "../item/figure";
import { figureOf } from "../item/figureCatalogue";
import type { RecogniseOptions } from "../headings/recognition";
import { rowArguments, rowFormula, settingsConstant, untilQuantityMended, type RowArguments } from "./rowFormula";
import type { FormulaPlace } from "./rowMeasures";
import type { SizedSurvey } from "../survey/sizeSurvey";
import type { SurveyItem } from "../survey/surveyItems";
import { surveyTable } from "../survey/surveyAnswers";
import { cutListToRead } from "./cutListToRead";
import { unanswered } from "../survey/unanswered";
import type { Book } from "../workbook/book";
import { cellName } from "../workbook/cellRef";
import { siblingCell } from "../workbook/siblingCell";
import {
  isFormula,
  type CellContent,
  type NewColumn,
  type NewName,
  type NewSheet,
  type PlainContent,
  type WorkbookEdits,
} from "../workbook/edits";
import { ownSheets } from "../workbook/ownMarks";
import { boardNotes } from "../survey/boardNotes";
import { BOARD, choicesSheet, lacksPreference, preferenceColumn, withBoards } from "./boardColumns";
import { GUIDE_NAME, SETTINGS_NAME, SIZES_NAME, STOCK_NAME } from "./keptRanges";
import { frozenBoxNotes } from "./frozenBoxNotes";
import { refuseReadOtherwise, surveyFormula } from "./surveyFormula";
import { readBookSurvey, type BookSurvey } from "./readBookSurvey";
import { quoted } from "../workbook/formulaText";
import type { Settings } from "../settings/schema";
import { headedFigure } from "./headedFigure";
import { nameFor } from "../headings/columnQuestions";
import { FIELDS } from "../headings/lexicon";
import { columnOfLetters } from "../headings/columnOfLetters";
import type { Word } from "../headings/questions";
import { SETTING_NAMES } from "../settings/given";
import { rememberWords } from "./wordsSheet";

export interface FillOptions {
  /** Names of figures; `problem` is always among them. */
  readonly figures: readonly string[];
  /** Settings texts of this run, shared by all rows; they go into a new settings sheet, or into each formula. */
  readonly settings: readonly unknown[];
  readonly sheet?: string;
  readonly recognise: RecogniseOptions;
  /** Plain values instead of live formulas. */
  readonly values: boolean;
  /** One live formula that fills all rows, where there are too many for a formula in each. */
  readonly oneFormula?: boolean;
  readonly cutList: boolean;
}

export interface SurveyEdits {
  readonly edits: WorkbookEdits;
  readonly sized: SizedSurvey;
  /** What was read, in plain words. */
  readonly said: readonly string[];
  /** Figures that rows have no answer to, in plain words. */
  readonly unanswered: readonly string[];
}

/** The sheet of the cut list. */
export const CUTLIST_SHEET = "Cut list";

/**
 * What fills the survey of a workbook: figures as live formulas with their results in new columns beside it, a settings and
 * a stock sheet where there are none, a cut list when asked. Nothing else is touched.
 *
 * @throws InputError when there is no survey to read
 */
export function surveyEdits(book: Book, options: FillOptions): SurveyEdits {
  const { chosen, grid, cells, found, sized } = readBookSurvey(book, options);
  if (!options.values && found.stock !== undefined) refuseOtherStock(options.settings);
  const { recognition } = sized.survey;
  const figures = withBoards(options.figures);
  const together = !options.values && options.oneFormula === true;
  // The column of preferences joins the survey, and one formula reads the survey as it is.
  const preference = !together && lacksPreference(sized, figures) ? [preferenceColumn(sized)] : [];
  const table = surveyTable(sized, figures, cells);
  const shared = options.values ? [] : sharedArguments(found.settings !== undefined, options.settings, sized.settings);
  const place: FormulaPlace = {
    survey: sized.survey,
    settings: sized.settings,
    cell: (column, row) => `$${cellName(row, column)}`,
    shared: found.sizes === undefined || options.values ? shared : [...shared, SIZES_NAME],
    guide: options.values ? [] : [GUIDE_NAME],
    preference: preference.length === 0 ? undefined : (row) => siblingCell(PREFERRED_BOARD, row),
    board: (row) => siblingCell(BOARD, row),
  };
  const live = options.values || together ? undefined : { place, rows: argumentsOf(sized, place) };
  const rowByRow = figures.map((name, index) => column(name, index, table, sized, live));
  if (together) {
    const ranges = [found.settings, found.stock, found.guide, found.sizes].filter((range) => range !== undefined);
    refuseReadOtherwise(sized, cells, [...ranges, ...options.settings], figures, table);
  }
  const columns = together
    ? filledBy(surveyFormula(sized, figures, [...place.shared, ...place.guide]), rowByRow)
    : rowByRow;
  // A cut list of an earlier run would tell sizes that are no longer so.
  const hadCutList = ownSheets(book).some(({ wantedName }) => wantedName === CUTLIST_SHEET);
  const sheets = newSheets(found, { ...options, cutList: options.cutList || hadCutList }, sized);
  const given = (options.recognise.words ?? []).filter((word) => word.given === true);
  const remembered = rememberWords(
    book,
    given.map((word) => byHeading(word, sized)),
    chosen.sheet.name,
  );
  if (recognition.headingRow === 0)
    throw new InputError(
      "heading row",
      "a survey that begins in row 1 without headings",
      "new columns need a row for their headings",
      "insert a row above the survey, or give --out NAME.csv",
    );
  const edits = {
    columns: {
      sheet: chosen.sheet.name,
      ...(chosen.table === undefined ? {} : { table: chosen.table.name }),
      headingRow: recognition.headingRow,
      firstRow: recognition.firstRow,
      lastRow: recognition.lastRow,
      lastColumn: recognition.lastColumn,
      columns: [...preference, ...columns],
      ...(options.values ? { holds: "values" as const } : together ? { holds: "one formula" as const } : {}),
    },
    sheets: [...sheets.map(({ sheet }) => sheet), ...remembered.sheets],
    ...(remembered.cells.length === 0 ? {} : { cells: remembered.cells }),
    names: sheets.flatMap(({ name }) => (name === undefined ? [] : [name])),
  };
  const uncached = grid.uncached.length;
  const said = [
    chosen.said,
    ...recognition.said,
    ...sized.survey.notes,
    ...remembered.said,
    ...boardNotes(sized),
    ...(live === undefined ? [] : frozenBoxNotes(sized, rowByRow, live.rows)),
    ...(uncached === 0
      ? []
      : [
          `${uncached} formulas hold no result (${grid.uncached.slice(0, 5).join(", ")}): open the file in a spreadsheet and save it`,
        ]),
  ];
  return { edits, sized, said, unanswered: unanswered(sized, table) };
}

/** A column is remembered by its heading: letters change when a column is inserted. */
function byHeading(word: Word, { survey }: SizedSurvey): Word {
  const { columns, settings, others, ticks } = survey.recognition;
  const isColumn = word.meaning === undefined || [...FIELDS, ...SETTING_NAMES, "not used"].includes(word.meaning);
  const letter = columnOfLetters(word.word);
  const headings = new Map(
    [...Object.values(columns), ...settings, ...others, ...ticks].map(({ column, heading }) => [column, heading]),
  );
  const isHeading = [...headings.values()].some((text) => text.trim().toLowerCase() === word.word.trim().toLowerCase());
  return !isColumn || letter === undefined || isHeading ? word : { ...word, word: nameFor(letter, headings) };
}

/** The columns with one formula in their first cell, whose answers the others are. */
function filledBy(formula: string, columns: readonly NewColumn[]): readonly NewColumn[] {
  return columns.map((column, index) => {
    const [first = "", ...rest] = column.cells;
    if (index > 0 || isFormula(first)) return column;
    return { ...column, cells: [{ formula, result: first === "" ? SHOWN_BLANK : first }, ...rest] };
  });
}

function column(
  name: string,
  index: number,
  table: readonly (readonly Cell[])[],
  { survey, outcomes, settings }: SizedSurvey,
  formulas: { readonly place: FormulaPlace; readonly rows: readonly (RowArguments | undefined)[] } | undefined,
): NewColumn {
  const figure = figureOf(name);
  const cells = survey.items.map((item, row): CellContent => {
    const result = plainContent(table[row + 1]![index]!);
    const outcome = outcomes[row]!;
    // What is wrong with rows that share a box is said of them together, which no formula does.
    const live =
      outcome.state !== "left out" && outcome.state !== "in box" && (item.box === "" || outcome.state === "sized");
    const own = formulas?.rows[row];
    if (!live || formulas === undefined || own === undefined || figure === undefined) return result;
    const { place } = formulas;
    const formula = rowFormula(figure, item, place, own);
    if (formula.length > LONGEST_FORMULA) return result;
    const refused = outcome.state === "problem" && outcome.error === item.quantity;
    return {
      formula: refused ? untilQuantityMended(formula, item, place, result) : formula,
      result: result === "" ? SHOWN_BLANK : result,
    };
  });
  const format = figure === undefined ? undefined : FORMATS[figure.unit]?.[settings.answerUnit === "in" ? "in" : "mm"];
  return {
    heading: headedFigure(name, settings.answerUnit),
    formerHeading: name,
    cells,
    ...(format === undefined ? {} : { format }),
  };
}

/** What Excel takes, less its own signs. A box of many rows may need more. */
const LONGEST_FORMULA = 8000;

/** The cells of each row; of rows that share a box together, for its first row. */
function argumentsOf({ survey, outcomes }: SizedSurvey, place: FormulaPlace): readonly (RowArguments | undefined)[] {
  const boxes = new Map<string, SurveyItem[]>();
  for (const item of survey.items)
    if (item.box !== "" && item.leftOut === "") boxes.set(item.box, [...(boxes.get(item.box) ?? []), item]);
  return survey.items.map((item, index) => {
    if (item.box === "" || item.leftOut !== "") return rowArguments(item, place);
    return outcomes[index]!.state === "in box" ? undefined : rowArguments(item, place, boxes.get(item.box));
  });
}

const FORMATS: Readonly<Partial<Record<Figure["unit"], { readonly mm: string; readonly in: string }>>> = {
  length: { mm: "0.0", in: "# ??/32" },
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

/**
 * Settings of this run are written in each formula only where a settings sheet was there before, which is the user's. As a
 * table, not as a text: they are shared by all rows, so that a kind that has no use for one passes it over.
 */
function sharedArguments(
  hadSettings: boolean,
  settings: readonly unknown[],
  { surveyUnit, answerUnit }: Settings,
): readonly string[] {
  // The heading of each answer names its unit, so a later change of the setting must not change the answer.
  const answers = answerUnit === surveyUnit ? "" : `; answer unit=${answerUnit}`;
  const ranges = [SETTINGS_NAME, STOCK_NAME, quoted(`unit=${surveyUnit}${answers}`)];
  const values = hadSettings
    ? settings.flatMap((each, place) => valuesOf(readGiven(each, `settings ${place + 1}`)))
    : [];
  return values.length === 0 ? ranges : [...ranges, settingsConstant(values)];
}

function valuesOf(given: Given): readonly GivenValue[] {
  return given.holds === "values" ? given.values : [];
}

/** Formulas read the workbook's own stock: figures by another would change at the next calculation. */
function refuseOtherStock(settings: readonly unknown[]): void {
  if (!settings.some((each, place) => readGiven(each, `settings ${place + 1}`).holds === "stock")) return;
  throw new InputError(
    "stock",
    `a stock table beside the workbook's own, called ${STOCK_NAME}`,
    "formulas read the workbook's own",
    "change it there, or ask for plain values",
  );
}

interface MadeSheet {
  readonly sheet: NewSheet;
  readonly name?: NewName;
}

function newSheets(found: BookSurvey["found"], options: FillOptions, sized: SizedSurvey): readonly MadeSheet[] {
  const made: MadeSheet[] = [];
  if (!options.values && found.settings === undefined) {
    const [headings = [], ...rows] = settingsTable(sized.settings);
    const kept = [headings, ...rows].map(([setting, value, , fallback, unit, meaning, standing]) =>
      [setting, value, unit, meaning, standing, fallback].map((cell) => cell ?? ""),
    );
    made.push(namedSheet(SETTINGS_NAME, kept, [22, 16, 10, 70, 18, 40], NAMED_SETTINGS));
  }
  if (!options.values && found.stock === undefined) {
    const stock = sized.settings.stock.length > 0 ? sized.settings.stock : STARTER_STOCK;
    made.push(namedSheet(STOCK_NAME, stockCells(stock)));
  }
  if (!options.values && found.guide === undefined) made.push(guideSheet());
  if (!options.values && options.figures.length > 0) made.push({ sheet: choicesSheet(sized) });
  if (options.cutList)
    made.push({
      sheet: { name: CUTLIST_SHEET, rows: plainRows(cutListToRead(sized)), replaceable: true },
    });
  return made;
}

/** Setting and value: every call of a formula carries what the name spans, and the meanings are for people. */
const NAMED_SETTINGS = 2;

/** Rows below the guide that its name covers too, so that a row added there counts. */
const SPARE_GUIDE_ROWS = 30;

function guideSheet(): MadeSheet {
  const { sheet } = namedSheet(GUIDE_SHEET, GUIDE_CELLS, [20, 12, 22, 22, 22, 18, 14, 70]);
  const last = cellName(GUIDE_CELLS.length + SPARE_GUIDE_ROWS, GUIDE_HEADINGS.length);
  const area = `$A$1:${last.replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2")}`;
  return { sheet, name: { name: GUIDE_NAME, refersTo: `'${GUIDE_SHEET}'!${area}` } };
}

/** The sheet of the board guide, which is the user's to edit. */
const GUIDE_SHEET = "board guide";

function namedSheet(
  name: string,
  rows: readonly (readonly (string | number)[])[],
  widths?: readonly number[],
  named = rows[0]!.length,
): MadeSheet {
  const last = cellName(rows.length, named).replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2");
  return {
    sheet: { name, rows, ...(widths === undefined ? {} : { widths }) },
    name: { name, refersTo: `${name}!$A$1:${last}` },
  };
}
