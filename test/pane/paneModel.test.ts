import type { BookPort, SheetCell } from "../../src/host/port";
import { InputError, Unavailable } from "../../src/measure/errors";
import { paneModel } from "../../src/pane/paneModel";
import { bookOf } from "../../src/workbook/book";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import { editWorkbook } from "../../src/workbook/editWorkbook";
import type { WorkbookEdits } from "../../src/workbook/edits";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { withBoards } from "../../src/filling/boardColumns";
import { readBookSurvey } from "../../src/filling/readBookSurvey";
import { settingEdits } from "../../src/filling/settingEdits";
import { surveyEdits } from "../../src/filling/surveyEdits";
import { unitEdits } from "../../src/filling/unitChange";
import type { PaneSurvey } from "../../src/pane/paneState";

const ROWS = [
  ["Identifier", "Height", "Width", "Depth", "Enclosure"],
  ["A1", 300, 210, 40, "tray"],
  ["A2", 300, 210, "4O", "tray"],
];

/** A port over a file in memory, with what was asked of it. */
function filePort(rows = ROWS) {
  let workbook = openWorkbook(createWorkbook([{ name: "Items", rows }]));
  let changed = (): void => undefined;
  let select: (cell: SheetCell) => void = () => undefined;
  let fails: Error | undefined;
  let reads = (): void => undefined;
  const port: BookPort = {
    read: () => {
      reads();
      return Promise.resolve(bookOf(workbook));
    },
    write: (edits: WorkbookEdits) => {
      if (fails) return Promise.reject(fails);
      const before = workbook;
      const edit = editWorkbook(workbook, edits);
      workbook = openWorkbook(edit.bytes);
      const undo = () => {
        workbook = before;
        return Promise.resolve();
      };
      return Promise.resolve({ columns: edit.columns, notes: edit.notes, undo });
    },
    selected: () => Promise.resolve({ sheet: "Items", row: 2, column: 1 }),
    goTo: () => Promise.resolve(),
    showOnly: () => Promise.resolve(),
    onSelect: (listener) => {
      select = listener;
      return Promise.resolve(() => undefined);
    },
    onChange: (listener) => {
      changed = listener;
      return Promise.resolve(() => undefined);
    },
  };
  return {
    port,
    /** Rows are selected one right after the other. */
    walk: (...rows: readonly number[]) => rows.forEach((row) => select({ sheet: "Items", row, column: 1 })),
    refuse: (error: Error | undefined) => (fails = error),
    /** Changes the workbook beside the pane, and waits until the pane has read it. */
    edit: async (makes: (survey: PaneSurvey) => WorkbookEdits) => {
      const book = bookOf(workbook);
      const survey = { ...readBookSurvey(book, { recognise: {}, settings: [] }), book } as PaneSurvey;
      workbook = openWorkbook(editWorkbook(workbook, makes(survey)).bytes);
      const read = new Promise<void>((done) => (reads = done));
      changed();
      await read;
      await new Promise((resolve) => setImmediate(resolve));
    },
    replace: (next: unknown[][]) => {
      workbook = openWorkbook(createWorkbook([{ name: "Items", rows: next as typeof ROWS }]));
      changed();
    },
  };
}

const FIGURES = ["outside height", "problem"];
const adding = (model: ReturnType<typeof paneModel>) =>
  model.write("Adding the columns", ({ book }) => {
    const options = { figures: FIGURES, settings: [], recognise: {}, values: false, cutList: false };
    return { edits: surveyEdits(book, options).edits, said: ["Told too."] };
  });

test("it reads the survey, and knows the columns that it added", async () => {
  const model = paneModel(filePort().port);
  await model.start();
  expect(model.state()).toMatchObject({ wrong: undefined, doing: undefined, selected: { row: 2 } });
  expect(model.state().survey!.sized.outcomes.map(({ state }) => state)).toEqual(["sized", "problem"]);
  expect(model.state().survey!.standing).toEqual([]);
  await adding(model);
  expect(model.state().survey!.standing).toEqual(withBoards(FIGURES));
  expect(model.state().said).toEqual({ lines: ["Adding the columns: done.", "Told too."], failed: false });
  await model.undo();
  expect(model.state().survey!.standing).toEqual([]);
  expect(model.state()).toMatchObject({ steps: [], said: { lines: ["Undone: Adding the columns."] } });
});

test("of rows that are walked through the last is shown", async () => {
  const { port, walk } = filePort();
  const model = paneModel(port);
  await model.start();
  const seen: unknown[] = [];
  const shown = new Promise<void>((done) =>
    model.watch(() => {
      seen.push(model.state().selected?.row);
      done();
    }),
  );
  walk(3, 2, 3);
  await shown;
  expect(seen).toEqual([3]);
  // A pane that is left shows nothing any more.
  walk(2);
  await model.stop();
  await new Promise((resolve) => setTimeout(resolve, 100));
  expect(seen).toEqual([3]);
});

test("what one act said is gone when another begins, also one that says nothing", async () => {
  const model = paneModel(filePort().port);
  await model.start();
  await adding(model);
  const seen: (readonly string[])[] = [];
  model.watch(() => seen.push(model.state().said.lines));
  await model.answer({ unit: "mm" });
  expect(seen.length).toBeGreaterThan(1);
  expect(new Set(seen.map((lines) => lines.length))).toEqual(new Set([0]));
  await model.showOnly(
    { sheet: "Items", column: 2, headingRow: 1, lastRow: 3, firstColumn: 1, lastColumn: 5 },
    { value: 2, text: "2 mm" },
  );
  expect(model.state().said.lines).toEqual(["Only rows with the caliper 2 mm are shown."]);
});

test("a write that is refused is said, and leaves nothing to undo", async () => {
  const { port, refuse } = filePort();
  const model = paneModel(port);
  await model.start();
  refuse(new InputError('sheet "Items"', "a protected sheet", "is kept as it is", "unprotect it"));
  await adding(model);
  expect(model.state()).toMatchObject({ steps: [], doing: undefined, said: { failed: true } });
  expect(model.state().said.lines[0]).toContain("a protected sheet");
});

test("without a survey it says why, and reads again when cells change", async () => {
  const { port, replace } = filePort([["Notes"], ["nothing here"]]);
  const model = paneModel(port);
  await model.start();
  expect(model.state().survey).toBeUndefined();
  expect(model.state().wrong).not.toBe("");
  const found = new Promise<void>((done) => {
    model.watch(() => {
      if (model.state().survey !== undefined) done();
    });
  });
  replace(ROWS);
  await found;
  expect(model.state().wrong).toBeUndefined();
});

test("a host that fails is told instead of a pane that reads for ever", async () => {
  const { port } = filePort();
  const model = paneModel({ ...port, read: () => Promise.reject(new Unavailable("Excel is busy")) });
  await model.start();
  expect(model.state()).toMatchObject({ wrong: "Excel is busy", doing: undefined });
});

test("a fault of the program is told as one, and still surfaces", async () => {
  const { port } = filePort();
  const model = paneModel({ ...port, read: () => Promise.reject(new TypeError("x is not a function")) });
  await expect(model.start()).rejects.toThrow("x is not a function");
  expect(model.state().wrong).toMatch(
    /^This is a fault of the program; your survey is as it was\. Reference [0-9a-f]{6}\.$/,
  );
});

test("while one act runs, another is not begun", async () => {
  const model = paneModel(filePort().port);
  await model.start();
  await Promise.all([adding(model), adding(model)]);
  expect(model.state().steps).toHaveLength(1);
});

test("a survey that raises a question is read once it is answered, and a write remembers the answer", async () => {
  const { port } = filePort([
    ["Identifier", "Height", "Width", "Depth", "Enclosure"],
    ["A1", 300, 210, 40, "Box"],
    ["A2", 250, 180, 30, "Box"],
  ]);
  const model = paneModel(port);
  await model.start();
  expect(model.state().survey).toBeUndefined();
  const [question] = model.state().questions;
  expect(question!.text).toBe('2 rows say "Box" (rows 2, 3). Which kind is meant?');
  await model.answer(question!.choices.find(({ label }) => label === "lidded box")!.effect);
  expect(model.state()).toMatchObject({ questions: [], wrong: undefined });
  expect(model.state().survey!.sized.outcomes.map(({ state }) => state)).toEqual(["sized", "sized"]);
  await model.write("Adding the columns", ({ book, answered }) => ({
    edits: surveyEdits(book, { ...answered, figures: FIGURES, values: false, cutList: false }).edits,
  }));
  const again = paneModel(port);
  await again.start();
  expect(again.state().questions).toEqual([]);
  expect(again.state().survey!.sized.outcomes.map(({ state }) => state)).toEqual(["sized", "sized"]);
});

test("what is said last of a column holds", async () => {
  const model = paneModel(filePort().port);
  await model.start();
  await model.answer({ words: [{ word: "Depth", meaning: "not used" }] });
  expect(model.state().survey).toBeUndefined();
  expect(model.state().wrong).toMatch(/^depth: /);
  expect(model.state().answers).toBe(1);
  await model.takeBack();
  expect(model.state()).toMatchObject({ answers: 0, wrong: undefined });
  expect(model.state().survey!.sized.survey.recognition.columns.depth!.column).toBe(4);
  await model.answer({ words: [{ word: "Depth", meaning: "not used" }] });
  await model.answer({ words: [{ word: "Depth", meaning: "depth" }] });
  expect(model.state().survey!.sized.survey.recognition.columns.depth!.column).toBe(4);
  await model.answer({ words: [{ word: "Depth", unit: "cm" }] });
  expect(model.state().survey!.sized.survey.units.depth).toBe("cm");
});

test("another unit on the settings sheet is asked about, and its answer is one step to undo", async () => {
  const { port, edit } = filePort();
  const model = paneModel(port);
  await model.start();
  await adding(model);
  expect(model.state().beforeUnit).toBeUndefined();
  await edit((survey) => settingEdits(survey, { surveyUnit: "in" }));
  const { beforeUnit } = model.state();
  expect(beforeUnit?.settings.surveyUnit).toBe("mm");
  expect(model.state().survey!.sized.settings.surveyUnit).toBe("in");
  await model.write("Answers in inches", (now) => ({ edits: unitEdits(now, beforeUnit!, "in", "answers") }));
  model.settleUnit();
  expect(model.state().survey!.sized.settings).toMatchObject({ surveyUnit: "mm", answerUnit: "in" });
  await edit((survey) => settingEdits(survey, { fit: "loose" }));
  expect(model.state().beforeUnit).toBeUndefined();
  await edit((survey) => settingEdits(survey, { surveyUnit: "cm" }));
  expect(model.state().beforeUnit).toBeDefined();
  await edit((survey) => settingEdits(survey, { surveyUnit: "mm" }));
  expect(model.state().beforeUnit).toBeUndefined();
});
