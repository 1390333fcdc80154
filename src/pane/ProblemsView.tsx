import type { Effect } from "../headings/questions";
import { problemText } from "../item/sizeItem";
import { InputError, type NoAnswer } from "../measure/errors";
import { cautionsOfRow } from "../survey/outcome";
import { causesOf, type Cause } from "./causes";
import type { ViewProps } from "./viewProps";

interface Line {
  readonly row: number;
  readonly identifier: string;
  readonly texts: readonly string[];
  /** What the row's cell holds. */
  readonly got?: string;
}

/** Rows shown at once; a longer list says how many follow. */
const MOST_LINES = 200;

/** Rows that cannot be sized, and rows with cautions; a press opens the row, and one choice sets right what several rows have in common. */
export function ProblemsView({ model, survey, state }: ViewProps) {
  const { items } = survey.sized.survey;
  const problems: Line[] = [];
  const cautions: Line[] = [];
  survey.sized.outcomes.forEach((outcome, index) => {
    const item = items[index]!;
    const about = { row: item.row, identifier: item.identifier };
    if (outcome.state === "problem") problems.push({ ...about, ...causeAndCell(outcome.error) });
    const texts = cautionsOfRow(outcome);
    if (texts.length > 0) cautions.push({ ...about, texts });
  });
  const go = (row: number) => void model.goTo(row);
  return (
    <>
      {causesOf(survey.sized).map((cause) => (
        <CauseChoice
          key={cause.text}
          cause={cause}
          busy={state.doing !== undefined}
          choose={(effect) => void model.answer(effect)}
        />
      ))}
      {survey.sized.survey.notes.length > 0 && (
        <ul class="lines">
          {survey.sized.survey.notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      <Lines
        heading="Cannot be sized"
        none="Every row that asks for an enclosure can be sized."
        lines={problems}
        go={go}
      />
      <Lines heading="With cautions" none="No row has a caution." lines={cautions} go={go} />
    </>
  );
}

/** What is wrong without the cell that has it, so that rows with one cause stand together. */
function causeAndCell(error: InputError | NoAnswer): Pick<Line, "texts" | "got"> {
  if (!(error instanceof InputError) || error.inShort !== undefined) return { texts: [problemText(error)] };
  const { argument, got, expected, cure } = error;
  return { texts: [`${argument}: ${expected}${cure === "" ? "" : `; ${cure}`}`], got };
}

interface CauseProps {
  readonly cause: Cause;
  readonly busy: boolean;
  readonly choose: (effect: Effect) => void;
}

/** One choice for all rows with a cause. */
function CauseChoice({ cause: { text, choices }, busy, choose }: CauseProps) {
  return (
    <label class="field">
      {text}
      <select value="" disabled={busy} onChange={(e) => choose(choices[e.currentTarget.selectedIndex - 1]!.effect)}>
        <option value="" disabled>
          choose
        </option>
        {choices.map(({ label }) => (
          <option key={label}>{label}</option>
        ))}
      </select>
    </label>
  );
}

interface LinesProps {
  readonly heading: string;
  readonly none: string;
  readonly lines: readonly Line[];
  readonly go: (row: number) => void;
}

function Lines({ heading, none, lines, go }: LinesProps) {
  return (
    <>
      <h2>
        {heading}
        {lines.length > 0 && `: ${lines.length}`}
      </h2>
      {lines.length === 0 && <p>{none}</p>}
      <ul class="rows">
        {grouped(lines)
          .slice(0, MOST_LINES)
          .map(({ texts, same }) => (
            <li key={same[0]!.row}>
              {same.slice(0, MOST_ROWS).map(({ row, identifier, got }) => (
                <button key={row} type="button" onClick={() => go(row)}>
                  Row {row}
                  {identifier !== unnamed(row) && `, ${identifier}`}
                  {got !== undefined && `: got ${got}`}
                </button>
              ))}
              {same.length > MOST_ROWS && <p>and {same.length - MOST_ROWS} more rows</p>}
              {texts.map((text) => (
                <p key={text}>{text}</p>
              ))}
            </li>
          ))}
      </ul>
      {grouped(lines).length > MOST_LINES && (
        <p>{grouped(lines).length - MOST_LINES} more: filter the survey by its column.</p>
      )}
    </>
  );
}

/** What a row without an identifier is called. */
const unnamed = (row: number): string => `row ${row}`;

/** Rows that a cause shows; the others are counted. */
const MOST_ROWS = 5;

/** Lines with the same texts together, in the order of their first row. */
function grouped(
  lines: readonly Line[],
): readonly { readonly texts: readonly string[]; readonly same: readonly Line[] }[] {
  const groups = new Map<string, Line[]>();
  for (const line of lines) {
    const key = line.texts.join("\n");
    const same = groups.get(key);
    if (same === undefined) groups.set(key, [line]);
    else same.push(line);
  }
  return [...groups.values()].map((same) => ({ texts: same[0]!.texts, same }));
}
