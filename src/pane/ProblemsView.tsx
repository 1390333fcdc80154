import { problemText } from "../item/sizeItem";
import { cautionsOfRow } from "../survey/sizeSurvey";
import type { ViewProps } from "./viewProps";

interface Line {
  readonly row: number;
  readonly identifier: string;
  readonly texts: readonly string[];
}

/** Rows shown at once; a longer list says how many follow. */
const MOST_LINES = 200;

/** Rows that cannot be sized, and rows with cautions; a press goes there. */
export function ProblemsView({ model, survey }: ViewProps) {
  const { items } = survey.sized.survey;
  const problems: Line[] = [];
  const cautions: Line[] = [];
  survey.sized.outcomes.forEach((outcome, index) => {
    const item = items[index]!;
    const about = { row: item.row, identifier: item.identifier };
    if (outcome.state === "problem") problems.push({ ...about, texts: [problemText(outcome.error)] });
    const texts = cautionsOfRow(outcome);
    if (texts.length > 0) cautions.push({ ...about, texts });
  });
  const go = (row: number) => void model.goTo(row);
  return (
    <>
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
        {lines.slice(0, MOST_LINES).map(({ row, identifier, texts }) => (
          <li key={row}>
            <button type="button" onClick={() => go(row)}>
              Row {row}, {identifier}
            </button>
            {texts.map((text) => (
              <p key={text}>{text}</p>
            ))}
          </li>
        ))}
      </ul>
      {lines.length > MOST_LINES && <p>{lines.length - MOST_LINES} more: filter the survey by its column.</p>}
    </>
  );
}
