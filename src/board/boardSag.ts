import type { Mm } from "../measure/units";
import type { Settings } from "../settings/schema";
import type { StockRow } from "../settings/stock";
import type { BasePlate } from "./basePlate";
import { plateSag } from "./plateSag";

/** A board as a plate: what it is glued to counts with it. */
export interface BendingBoard {
  /** The row of the stock table, with its own moduli where it has them. */
  readonly listed: StockRow | undefined;
  readonly caliper: Mm;
}

/** Thickness of a base with all that is glued under it. */
export function plateThickness({ caliper }: Pick<BendingBoard, "caliper">, { gluedTo }: BasePlate): Mm {
  return caliper + gluedTo;
}

/**
 * Sag of a base cut from `board` that only rests on its edges, its grain counted.
 *
 * @returns mm
 * @throws InputError as `plateSag`
 */
export function boardSag(board: BendingBoard, plate: BasePlate, loadKg: number, settings: Settings): Mm {
  const along = board.listed?.modulusAlongGpa ?? settings.modulusAlong;
  const across = board.listed?.modulusAcrossGpa ?? settings.modulusAcross;
  const [modulusX, modulusY] = plate.grain === "x" ? [along, across] : [across, along];
  const { spanX, spanY, freeEdge } = plate;
  return plateSag({ spanX, spanY, loadKg, freeEdge, caliper: plateThickness(board, plate), modulusX, modulusY });
}
