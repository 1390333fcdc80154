import type { Assembly, Tray } from "../enclosure/assembly";
import { boardParts, type Part } from "../enclosure/part";
import type { Mm } from "../measure/units";
import type { Settings } from "../settings/schema";
import { cutBlanks, type Blank } from "./blank";
import { caseBlanks } from "./caseBlanks";
import { cushionPieces } from "./cushionPieces";
import { sleeveBlanks } from "./sleeveBlanks";
import { trayBlanks } from "./trayBlanks";

/** Every part to cut for an enclosure: boards and cards, covering and lining, cushioning. */
export function partList(assembly: Assembly, settings: Settings): readonly Part[] {
  return [...boardParts(assembly), ...coveringParts(assembly, settings)];
}

/** Covering, lining and cushioning alone. */
export function coveringParts(assembly: Assembly, settings: Settings): readonly Part[] {
  return [...cutBlanks(blanksOf(assembly, settings), settings), ...cushionPieces(assembly, settings)];
}

/** Covering and lining blanks before they are rounded and split, with the stretches that they are summed from. */
export function blanksOf(assembly: Assembly, settings: Settings): readonly Blank[] {
  const blanks = assembly.trays.flatMap((tray) => BLANKS[tray.shape](tray, assembly.covering, settings));
  return assembly.cover === undefined ? blanks : [...blanks, ...caseBlanks(assembly.cover, settings)];
}

/** Names of covering, lining and cushion pieces, without the tray. */
export const COVERING_NAMES = [
  "wall strip",
  "spine-edge strip",
  "base panel",
  "floor lining",
  "one-piece blank",
  "case covering",
  "spine lining",
  "wrap",
  "head panel",
  "side lining",
  "back wall lining",
  "head wall lining",
  "cushion base",
  "cushion side",
  "cushion head",
  "cushion top",
] as const;

const BLANKS: Readonly<Record<Tray["shape"], (tray: Tray, c: Mm, settings: Settings) => readonly Blank[]>> = {
  tray: trayBlanks,
  sleeve: (tray, _, settings) => sleeveBlanks(tray, settings),
  wrapper: () => [],
};
