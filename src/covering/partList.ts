import type { Assembly } from "../enclosure/assembly";
import { boardParts, type Part } from "../enclosure/part";
import type { Settings } from "../settings/schema";
import { closurePieces } from "./closurePieces";
import { cushionPieces } from "./cushionPieces";
import { cutBlanks } from "./cutBlanks";
import { dividerBlanks } from "./dividerPieces";

/** Every part to cut for an enclosure: boards and cards, covering and lining, cushioning. */
export function partList(assembly: Assembly, settings: Settings): readonly Part[] {
  return [...boardParts(assembly), ...coveringParts(assembly, settings)];
}

/** Covering, lining and cushioning alone. */
export function coveringParts(assembly: Assembly, settings: Settings): readonly Part[] {
  return [
    ...cutBlanks([...assembly.kind.blanks(assembly, settings), ...dividerBlanks(assembly)], settings),
    ...cushionPieces(assembly, settings),
    ...closurePieces(assembly, settings),
  ];
}
