import { unitsDown, unitsUp } from "./grid";
import type { CuttingOptions, Piece } from "./types";

/** What a way of cutting must keep to, in units; `NO_LIMITS` where the fewest sheets alone count. */
export interface Limits {
  /** Changes of direction, the first cut being 1; one more is allowed for a trim. */
  readonly stages: number;
  /** Whether any of the other limits holds. */
  readonly bench: boolean;
  /** A leftover, the piece gap included, that is wider than the gap and narrower than this is a sliver. */
  readonly leastWaste: number;
  readonly gap: number;
  /** A piece that is trimmed later takes up a leftover as wide as this, the gap not included. */
  readonly absorbed: number;
  /** No cut is longer, the piece gap included. */
  readonly cutLength: number;
}

/** No limit. */
const NEVER = Number.MAX_SAFE_INTEGER;

export const NO_LIMITS: Limits = {
  stages: NEVER,
  bench: false,
  leastWaste: 0,
  gap: 0,
  absorbed: 0,
  cutLength: NEVER,
};

/** Bits of `Job.stretch`: along its length, along its width the piece is trimmed later. */
export const STRETCH_LENGTH = 1;
export const STRETCH_WIDTH = 2;

/** The bits of a piece's `stretch`. */
export function stretchOf({ later }: Piece): number {
  return (later?.length ? STRETCH_LENGTH : 0) | (later?.width ? STRETCH_WIDTH : 0);
}

/** The limits that the options ask for. */
export function limitsOf({ bench, pieceGap = 0 }: CuttingOptions): Limits {
  if (bench === undefined) return NO_LIMITS;
  const gap = unitsUp(pieceGap);
  return {
    bench: true,
    stages: bench.stages,
    gap,
    leastWaste: unitsUp(bench.leastWaste) + gap,
    absorbed: unitsDown(bench.leastWaste),
    cutLength: bench.cutLength === undefined ? NO_LIMITS.cutLength : unitsDown(bench.cutLength) + gap,
  };
}
