import { KINDS } from "../enclosure/registry";
import { NO_ENCLOSURE, problemText } from "../item/sizeItem";
import { InputError } from "../measure/errors";
import { cellText } from "../measure/blank";
import { cautionsOfRow } from "../survey/sizeSurvey";
import type { ViewProps } from "./viewProps";

interface Line {
  readonly row: number;
  readonly identifier: string;
  readonly texts: readonly string[];
}

/** Rows shown at once; a longer list says how many follow. */
const MOST_LINES = 200;

/** Rows that say the same word for an enclosure, which no kind is known by. */
interface UnknownWord {
  readonly word: string;
  readonly rows: number;
}

/** Rows that cannot be sized, and rows with cautions; a press opens the row, and one choice says what a word means in all rows. */
export function ProblemsView({ model, survey, state }: ViewProps) {
  const { items } = survey.sized.survey;
  const problems: Line[] = [];
  const cautions: Line[] = [];
  const unknown = new Map<string, number>();
  survey.sized.outcomes.forEach((outcome, index) => {
    const item = items[index]!;
    const about = { row: item.row, identifier: item.identifier };
    if (outcome.state === "problem") problems.push({ ...about, texts: [problemText(outcome.error)] });
    const isWord =
      outcome.state === "problem" && outcome.error instanceof InputError && outcome.error.argument === "enclosure";
    const word = isWord ? cellText(item.cells.enclosure) : "";
    if (word !== "") unknown.set(word, (unknown.get(word) ?? 0) + 1);
    const texts = cautionsOfRow(outcome);
    if (texts.length > 0) cautions.push({ ...about, texts });
  });
  const go = (row: number) => void model.goTo(row);
  const words = [...unknown].map(([word, rows]): UnknownWord => ({ word, rows }));
  const means = (word: string, meaning: string) => void model.answer({ words: [{ word, meaning }] });
  return (
    <>
      {words.map((each) => (
        <WordMeaning key={each.word} {...each} busy={state.doing !== undefined} means={means} />
      ))}
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

interface WordProps extends UnknownWord {
  readonly busy: boolean;
  readonly means: (word: string, meaning: string) => void;
}

/** One choice for all rows with a word. */
function WordMeaning({ word, rows, busy, means }: WordProps) {
  return (
    <label class="field">
      {rows === 1 ? "One row says" : `${rows} rows say`} “{word}”. In all of them it means
      <select value="" disabled={busy} onChange={(e) => means(word, e.currentTarget.value)}>
        <option value="" disabled>
          choose
        </option>
        {[...KINDS.map(({ name }) => name), NO_ENCLOSURE].map((name) => (
          <option key={name}>{name}</option>
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
              {same.slice(0, MOST_ROWS).map(({ row, identifier }) => (
                <button key={row} type="button" onClick={() => go(row)}>
                  Row {row}, {identifier}
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
