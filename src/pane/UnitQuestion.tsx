import { plainMeasures, unitEdits, type PlainMeasure, type UnitMeaning } from "../filling/unitChange";
import { fromMm, type LengthUnit, type WorkbookUnit } from "../measure/units";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { makeSheets } from "./makeSheets";
import { counted } from "./numbers";
import type { PaneModel } from "./paneState";
import { writeAgain } from "./writeFigures";

interface UnitQuestionProps {
  readonly model: PaneModel;
  /** The survey as it was read in its former unit. */
  readonly before: SizedSurvey;
  readonly to: WorkbookUnit;
  readonly busy: boolean;
  /** Called when it is answered, or given up. */
  readonly done: () => void;
  readonly giveUp?: string;
}

/** Another unit can mean three things, and a wrong guess would change every size: the user says which. */
export function UnitQuestion({ model, before, to, busy, done, giveUp }: UnitQuestionProps) {
  const from = before.settings.surveyUnit;
  const measures = plainMeasures(before);
  const sizes = measures.filter(({ field }) => field !== "weight");
  const example = sizes[0];
  const choose = async (meaning: UnitMeaning): Promise<void> => {
    await model.write(
      WHAT[meaning](to),
      makeSheets,
      (now) => ({ edits: unitEdits(now, before, to, meaning) }),
      // The headings of columns name the unit of their answers.
      (now) => (now.standing.length === 0 ? undefined : writeAgain(now, now.standing)),
    );
    // What was refused is still to be answered.
    if (!model.state().said.failed) done();
  };
  return (
    <section class="question" aria-label="Which unit is meant">
      <p>
        {sizes.length === 0
          ? `Every size of the survey names its own unit and is read as before. What is to be in ${WORDS[to]}?`
          : `${counted(sizes.length, "size")} of the survey ${sizes.length === 1 ? "names" : "name"} no unit; they were read in ${readIn(sizes)}. What is to be in ${WORDS[to]}?`}
      </p>
      <p>
        <button type="button" disabled={busy} onClick={() => void choose("answers")}>
          Only the answers
        </button>{" "}
        <span class="quiet">
          Sizes stay as they are; answers are in {WORDS[to]}
          {to === "in" || from === "in" ? `, and inside sizes go in steps of ${STEPS[to]}` : ""}.
        </span>
      </p>
      {example !== undefined && (
        <>
          <p>
            <button type="button" disabled={busy} onClick={() => void choose("convert")}>
              Convert the sizes
            </button>{" "}
            <span class="quiet">
              The objects stay as large as they are: {exampleText(example)} becomes{" "}
              {Number(fromMm(example.amount, to).toFixed(3))} {to}.
            </span>
          </p>
          <p>
            <button type="button" disabled={busy} onClick={() => void choose("written")}>
              The sizes are in {WORDS[to]} already
            </button>{" "}
            <span class="quiet">
              No cell changes, but {exampleText(example)} is read as {example.text} {to}.
            </span>
          </p>
        </>
      )}
      {giveUp !== undefined && (
        <p>
          <button type="button" disabled={busy} onClick={done}>
            {giveUp}
          </button>
        </p>
      )}
    </section>
  );
}

const exampleText = ({ field, identifier, text }: PlainMeasure): string => `the ${field} ${text} of ${identifier}`;

const WORDS: Readonly<Record<WorkbookUnit, string>> = { mm: "mm", cm: "cm", in: "inches" };
/** `mm`, or `mm and cm` where a column's own texts told another unit. */
const readIn = (sizes: readonly PlainMeasure[]): string => {
  const words: Readonly<Record<LengthUnit, string>> = { ...WORDS, m: "metres", ft: "feet" };
  return [...new Set(sizes.flatMap(({ readIn: unit }) => (unit === undefined ? [] : [words[unit]])))].join(" and ");
};

const STEPS: Readonly<Record<WorkbookUnit, string>> = { mm: "0.5 mm", cm: "0.5 mm", in: "1/32 in" };

const WHAT: Readonly<Record<UnitMeaning, (to: WorkbookUnit) => string>> = {
  answers: (to) => `Answers in ${WORDS[to]}`,
  convert: (to) => `Sizes converted to ${WORDS[to]}`,
  written: (to) => `Sizes read in ${WORDS[to]}`,
};
