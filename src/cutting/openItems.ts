/** What items in work count, in parts of one set-up. */
export interface OpenEffort {
  /** An item that is open on one sheet more. */
  readonly perOpen: number;
  /** On each sheet, an item more than the limit. */
  readonly perOver: number;
  readonly limit: number;
}

/** A sheet with the numbers of the items that have a piece on it. */
export interface SheetItems {
  readonly items: Int32Array;
}

/**
 * What an order of sheets costs by the items that are open: begun on a sheet of before or on this one, and finished on
 * this one or a later one.
 *
 * @param count items in all
 */
export function createOpenCost(
  count: number,
  { perOpen, perOver, limit }: OpenEffort,
): (sheets: readonly SheetItems[]) => number {
  const first = new Int32Array(count);
  const last = new Int32Array(count);
  let change = new Int32Array(0);
  return (sheets) => {
    if (perOpen === 0 && perOver === 0) return 0;
    if (change.length < sheets.length + 1) change = new Int32Array(2 * sheets.length + 2);
    first.fill(-1);
    for (let at = 0; at < sheets.length; at++) {
      const { items } = sheets[at]!;
      for (let index = 0; index < items.length; index++) {
        const item = items[index]!;
        if (first[item]! < 0) first[item] = at;
        last[item] = at;
      }
    }
    change.fill(0, 0, sheets.length + 1);
    for (let item = 0; item < count; item++) {
      if (first[item]! < 0) continue;
      change[first[item]!]!++;
      change[last[item]! + 1]!--;
    }
    let open = 0;
    let cost = 0;
    for (let at = 0; at < sheets.length; at++) {
      open += change[at]!;
      cost += perOpen * open + (open > limit ? perOver * (open - limit) : 0);
    }
    return cost;
  };
}
