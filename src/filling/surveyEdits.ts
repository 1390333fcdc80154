import { InputError } from "../measure/errors";
import { PREFERRED_BOARD } from "../settings/definitions/materialSettings";
import { SETTING_NAMES } from "../settings/given";
import type { RecogniseOptions } from "../headings/recognition";
import type { FormulaPlace } from "./rowMeasures";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { surveyTable } from "../survey/surveyAnswers";
import { unanswered } from "../survey/unanswered";
import type { Book } from "../workbook/book";
import { cellName } from "../workbook/cellRef";
import { siblingCell } from "../workbook/siblingCell";
import type { WorkbookEdits } from "../workbook/edits";
import { ownSheets } from "../workbook/ownMarks";
import { boardNotes } from "../survey/boardNotes";
import { BOARD, lacksPreference, preferenceColumn, withBoards } from "./boardColumns";
import { GUIDE_NAME, SIZES_NAME } from "./keptRanges";
import { frozenBoxNotes } from "./frozenBoxNotes";
import { refuseReadOtherwise, surveyFormula } from "./surveyFormula";
import { readBookSurvey, type BookSurvey } from "./readBookSurvey";
import { nameFor } from "../headings/columnQuestions";
import { FIELDS } from "../headings/lexicon";
import { columnOfLetters } from "../headings/columnOfLetters";
import type { Word } from "../headings/questions";
import { rememberWords } from "./wordsSheet";
import { madeSheets, CUTLIST_SHEET } from "./madeSheets";
import { figureColumn, filledBy, argumentsOf } from "./figureColumn";
import { sharedArguments, refuseOtherStock } from "./sharedArguments";

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

/**
 * What fills the survey of a workbook: figures as live formulas with their results in new columns beside it, a settings and
 * a stock sheet where there are none, a cut list when asked. Nothing else is touched.
 *
 * @param before an earlier reading: its rows that read as they did are not sized again
 * @throws InputError when there is no survey to read
 */
export function surveyEdits(book: Book, options: FillOptions, before?: BookSurvey): SurveyEdits {
  const { chosen, grid, cells, found, sized } = readBookSurvey(book, options, before);
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
  const rowByRow = figures.map((name, index) => figureColumn(name, index, table, sized, live));
  if (together) {
    const ranges = [found.settings, found.stock, found.guide, found.sizes].filter((range) => range !== undefined);
    refuseReadOtherwise(sized, cells, [...ranges, ...options.settings], figures, table);
  }
  const columns = together
    ? filledBy(surveyFormula(sized, figures, [...place.shared, ...place.guide]), rowByRow)
    : rowByRow;
  // A cut list of an earlier run would tell sizes that are no longer so.
  const hadCutList = ownSheets(book).some(({ wantedName }) => wantedName === CUTLIST_SHEET);
  const sheets = madeSheets(found, { ...options, cutList: options.cutList || hadCutList }, sized);
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
