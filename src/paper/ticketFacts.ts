import { enclosureMass } from "../board/mass";
import { partList } from "../covering/partList";
import type { Assembly } from "../enclosure/assembly";
import { X, Y, Z } from "../enclosure/space";
import { nearestMark } from "../measure/benchLength";
import { massText } from "../measure/massText";
import type { Construction } from "../settings/schema";
import { settingsTable } from "../settings/settingsTable";
import type { Sized } from "../item/sizeItem";
import { readAs, type Ticket } from "./ticket";

/** What is said of an enclosure at the head of its ticket. */
export function ticketFacts(ticket: Ticket): readonly (readonly [label: string, text: string])[] {
  const { sized, quantity, asSurveyed, batch, priority } = ticket;
  const { assembly, settings, kind } = sized;
  const { inside } = assembly.holder;
  const [x, y, z] = assembly.outside;
  const insideSizes = [Y, X, Z].map((axis) => inside.max[axis]! - inside.min[axis]!);
  const own = ownSettings(sized);
  const made = [
    kind.name,
    constructionOf(assembly),
    quantity === 1 ? "make 1" : `make ${quantity}: counts below are for all ${quantity}`,
    batch === "" ? "" : `batch ${batch}`,
    priority === "" ? "" : `priority ${priority}`,
  ];
  return [
    ["Enclosure", made.filter((text) => text !== "").join(", ")],
    ...(sayTheSame(asSurveyed, readAs(sized))
      ? []
      : asSurveyed.map((text, index) => [index === 0 ? "As surveyed" : "", text] as const)),
    ["Item", `${readAs(sized)} (height × width × depth)`],
    ...(own === "" ? [] : [["For this row", own] as const]),
    ["Inside", `${sizes(insideSizes, sized)}${assembly.restsOn === "back" ? "" : AS_IT_LIES}`],
    [
      "Outside",
      `${sizes([y, x, z], sized)}, closed and covered; ${massText(enclosureMass(partList(assembly, settings), settings), settings.answerUnit)} empty`,
    ],
  ];
}

/** An item that stands: the words of the sums below are of its tray. */
const AS_IT_LIES = " (height × width × depth of the tray)";

/** Whether a survey's cells hold the figures that they are read as, in their order. */
function sayTheSame(asSurveyed: readonly string[], read: string): boolean {
  const figures = (text: string) => text.match(/\d+([.,/]\d+)*|[a-z]+/g)?.filter((word) => !(word in UNITS)) ?? [];
  return asSurveyed.length === 1 && figures(asSurveyed[0]!).join(" ") === figures(read).join(" ");
}

const UNITS: Readonly<Record<string, true>> = { mm: true };

function sizes(lengths: readonly number[], { settings: { answerUnit: unit } }: Sized): string {
  return `${lengths.map((length) => nearestMark(length, unit)).join(" × ")} ${unit}`;
}

/** How the walls of the holding tray meet; empty where it has no separate walls. */
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
