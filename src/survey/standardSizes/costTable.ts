import type { InsideSize, SizesProblem } from "./sizesProblem";

/** For each depth of a grid the cost a + b x + c y + d x y. */
export interface CostByDepth {
  readonly a: Float64Array;
  readonly b: Float64Array;
  readonly c: Float64Array;
  readonly d: Float64Array;
}

/** The sizes that can be a best one in a group: each side is a side that some item of it needs. */
export interface GroupGrid {
  readonly group: number;
  /** The group's needs, as places in the problem. */
  readonly needs: readonly number[];
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  readonly zs: Float64Array;
  /** @param zAt place in `zs` */
  readonly cost: (x: number, y: number, zAt: number) => number;
  /**
   * At most the cost of any size of the grid that is nowhere smaller, and never falling: what a bound may rest on, since a
   * larger enclosure can cost less (a lid that is no longer made in full depth).
   */
  readonly least: CostByDepth;
}

/** Costs are compared with their bilinear form to this share. */
const TOLERANCE = 1e-9;

/**
 * The grid of each group, with a cost that takes four products to work out.
 *
 * The board of an enclosure of one depth is a + b x + c y + d x y: every part is as long and as wide as one of the two
 * sides, or neither, plus a constant. Each depth is fitted from four corners and checked at a fifth size; a group whose
 * costs have another form has no bound (`least` is 0).
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
      cost:
        fitted === undefined
          ? (x, y, zAt) => cost({ group, x, y, z: zs[zAt]! })
          : (x, y, zAt) => fitted.a[zAt]! + fitted.b[zAt]! * x + fitted.c[zAt]! * y + fitted.d[zAt]! * x * y,
      least: (fitted && leastFrom(fitted)) ?? costsOf(zs.length),
    };
  });
}

function costsOf(depths: number): CostByDepth {
  const row = () => new Float64Array(depths);
  return { a: row(), b: row(), c: row(), d: row() };
}

function fittedCosts(
  group: number,
  xs: Float64Array,
  ys: Float64Array,
  zs: Float64Array,
  cost: (size: InsideSize) => number,
): CostByDepth | undefined {
  // Beyond the largest, so that a grid of one side can be fitted too.
  const [x0, y0] = [xs[0]!, ys[0]!];
  const [x1, y1] = [2 * xs[xs.length - 1]!, 2 * ys[ys.length - 1]!];
  const fitted = costsOf(zs.length);
  const { a, b, c, d } = fitted;
  for (const [at, z] of zs.entries()) {
    const f = (x: number, y: number) => cost({ group, x, y, z });
    const [f00, f10, f01, f11] = [f(x0, y0), f(x1, y0), f(x0, y1), f(x1, y1)];
    d[at] = (f11 - f10 - f01 + f00) / ((x1 - x0) * (y1 - y0));
    b[at] = (f10 - f00) / (x1 - x0) - d[at] * y0;
    c[at] = (f01 - f00) / (y1 - y0) - d[at] * x0;
    a[at] = f00 - b[at] * x0 - c[at] * y0 - d[at] * x0 * y0;
    const [x, y] = [xs[xs.length >> 1]!, ys[(ys.length - 1) >> 1]!];
    const value = a[at] + b[at] * x + c[at] * y + d[at] * x * y;
    if (Math.abs(value - f(x, y)) > TOLERANCE * Math.abs(f11)) return undefined;
  }
  return fitted;
}

/** Of each depth or any greater one; undefined where a cost would fall as a side grows. */
function leastFrom(fitted: CostByDepth): CostByDepth | undefined {
  const { a, b, c, d } = fitted;
  const least = [a, b, c, d].map((exact) => {
    const coefficient = Float64Array.from(exact);
    for (let at = coefficient.length - 2; at >= 0; at--)
      coefficient[at] = Math.min(coefficient[at]!, coefficient[at + 1]!);
    return coefficient;
  }) as [Float64Array, Float64Array, Float64Array, Float64Array];
  if (least.slice(1).some((coefficient) => coefficient.some((value) => value < -TOLERANCE))) return undefined;
  return { a: least[0], b: least[1], c: least[2], d: least[3] };
}
