import type { RowsByColumn, SheetCell } from "../host/port";
import type { Book } from "../workbook/book";
import type { ColumnsHold, WorkbookEdits } from "../workbook/edits";
import type { BookSurvey, BookSurveyOptions } from "../filling/readBookSurvey";
import type { SizedSurvey } from "../survey/sizeSurvey";
import type { Effect, Question } from "../headings/questions";

/** What the user answered, as the reading of a survey takes it. */
export type Answered = BookSurveyOptions;

/** The workbook as the pane last saw it. */
export interface PaneSurvey extends BookSurvey {
  readonly answered: Answered;
  readonly book: Book;
  /** The figures that the sheet has already, by their names in the catalogue of figures or as typed. */
  readonly standing: readonly string[];
  /** What the columns that stand hold; undefined where none do. */
  readonly holds: ColumnsHold | undefined;
}

/** What is to be written, and what the user should be told of it. */
export interface PaneWrite {
  readonly edits: WorkbookEdits;
  readonly said?: readonly string[];
  /** Shows the first column that was added. */
  readonly shows?: boolean;
}

/** Makes what is to be written; undefined where there is nothing. */
export type Make = (survey: PaneSurvey) => PaneWrite | undefined;

/** A caliper as cells hold it, and as people read it. */
export interface ShownCaliper {
  readonly value: number | string;
  readonly text: string;
}

/** A write that can be taken back. */
export interface Step {
  readonly what: string;
  readonly undo: () => Promise<void>;
}

export interface PaneState {
  readonly survey: PaneSurvey | undefined;
  /** Why there is no survey to show. */
  readonly wrong: string | undefined;
  /** What only the user can say before there is one. */
  readonly questions: readonly Question[];
  /** How many answers there are to take back. */
  readonly answers: number;
  /** Sheets that may hold it. */
  readonly sheets: readonly string[];
  readonly selected: SheetCell | undefined;
  /** The survey as it was read before its unit was changed on the settings sheet, until the user says what is meant. */
  readonly beforeUnit: SizedSurvey | undefined;
  /** What is being done; undefined when nothing is. */
  readonly doing: string | undefined;
  /** What the last act did, or why it failed. */
  readonly said: { readonly lines: readonly string[]; readonly failed: boolean };
  readonly steps: readonly Step[];
}

/** The pane's one state, and all that changes it. */
export interface PaneModel {
  readonly state: () => PaneState;
  /** Calls back at every change. @returns what stops it */
  readonly watch: (listener: () => void) => () => void;
  readonly start: () => Promise<void>;
  /** Ends listening to the workbook. */
  readonly stop: () => Promise<void>;
  /** Writes one thing after another, each made from the survey as the one before left it: one step to undo. */
  readonly write: (what: string, ...makes: readonly Make[]) => Promise<void>;
  readonly undo: () => Promise<void>;
  /** Reads the survey again with an answer, which later writes remember in the workbook. */
  readonly answer: (effect: Effect) => Promise<void>;
  /** Reads the survey again without the last answer. */
  readonly takeBack: () => Promise<void>;
  /** The change of the unit on the settings sheet is settled. */
  readonly settleUnit: () => void;
  /** Filters the survey by the caliper that one column holds, which has a text for people; undefined shows every row. */
  readonly showOnly: (rows: RowsByColumn, caliper: ShownCaliper | undefined) => Promise<void>;
  readonly goTo: (row: number) => Promise<void>;
  readonly say: (lines: readonly string[], failed?: boolean) => void;
}
