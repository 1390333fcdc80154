import type { BookPort, SheetCell, WrittenEdits } from "../host/port";
import { Unavailable } from "../measure/errors";
import { plainError } from "../measure/fault";
import type { ColumnsEdit } from "../workbook/edits";
import { ownColumns } from "../workbook/ownMarks";
import { figureOfHeading } from "../filling/headedFigure";
import { plainMeasures } from "../filling/unitChange";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { readBookSurvey } from "../filling/readBookSurvey";
import { bothEffects, Unanswered, type Effect } from "../headings/questions";
import type { Answered, PaneModel, PaneState } from "./paneState";
import { isBusy } from "./isBusy";

/** Changes that follow one another this quickly are read once, ms. */
const SETTLED = 250;

/** The same while cells of ours are being calculated, ms: each report of a calculation would be followed by another. */
const BUSY = 2000;

/** A row that is left again this soon is not shown, ms: who holds an arrow key would wait for each drawing. */
const WALKED = 40;

export function paneModel(port: BookPort): PaneModel {
  let state: PaneState = {
    survey: undefined,
    wrong: undefined,
    questions: [],
    answers: 0,
    sheets: [],
    selected: undefined,
    beforeUnit: undefined,
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
  /** The answers that the survey was last read with. */
  let readWith: readonly Effect[] | undefined;
  const read = async (): Promise<void> => {
    try {
      const book = await port.read();
      // Nothing has changed since.
      if (state.survey?.book === book && readWith === effects) return;
      set({ sheets: book.sheets.filter(({ cells }) => cells).map(({ name }) => name) });
      const answered = answeredBy(effects.reduce(bothEffects, {}));
      const survey = readBookSurvey(book, answered, state.survey);
      readWith = effects;
      const { name } = survey.chosen.sheet;
      const own = ownColumns(book).filter(({ sheet }) => sheet === name);
      const standing = own.map(({ wantedName }) => figureOfHeading(wantedName));
      set({ survey: { ...survey, book, standing, holds: own[0]?.holds, answered }, wrong: undefined, questions: [] });
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
    // What the act before said would stand beside what this one does.
    set({ doing, said: { lines: [], failed: false } });
    try {
      await work();
    } catch (error) {
      say([plainError(error).message], true);
      if (plainError(error) !== error) throw error;
    } finally {
      set({ doing: undefined });
    }
  };

  /** The column beside the row that is selected, else beside the first. */
  const show = ({ sheet, firstRow, lastRow }: ColumnsEdit, column: number): Promise<void> => {
    const { selected } = state;
    const isHere = selected !== undefined && selected.sheet === sheet;
    const row = isHere && selected.row >= firstRow && selected.row <= lastRow ? selected.row : firstRow;
    return port.goTo({ sheet, row, column });
  };

  let walking: ReturnType<typeof setTimeout> | undefined;
  const select = (selected: SheetCell): void => {
    clearTimeout(walking);
    walking = setTimeout(() => set({ selected }), WALKED);
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
    const before = state.beforeUnit ?? state.survey?.sized;
    const sheet = state.survey?.chosen.sheet.name;
    try {
      await read();
      const now = state.survey;
      if (before !== undefined && now !== undefined && now.chosen.sheet.name === sheet)
        set({ beforeUnit: isReadOtherwise(before, now.sized) ? before : undefined });
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
      listening.push(await port.onSelect(select), await port.onChange(changed));
    },
    stop: async () => {
      clearTimeout(waiting);
      clearTimeout(walking);
      for (const end of listening.splice(0)) await end();
    },
    write: (what, ...makes) =>
      act(what, async () => {
        await read();
        const done: WrittenEdits[] = [];
        const said: string[] = [];
        const undo = async (): Promise<void> => {
          for (const each of done.toReversed()) await each.undo();
        };
        try {
          for (const make of makes) {
            if (state.survey === undefined) throw new Unavailable(state.wrong ?? "there is no survey to write to");
            const made = make(state.survey);
            if (made === undefined) continue;
            const written = await port.write(made.edits);
            done.push(written);
            said.push(...written.notes, ...(made.said ?? []));
            const { columns } = made.edits;
            const added = made.shows === true ? written.columns.find(({ replaced }) => !replaced) : undefined;
            await read();
            if (added !== undefined && columns !== undefined) await show(columns, added.column);
          }
        } catch (error) {
          // Half an act would be neither what was asked for nor what was there.
          await undo();
          await read();
          throw error;
        }
        if (done.length > 0) set({ steps: [...state.steps, { what, undo }] });
        say([`${what}: done.`, ...said]);
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
    settleUnit: () => set({ beforeUnit: undefined }),
    showOnly: (rows, caliper) =>
      act(caliper === undefined ? "Showing every row" : `Showing the rows with ${caliper.text}`, async () => {
        await port.showOnly(rows, caliper?.value);
        say([caliper === undefined ? "Every row is shown." : `Only rows with the caliper ${caliper.text} are shown.`]);
      }),
    goTo: async (row) => {
      const { survey } = state;
      if (survey === undefined) return;
      const column = survey.sized.survey.recognition.firstColumn;
      await port.goTo({ sheet: survey.chosen.sheet.name, row, column });
    },
    say,
  };
}

/** Whether numbers that name no unit are now read in another. */
function isReadOtherwise(before: SizedSurvey, now: SizedSurvey): boolean {
  return before.settings.surveyUnit !== now.settings.surveyUnit && plainMeasures(before).length > 0;
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
