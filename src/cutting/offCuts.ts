import type { Mm } from "../measure/units";
import type { Cut, Placement } from "./types";

/** What is left of a sheet, whole, when all its cuts are made; length along the grain. */
export interface OffCut {
  readonly x: Mm;
  readonly y: Mm;
  readonly length: Mm;
  readonly width: Mm;
}

/** An off-cut with a shorter short or long side is not worth its place on the rack. Common practice, no source. */
const LEAST_SHORT_SIDE: Mm = 40;
const LEAST_LONG_SIDE: Mm = 150;

const NOISE_MM: Mm = 1e-6;

/**
 * Follows the cuts of a sheet and keeps what ends as no piece, when it is large enough.
 *
 * @param sheet its size, its edges as they are
 * @param edgeTrim cut away all round before the first cut
 * @param pieceGap taken away behind each cut
 */
export function offCuts(
  sheet: {
    readonly length: Mm;
    readonly width: Mm;
    readonly cuts: readonly Cut[];
    readonly placements: readonly Placement[];
  },
  { edgeTrim, pieceGap }: { readonly edgeTrim: Mm; readonly pieceGap: Mm },
): readonly OffCut[] {
  const whole: OffCut = {
    x: edgeTrim,
    y: edgeTrim,
    length: sheet.length - 2 * edgeTrim,
    width: sheet.width - 2 * edgeTrim,
  };
  let panels: readonly OffCut[] = [whole];
  for (const cut of sheet.cuts)
    panels = panels.flatMap((panel) => (isCut(panel, cut) ? parted(panel, cut, pieceGap) : [panel]));
  return panels.filter(
    (panel) =>
      Math.min(panel.length, panel.width) >= LEAST_SHORT_SIDE &&
      Math.max(panel.length, panel.width) >= LEAST_LONG_SIDE &&
      !sheet.placements.some((piece) => overlaps(panel, piece)),
  );
}

export function isCut({ x, y, length, width }: OffCut, { way, at, from, to }: Cut): boolean {
  const [start, size, side, across] = way === "across" ? [x, length, y, width] : [y, width, x, length];
  return (
    at > start + NOISE_MM &&
    at < start + size + NOISE_MM &&
    from > side - NOISE_MM &&
    to < side + across + NOISE_MM &&
    to > side + NOISE_MM
  );
}

export function parted(panel: OffCut, { way, at }: Cut, pieceGap: Mm): readonly OffCut[] {
  const behind = at + pieceGap;
  if (way === "across")
    return [
      { ...panel, length: at - panel.x },
      { ...panel, x: behind, length: panel.x + panel.length - behind },
    ];
  return [
    { ...panel, width: at - panel.y },
    { ...panel, y: behind, width: panel.y + panel.width - behind },
  ];
}

function overlaps(one: OffCut, other: OffCut): boolean {
  return (
    one.x < other.x + other.length - NOISE_MM &&
    other.x < one.x + one.length - NOISE_MM &&
    one.y < other.y + other.width - NOISE_MM &&
    other.y < one.y + one.width - NOISE_MM
  );
}
