import type { InsideSize, SizesProblem } from "./sizesProblem";

/** The sizes that can be a best one in a group: each side is a side that some item of it needs. */
export interface GroupGrid {
  readonly group: number;
  /** The group's needs, as places in the problem. */
  readonly needs: readonly number[];
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  readonly zs: Float64Array;
  readonly cost: (x: number, y: number, z: number) => number;
  /**
   * At most the cost of any size of the grid that is nowhere smaller, and never falling: what a bound may rest on, since a
   * larger enclosure can cost less (a lid that is no longer made in full depth).
   *
   * @param zAt place in `zs`
   */
  readonly leastCost: (x: number, y: number, zAt: number) => number;
}

/** Costs are compared with their bilinear form to this share. */
const TOLERANCE = 1e-9;

/**
 * The grid of each group, with a cost that takes four products to work out.
 *
 * The board of an enclosure of one depth is a + b x + c y + d x y: every part is as long and as wide as one of the two
 * sides, or neither, plus a constant. Each depth is fitted from four corners and checked at a fifth size; a group whose
 * costs have another form has no bound (`leastCost` is 0).
 */
export function groupGrids({ needs, cost }: SizesProblem): readonly GroupGrid[] {
  const groups = new Map<number, number[]>();
  needs.forEach(({ group }, place) => {
    const places = groups.get(group);
    if (places === undefined) groups.set(group, [place]);
    else places.push(place);
  });
  return [...groups].map(([group, places]) => {
    const sides = (side: "x" | "y" | "z") =>
      Float64Array.from(new Set(places.map((place) => needs[place]![side]))).sort();
    const [xs, ys, zs] = [sides("x"), sides("y"), sides("z")];
    const fitted = fittedCosts(group, xs, ys, zs, cost);
    return {
      group,
      needs: places,
      xs,
      ys,
      zs,
      cost: (x, y, z) => cost({ group, x, y, z }),
      leastCost: fitted ?? (() => 0),
    };
  });
}

function fittedCosts(
  group: number,
  xs: Float64Array,
  ys: Float64Array,
  zs: Float64Array,
  cost: (size: InsideSize) => number,
): GroupGrid["leastCost"] | undefined {
  // Beyond the largest, so that a grid of one side can be fitted too.
  const [x0, y0] = [xs[0]!, ys[0]!];
  const [x1, y1] = [2 * xs[xs.length - 1]!, 2 * ys[ys.length - 1]!];
  const [a, b, c, d] = [0, 1, 2, 3].map(() => new Float64Array(zs.length)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  for (const [at, z] of zs.entries()) {
    const f = (x: number, y: number) => cost({ group, x, y, z });
    const [f00, f10, f01, f11] = [f(x0, y0), f(x1, y0), f(x0, y1), f(x1, y1)];
    d[at] = (f11 - f10 - f01 + f00) / ((x1 - x0) * (y1 - y0));
    b[at] = (f10 - f00) / (x1 - x0) - d[at] * y0;
    c[at] = (f01 - f00) / (y1 - y0) - d[at] * x0;
    a[at] = f00 - b[at] * x0 - c[at] * y0 - d[at] * x0 * y0;
    const [x, y] = [xs[xs.length >> 1]!, ys[(ys.length - 1) >> 1]!];
    const fitted = a[at] + b[at] * x + c[at] * y + d[at] * x * y;
    if (Math.abs(fitted - f(x, y)) > TOLERANCE * Math.abs(f11)) return undefined;
  }
  // Of this depth or any greater one.
  for (const coefficient of [a, b, c, d])
    for (let at = zs.length - 2; at >= 0; at--) coefficient[at] = Math.min(coefficient[at]!, coefficient[at + 1]!);
  // A coefficient below zero would fall as its side grows.
  for (const coefficient of [b, c, d]) if (coefficient.some((value) => value < -TOLERANCE)) return undefined;
  return (x, y, zAt) => a[zAt]! + b[zAt]! * x + c[zAt]! * y + d[zAt]! * x * y;
}
