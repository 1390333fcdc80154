import { explodedView } from "../drawing/explodedView";
import { benchLength } from "../measure/benchLength";
import { plainCell } from "../item/answers";
import { Drawing } from "./Drawing";
import { comparedKinds, itemAt, itemFacts, partsToCut } from "./itemFacts";
import type { ViewProps } from "./viewProps";
import { Table } from "./Table";

/** The enclosure of the selected row. */
export function ItemView({ survey, state }: ViewProps) {
  const { sized: reading, chosen } = survey;
  const { selected } = state;
  const here = selected !== undefined && selected.sheet === chosen.sheet.name;
  const index = here ? itemAt(reading, selected.row) : undefined;
  if (index === undefined)
    return <p>Select a row of the survey (sheet “{chosen.sheet.name}”) and its enclosure is shown here.</p>;
  const { identifier, title, instead, sized, quantity, cautions } = itemFacts(reading, index);
  const heading = (
    <h2>
      {identifier}
      {title !== "" && <span class="title">{title}</span>}
    </h2>
  );
  if (sized === undefined)
    return (
      <>
        {heading}
        <p class="wrong">{instead}</p>
      </>
    );
  const { unit } = sized.settings;
  const [width, height, depth] = sized.assembly.outside;
  const size = (mm: number) => benchLength(mm, unit);
  const { item } = sized;
  return (
    <>
      {heading}
      <p>
        {quantity > 1 ? `${quantity} × ` : ""}
        <strong>{sized.kind.name}</strong> for {size(item.height)} × {size(item.width)} × {size(item.depth)} {unit};
        outside {size(height)} × {size(width)} × {size(depth)} {unit}
      </p>
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
      <Drawing picture={explodedView(sized.assembly, { unit, width: 340 })} />
      <h3>Parts to cut, {unit}</h3>
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
      <h3>The same object in other kinds</h3>
      <Table
        label="Kinds compared"
        headings={[
          "kind",
          `outside, ${unit}`,
          unit === "in" ? "board, ft2" : "board, m2",
          unit === "in" ? "mass, lb" : "mass, kg",
        ]}
        rows={comparedKinds(sized).map(({ kind, chosen: own, outside, boardArea, mass, why }) => [
          own ? `${kind} (chosen)` : kind,
          why ?? outside,
          plainCell(boardArea),
          plainCell(mass),
        ])}
      />
      <p class="quiet">
        Knives, heavy boxes and adhesives can hurt; hazardous objects are for those licensed to assess them. Local rules
        come first.
      </p>
    </>
  );
}
