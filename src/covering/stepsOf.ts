import type { Assembly } from "../enclosure/assembly";
import type { Step } from "../enclosure/step";
import { CLOSURE_HERE } from "../enclosure/order";
import type { Settings } from "../settings/schema";
import { closureStep } from "./closurePieces";
import { CUSHION_PIECES, WELL_PIECES } from "./cushionPieces";
import { dividerSteps } from "./dividerPieces";
import { partList } from "./partList";

/**
 * The order of work of an enclosure: the steps of its kind, then its cushioning. A step whose pieces are all left out,
 * because the settings drop them or nothing of them is left, is left out too.
 */
export function stepsOf(assembly: Assembly, settings: Settings): readonly Step[] {
  const cut = new Set(partList(assembly, settings).map(({ fullName }) => fullName));
  const order = assembly.kind.order(assembly, settings);
  const fixed = closureStep(assembly, settings);
  const steps = order.includes(CLOSURE_HERE)
    ? order.flatMap((step) => (step === CLOSURE_HERE ? fixed : [step]))
    : [...order, ...fixed];
  return [...steps, ...dividerSteps(assembly, settings), ...cushioning(assembly, cut)].flatMap((step) => {
    const parts = step.parts.filter((name) => cut.has(name));
    return step.parts.length > 0 && parts.length === 0 ? [] : [{ ...step, parts }];
  });
}

function cushioning({ holder: { name: tray } }: Assembly, cut: ReadonlySet<string>): readonly Step[] {
  const before = tray === "" ? "" : `${tray} `;
  return IN_ORDER.filter((name) => cut.has(`${before}${name}`)).map((name) => ({
    text: CUSHION_WORDS[name],
    parts: [`${before}${name}`],
    ...(name === "well layer" ? { caution: "blade" } : {}),
  }));
}

const [BASE, SIDE, HEAD, TOP] = CUSHION_PIECES;
const [LAYER, RIBBON] = WELL_PIECES;
const IN_ORDER = [BASE, LAYER, SIDE, HEAD, RIBBON, TOP] as const;

const CUSHION_WORDS: Readonly<Record<(typeof IN_ORDER)[number], string>> = {
  "well layer":
    "Cut the recess out of each well layer with a long sharp blade, in several strokes; lay the layers on each other, glued at their corners alone, and try the item: it must lift out without a pull.",
  "lifting ribbon": "Lay the lifting ribbon across, under the item, its ends up at both sides.",
  "cushion base": "Lay the cushion base on the floor; glue it at its corners alone.",
  "cushion side": "Stand the cushion sides along the walls that run from head to tail.",
  "cushion head": "Stand the cushion heads between them, at head and tail.",
  "cushion top": "Lay the cushion top over the item, loose.",
};
