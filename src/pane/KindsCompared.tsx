import { useMemo } from "preact/hooks";
import { massText } from "../measure/massText";
import { areaUnitOf } from "../survey/summary";
import { comparedKinds } from "./itemFacts";
import type { ItemFacts, KindCompared } from "./itemFacts";
import type { PaneModel } from "./paneState";
import { hoursText } from "./numbers";
import { Amount, Table } from "./Table";
import { kindCells } from "./kindCells";

interface KindsComparedProps {
  readonly model: PaneModel;
  readonly facts: ItemFacts & { readonly sized: NonNullable<ItemFacts["sized"]> };
  readonly index: number;
  readonly busy: boolean;
  /** The survey has a column of enclosures to write to. */
  readonly writable: boolean;
}

/** The same object in every kind, with what each takes, and a button that writes the kind into the row. */
export function KindsCompared({ model, facts, index, busy, writable }: KindsComparedProps) {
  const { answerUnit: unit, currency } = facts.sized.settings;
  const kinds = useMemo(() => comparedKinds(facts.sized, facts.said), [facts.sized, facts.said]);
  const headings = [
    "kind",
    `outside, ${unit}`,
    `shelf width, ${unit}`,
    "board",
    `board, ${areaUnitOf(unit)}`,
    `material${currency === "" ? "" : `, ${currency}`}`,
    "work",
    "empty",
    "cautions",
  ];
  const use = (kind: string) =>
    model.write(`Using ${kind} for ${facts.identifier}`, ({ sized, chosen }) => ({
      edits: { cells: kindCells(sized, index, kind, chosen.sheet.name) ?? [] },
    }));
  const name = ({ kind, chosen, why }: KindCompared) => (
    <>
      {kind}
      {chosen ? " (chosen)" : ""}
      {writable && !chosen && why === undefined && (
        <button
          type="button"
          class="use"
          aria-label={`Use this: ${kind} for ${facts.identifier}`}
          disabled={busy}
          onClick={() => void use(kind)}
        >
          use this
        </button>
      )}
    </>
  );
  return (
    <>
      <h3>The same object in other kinds</h3>
      <Table
        label="Kinds compared"
        headings={headings}
        rows={kinds.map((each) =>
          each.why === undefined
            ? [
                name(each),
                each.outside,
                each.shelfWidth,
                each.board,
                each.boardArea,
                each.cost === "" ? "" : <Amount>{each.cost.toFixed(2)}</Amount>,
                each.hours === "" ? "" : <Amount>{hoursText(each.hours)}</Amount>,
                each.massKg === undefined ? "" : <Amount>{massText(each.massKg, unit)}</Amount>,
                each.cautions.join("; "),
              ]
            : [name(each), each.why],
        )}
      />
      <p class="quiet">
        Material is by area at the prices of the stock table, without the waste of sheets; a blank has no price. Hours
        are those of the setting labour hours, by the size of the enclosure.
      </p>
    </>
  );
}
