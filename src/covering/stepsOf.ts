import type { Assembly } from "../enclosure/assembly";
import type { Step } from "../enclosure/step";
import type { Settings } from "../settings/schema";
import { CUSHION_PIECES } from "./cushionPieces";
import { partList } from "./partList";

/**
 * The order of work of an enclosure: the steps of its kind, then its cushioning. A step whose pieces are all left out,
 * because the settings drop them or nothing of them is left, is left out too.
 */
export function stepsOf(assembly: Assembly, settings: Settings): readonly Step[] {
  const cut = new Set(partList(assembly, settings).map(({ fullName }) => fullName));
  return [...assembly.kind.order(assembly, settings), ...cushioning(assembly, cut)].flatMap((step) => {
    const parts = step.parts.filter((name) => cut.has(name));
    return step.parts.length > 0 && parts.length === 0 ? [] : [{ ...step, parts }];
  });
}

function cushioning({ holder: { name: tray } }: Assembly, cut: ReadonlySet<string>): readonly Step[] {
  const before = tray === "" ? "" : `${tray} `;
  return CUSHION_PIECES.filter((name) => cut.has(`${before}${name}`)).map((name) => ({
    text: CUSHION_WORDS[name],
    parts: [`${before}${name}`],
  }));
}

const CUSHION_WORDS: Readonly<Record<(typeof CUSHION_PIECES)[number], string>> = {
  "cushion base": "Lay the cushion base on the floor; glue it at its corners alone.",
  "cushion side": "Stand the cushion sides along the walls that run from head to tail.",
  "cushion head": "Stand the cushion heads between them, at head and tail.",
  "cushion top": "Lay the cushion top over the item, loose.",
};
