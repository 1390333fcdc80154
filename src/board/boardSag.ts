import type { Mm } from "../measure/units";
import { plateSag, type LoadedPlate } from "./plateSag";
import { requireAboveZero } from "./requireAboveZero";

/** What bending asks of a board; a stock row with its moduli filled in is one. */
export interface BendingBoard {
  readonly caliper: Mm;
  readonly modulusAlongGpa: number;
  readonly modulusAcrossGpa: number;
}

/** A base (or lid) with what lies on it. */
export interface BaseUnderLoad extends Pick<LoadedPlate, "spanX" | "spanY" | "loadKg" | "freeEdge"> {
  /** the axis that the board's grain runs along */
  readonly grain: "x" | "y";
  /** multiplies the sag of the first day into that of years on a shelf */
  readonly creep: number;
}

/**
 * Sag of a base cut from `board`, grain and creep counted.
 *
 * @param thickness of the plate when the board is glued to another (a clamshell tray to its case); else its caliper
 * @returns mm
 * @throws InputError as `plateSag`, and when creep is not above zero
 */
export function boardSag(board: BendingBoard, base: BaseUnderLoad, thickness: Mm = board.caliper): Mm {
  requireAboveZero("creep", base.creep);
  const { modulusAlongGpa: along, modulusAcrossGpa: across } = board;
  const [modulusX, modulusY] = base.grain === "x" ? [along, across] : [across, along];
  const { spanX, spanY, loadKg, freeEdge } = base;
  return base.creep * plateSag({ spanX, spanY, loadKg, freeEdge, caliper: thickness, modulusX, modulusY });
}
