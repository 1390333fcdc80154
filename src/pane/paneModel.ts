import type { BookPort, SheetCell } from "../host/port";
import { plainError } from "../measure/fault";
import type { Book } from "../workbook/book";
import type { WorkbookEdits } from "../workbook/edits";
import { ownColumns } from "../workbook/ownMarks";
import type { SheetValue } from "../workbook/sheetValue";
import { figureOfHeading } from "../filling/headedFigure";
import { readBookSurvey, type BookSurvey, type BookSurveyOptions } from "../filling/readBookSurvey";
import { bothEffects, Unanswered, type Effect, type Question } from "../headings/questions";

/** What the user answered, as the reading of a survey takes it. */
export type Answered = BookSurveyOptions;

/** The workbook as the pane last saw it. */
export interface PaneSurvey extends BookSurvey {
  readonly answered: Answered;
  readonly book: Book;
  /** Figures that stand in the sheet already, by the names that they were asked for. */
  readonly standing: readonly string[];
}

/** What is to be written, and what the user should be told of it. */
export interface PaneWrite {
  readonly edits: WorkbookEdits;
  readonly said?: readonly string[];
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
  readonly write: (what: string, make: (survey: PaneSurvey) => PaneWrite) => Promise<void>;
  readonly undo: () => Promise<void>;
  /** Reads the survey again with an answer, which later writes remember in the workbook. */
  readonly answer: (effect: Effect) => Promise<void>;
  /** Reads the survey again without the last answer. */
  readonly takeBack: () => Promise<void>;
  readonly goTo: (row: number) => Promise<void>;
  readonly say: (lines: readonly string[], failed?: boolean) => void;
}

/** Changes that follow one another this quickly are read once, ms. */
const SETTLED = 250;

/** The same while cells of ours are being calculated, ms: each report of a calculation would be followed by another. */
const BUSY = 2000;

/** Whether a column of ours holds a cell that is being calculated. */
function isBusy({ book, chosen }: PaneSurvey): boolean {
  const own = ownColumns(book).filter(({ sheet }) => sheet === chosen.sheet.name);
  if (own.length === 0) return false;
  const { rows } = book.grid(chosen.sheet.name);
  return own.some(({ column, headingRow, lastRow }) =>
    rows.slice(headingRow, lastRow).some((row) => isBusyCell(row[column - 1])),
  );
}

function isBusyCell(value: SheetValue | undefined): boolean {
  return typeof value === "object" && value !== null && "error" in value && value.error === "#BUSY!";
}

export function paneModel(port: BookPort): PaneModel {
  let state: PaneState = {
    survey: undefined,
    wrong: undefined,
    questions: [],
    answers: 0,
    sheets: [],
    selected: undefined,
    doing: "Reading the workbook",
    said: { lines: [], failed: false },
    steps: [],
  };
  const listeners = new Set<() => void>();
  const set = (change: Partial<PaneState>): void => {
    state = { ...state, ...change };
    for (const listener of listeners) listener();
  };
  const say = (lines: readonly string[], failed = false): void => set({ said: { lines, failed } });

  let effects: readonly Effect[] = [];
  const readAnswering = (next: readonly Effect[]): Promise<void> =>
    act("Reading the survey", async () => {
      effects = next;
      set({ answers: effects.length });
      await read();
    });
  const read = async (): Promise<void> => {
    try {
      const book = await port.read();
      set({ sheets: book.sheets.filter(({ cells }) => cells).map(({ name }) => name) });
      const answered = answeredBy(effects.reduce(bothEffects, {}));
      const survey = readBookSurvey(book, answered);
      const { name } = survey.chosen.sheet;
      const standing = ownColumns(book).flatMap(({ sheet, wantedName }) =>
        sheet === name ? [figureOfHeading(wantedName)] : [],
      );
      set({ survey: { ...survey, book, standing, answered }, wrong: undefined, questions: [] });
    } catch (error) {
      // A pane that goes on saying that it reads would tell nothing.
      const questions = error instanceof Unanswered ? error.questions : [];
      set({ survey: undefined, wrong: plainError(error).message, questions });
      if (plainError(error) !== error) throw error;
    }
  };

  /** One act at a time; a failure is said, and a bug thrown on besides. */
  const act = async (doing: string, work: () => Promise<void>): Promise<void> => {
    if (state.doing !== undefined) return;
    set({ doing });
    try {
      await work();
    } catch (error) {
      say([plainError(error).message], true);
      if (plainError(error) !== error) throw error;
    } finally {
      set({ doing: undefined });
    }
  };

  const listening: (() => Promise<void> | void)[] = [];
  let waiting: ReturnType<typeof setTimeout> | undefined;
  let reading = false;
  const changed = (): void => {
    clearTimeout(waiting);
    waiting = setTimeout(() => void readSettled(), state.survey !== undefined && isBusy(state.survey) ? BUSY : SETTLED);
  };
  /** One read at a time; while our own cells are being calculated it waits until they report no more. */
  const readSettled = async (): Promise<void> => {
    // A write reads again when it is done.
    if (state.doing !== undefined) return;
    if (reading) return changed();
    reading = true;
    try {
      await read();
    } finally {
      reading = false;
    }
  };

  return {
    state: () => state,
    watch: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    start: async () => {
      try {
        await read();
        set({ selected: await port.selected() });
      } finally {
        set({ doing: undefined });
      }
      listening.push(await port.onSelect((selected) => set({ selected })), await port.onChange(changed));
    },
    stop: async () => {
      clearTimeout(waiting);
      for (const end of listening.splice(0)) await end();
    },
    write: (what, make) =>
      act(what, async () => {
        await read();
        if (state.survey === undefined) return say([state.wrong ?? "there is no survey to write to"], true);
        const { edits, said = [] } = make(state.survey);
        const { notes, undo } = await port.write(edits);
        set({ steps: [...state.steps, { what, undo }] });
        await read();
        say([`${what}: done.`, ...notes, ...said]);
      }),
    undo: () =>
      act("Undoing", async () => {
        const last = state.steps.at(-1);
        if (last === undefined) return;
        await last.undo();
        set({ steps: state.steps.slice(0, -1) });
        await read();
        say([`Undone: ${last.what}.`]);
      }),
    // What was said of one sheet does not hold for another.
    answer: (answer) => readAnswering(answer.sheet === undefined ? [...effects, answer] : [answer]),
    takeBack: () => readAnswering(effects.slice(0, -1)),
    goTo: async (row) => {
      const { survey } = state;
      if (survey === undefined) return;
      const column = survey.sized.survey.recognition.firstColumn;
      await port.goTo({ sheet: survey.chosen.sheet.name, row, column });
    },
    say,
  };
}

function answeredBy({ words = [], unit, sheet, headingRow, noHeadings }: Effect): Answered {
  return {
    ...(sheet === undefined ? {} : { sheet }),
    recognise: {
      words: words.map((word) => ({ ...word, given: true })),
      ...(headingRow === undefined ? {} : { headingRow }),
      ...(noHeadings === undefined ? {} : { noHeadings }),
    },
    settings: unit === undefined ? [] : [`unit=${unit}`],
  };
}
