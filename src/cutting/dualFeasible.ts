/**
 * A function that gives each length a share such that lengths that fit together along a side have shares that add up to
 * no more than the side's own share.
 */
export type Share = (length: number) => number;

/** Whole parts for which the functions of Fekete and Schepers are tried. */
const MOST_PARTS = 30;

/**
 * The dual feasible functions worth trying for some lengths along a side of a sheet. All are superadditive and never
 * fall, so they hold for a shorter side too, whose share is the function's value there.
 *
 * @param cap about how many thresholds are tried
 * Source: S. Fekete, J. Schepers, "New classes of fast lower bounds for bin packing problems", Mathematical Programming
 * 91, 2001 (thresholds, parts); J. Carlier, F. Clautiaux, A. Moukrim, "New reduction procedures and lower bounds for the
 * two-dimensional bin packing problem with fixed orientation", Computers & Operations Research 34, 2007 (halves).
 */
export function dualFeasible(lengths: readonly number[], side: number, cap: number): readonly Share[] {
  const shares: Share[] = [(length) => length / side];
  for (const threshold of thresholds(lengths, side, cap)) {
    shares.push((length) => (length > side - threshold ? 1 : length < threshold ? 0 : length / side));
    const times = Math.floor(side / threshold);
    shares.push((length) => {
      if (2 * length > side) return (times - Math.floor((side - length) / threshold)) / times;
      return 2 * length === side ? 0.5 : Math.floor(length / threshold) / times;
    });
  }
  for (let parts = 1; parts <= Math.min(MOST_PARTS, side); parts++)
    shares.push((length) =>
      ((parts + 1) * length) % side === 0 ? length / side : Math.floor(((parts + 1) * length) / side) / parts,
    );
  return shares;
}

function thresholds(lengths: readonly number[], side: number, cap: number): readonly number[] {
  const all = [...new Set(lengths.map((length) => (2 * length <= side ? length : side - length)))]
    .filter((threshold) => threshold > 0)
    .sort((one, other) => one - other);
  if (all.length <= cap) return all;
  return Array.from({ length: cap }, (_, index) => all[Math.floor((index * all.length) / cap)]!);
}
