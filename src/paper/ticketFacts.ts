import { enclosureMass } from "../board/mass";
import { partList } from "../covering/partList";
import type { Assembly } from "../enclosure/assembly";
import { X, Y, Z } from "../enclosure/space";
import { formatLength } from "../measure/formatLength";
import { massIn, massUnitOf } from "../measure/units";
import type { Construction } from "../settings/schema";
import { settingsTable } from "../settings/settingsTable";
import type { Sized } from "../item/sizeItem";
import { readAs, type Ticket } from "./ticket";

/** What is said of an enclosure at the head of its ticket. */
export function ticketFacts({
  sized,
  quantity,
  asSurveyed,
}: Ticket): readonly (readonly [label: string, text: string])[] {
  const { assembly, settings, kind } = sized;
  const { inside } = assembly.holder;
  const [x, y, z] = assembly.outside;
  const insideSizes = [Y, X, Z].map((axis) => inside.max[axis]! - inside.min[axis]!);
  const construction = constructionOf(assembly);
  const own = ownSettings(sized);
  return [
    ...asSurveyed.map((text, index) => [index === 0 ? "As surveyed" : "", text] as const),
    ["Read as", readAs(sized)],
    ["Enclosure", `${kind.name}${construction === "" ? "" : `, ${construction}`}`],
    ...(own === "" ? [] : [["Set for this row", own] as const]),
    ["To make", quantity === 1 ? "1" : `${quantity}; counts below are for all ${quantity}`],
    ["Sizes", `inside ${sizes(insideSizes, sized)}; outside, closed and covered, ${sizes([y, x, z], sized)}`],
    ["Mass", `${massText(enclosureMass(partList(assembly, settings), settings), sized)} empty`],
  ];
}

function sizes(lengths: readonly number[], { settings: { unit } }: Sized): string {
  return `${lengths.map((length) => formatLength(length, unit)).join(" × ")} ${unit}`;
}

function massText(kg: number, { settings: { unit } }: Sized): string {
  return `${Number(massIn(kg, unit).toFixed(2))} ${massUnitOf(unit)}`;
}

/** How the walls of the holding tray stand; empty where it has no walls of its own. */
export function constructionOf({ holder }: Assembly): string {
  return holder.construction === undefined ? "" : CONSTRUCTION_WORDS[holder.construction];
}

const CONSTRUCTION_WORDS: Readonly<Record<Construction, string>> = {
  "flanged base": "flanged base",
  "around base": "walls around base",
  "on base": "walls on base",
};

/** Where settings of a survey's own columns say that they come from. */
const OF_THE_ROW = "its row";

/** Settings of the row itself: `rests on foot; cushion base 10 mm`. */
function ownSettings({ settings }: Sized): string {
  return settingsTable(settings)
    .filter(([, , from]) => from === OF_THE_ROW)
    .map(([name, value]) => `${name} ${value}`)
    .join("; ");
}
