import { useMemo } from "preact/hooks";
import { explodedView } from "../drawing/explodedView";
import type { Sized } from "../item/sizeItem";
import { boardName } from "../settings/boards";
import { nearestMark } from "../measure/benchLength";
import { boardReason } from "./boardReason";
import { Decisions } from "./Decisions";
import { ItemCost } from "./ItemCost";
import { FirstSteps } from "./FirstSteps";
import { Enlarged } from "./Enlarged";
import { Figures } from "./Figures";
import { KindsCompared } from "./KindsCompared";
import { itemAt, itemFacts, partsToCut } from "./itemFacts";
import type { ViewProps } from "./viewProps";

/** Width of an enlarged drawing, in its own units: names fit beside the parts. */
const LARGE = 900;
/** The enclosure of the selected row. */
export function ItemView({ model, survey, state, place, open }: ViewProps) {
  const { sized: reading, chosen } = survey;
  const { selected } = state;
  const here = selected !== undefined && selected.sheet === chosen.sheet.name;
  const index = here ? itemAt(reading, selected.row) : undefined;
  if (index === undefined)
    return (
      <>
        <p>Select a row of the survey (sheet “{chosen.sheet.name}”) and its enclosure is shown here.</p>
        <FirstSteps model={model} state={state} place={place} check={() => open("Columns")} />
      </>
    );
  const facts = itemFacts(reading, index);
  const { identifier, title, instead, sized, quantity, cautions } = facts;
  const heading = (
    <h2>
      {identifier}
      {title !== "" && <span class="title">{title}</span>}
    </h2>
  );
  const decisions = <Decisions model={model} survey={survey} index={index} busy={state.doing !== undefined} />;
  if (sized === undefined)
    return (
      <>
        {heading}
        <p class="wrong">{instead}</p>
        {decisions}
      </>
    );
  const { answerUnit: unit } = sized.settings;
  const [width, height, depth] = sized.assembly.outside;
  const size = (mm: number) => nearestMark(mm, unit);
  const { item } = sized;
  return (
    <>
      {heading}
      {decisions}
      <p>
        {quantity > 1 ? `${quantity} × ` : ""}
        <strong>{sized.kind.name}</strong> for {size(item.height)} × {size(item.width)} × {size(item.depth)} {unit};
        outside {size(height)} × {size(width)} × {size(depth)} {unit}
      </p>
      <p>
        <strong>{boardName(sized.board)}</strong>, {boardReason(sized)}.
      </p>
      <ItemCost sized={sized} quantity={quantity} />
      {cautions.length > 0 && (
        <section aria-labelledby="cautions">
          <h3 id="cautions">Cautions</h3>
          <ul class="cautions">
            {cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </section>
      )}
      <Drawings sized={sized} />
      <h3>Parts to cut, {unit}</h3>
      <p class="quiet">+ is just over the mark of the rule, − just under it.</p>
      <ul class="rows" aria-label="Parts to cut">
        {partsToCut(sized).map(({ part, count, size: cut, stock, grain, how }) => (
          <li key={part}>
            <strong>
              {count} × {part}
            </strong>
            , {cut}
            <span class="quiet">
              {" "}
              {stock}
              {grain === "" ? "" : `, grain ${grain}`}
            </span>
            {how !== "" && <p>{how}</p>}
          </li>
        ))}
      </ul>
      <KindsCompared
        model={model}
        facts={{ ...facts, sized }}
        index={index}
        busy={state.doing !== undefined}
        writable={reading.survey.recognition.columns.enclosure !== undefined}
      />
      <p class="quiet">
        Knives, heavy boxes and adhesives can hurt; hazardous objects are for those licensed to assess them. Local rules
        come first.
      </p>
    </>
  );
}

/** Made once for an enclosure, however often its row is read again. */
function Drawings({ sized: { assembly, settings } }: { readonly sized: Sized }) {
  const { answerUnit: unit } = settings;
  return useMemo(
    () => (
      <>
        <Figures assembly={assembly} />
        <Enlarged
          picture={explodedView(assembly, { unit, width: 340 })}
          large={() => explodedView(assembly, { unit, width: LARGE })}
        />
      </>
    ),
    [assembly, unit],
  );
}
