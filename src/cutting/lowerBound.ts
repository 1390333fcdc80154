import { coverWeight, type Offer } from "./cover";
import { dualFeasible, type Share } from "./dualFeasible";
import type { Job } from "./job";
import { type Group, raisedGroups } from "./raisedGroups";

/** Products of shares to compute, at most: about 10 ms. */
const MOST_PRODUCTS = 4e6;

/** Of more groups, pairs of functions are compared over so many of them, and the best pairs over all. */
const MOST_GROUPS = 2000;
const MOST_PROVED = 60;

const MOST_THRESHOLDS = 60;
const FEWEST_THRESHOLDS = 4;
const OTHER_SHARES = 31;

/** Beyond so many lengths, comparing functions costs more than it saves. */
const MOST_COMPARED = 500;

/**
 * A weight of sheets below which no plan, cuttable or not, holds all pieces.
 *
 * Each piece gets the product of a share of the sheet's length and a share of its width; what lies on one sheet has
 * products that add up to at most the sheet's. The best of many pairs of shares counts.
 *
 * @param weights weight of each kind of sheet: prices for a bound on the cost, ones for a bound on the sheets
 * @returns Infinity when the sheets in hand cannot hold all pieces
 * Source: S. Fekete, J. Schepers, "A general framework for bounds for higher-dimensional orthogonal packing problems",
 * Mathematical Methods of Operations Research 60, 2004.
 */
export function lowerBound(job: Job, weights: readonly number[]): number {
  if (job.size === 0) return 0;
  const { groups, kinds } = raisedGroups(job);
  const length = Math.max(...kinds.map((kind) => kind.length));
  const width = Math.max(...kinds.map((kind) => kind.width));
  const spans = groups.flatMap((group) => group.ways);
  const functions = Math.sqrt(MOST_PRODUCTS / spans.length);
  const cap = Math.min(MOST_THRESHOLDS, Math.max(FEWEST_THRESHOLDS, Math.floor((functions - OTHER_SHARES) / 2)));
  const lengths = spans.map((span) => span.length);
  const widths = spans.map((span) => span.width);
  const alongLength = tabulate(dualFeasible(lengths, length, cap), lengths);
  const alongWidth = tabulate(dualFeasible(widths, width, cap), widths);
  const counts = Float64Array.from(groups, (group) => group.count);
  const single = groups.every((group) => group.ways.length === 1);
  const boundBy = (total: number, one: Share, other: Share) =>
    coverWeight(
      total,
      kinds.map((kind, index): Offer => ({
        share: one(kind.length) * other(kind.width),
        weight: weights[index]!,
        limit: kind.limit,
      })),
    );
  const stride = Math.max(1, Math.floor(groups.length / MOST_GROUPS));
  const pairs: Pair[] = [];
  const some = everyOf(counts, stride);
  let best = 0;
  for (const one of alongLength) {
    const weighted = single ? one.valuesOf(stride).map((value, at) => value * some[at]!) : one.valuesOf(1);
    for (const other of alongWidth) {
      const total = single
        ? inner(weighted, other.valuesOf(stride))
        : leastTotal(groups, weighted, other.valuesOf(1), stride);
      const bound = boundBy(total * stride, one.share, other.share);
      if (stride === 1) best = Math.max(best, bound);
      else pairs.push({ one, other, bound });
    }
  }
  // What a part of the pieces promises is proved by all of them.
  pairs.sort((first, second) => second.bound - first.bound);
  for (const { one, other } of pairs.slice(0, MOST_PROVED)) {
    const [values, others] = [one.valuesOf(1), other.valuesOf(1)];
    const total = single ? innerCounted(values, counts, others) : leastTotal(groups, values, others, 1);
    best = Math.max(best, boundBy(total, one.share, other.share));
  }
  return best;
}

/** Shares of the length and of the width, and the bound that they seem to give. */
interface Pair {
  readonly one: Tabulated;
  readonly other: Tabulated;
  readonly bound: number;
}

interface Tabulated {
  readonly share: Share;
  /** Shares of one in so many lengths, side by side; worked out once. */
  readonly valuesOf: (every: number) => Float64Array;
}

/** The shares of the lengths, without functions that give all lengths the same as an earlier one. */
function tabulate(shares: readonly Share[], lengths: readonly number[]): readonly Tabulated[] {
  const seen = new Set<string>();
  // Lengths repeat: each is shared out once.
  const places = new Map<number, number>();
  const placeOf = Int32Array.from(lengths, (length) => {
    const place = places.get(length) ?? places.size;
    places.set(length, place);
    return place;
  });
  const different = [...places.keys()];
  return shares.flatMap((share) => {
    const own = Float64Array.from(different, share);
    const valuesOf = remembered((every) => sharedOut(own, placeOf, every));
    if (lengths.length > MOST_COMPARED) return [{ share, valuesOf }];
    const key = valuesOf(1).join(" ");
    if (seen.has(key)) return [];
    seen.add(key);
    return [{ share, valuesOf }];
  });
}

/** What one in so many places is given. */
function sharedOut(own: Float64Array, placeOf: Int32Array, every: number): Float64Array {
  const values = new Float64Array(Math.ceil(placeOf.length / every));
  for (let at = 0; at < values.length; at++) values[at] = own[placeOf[at * every]!]!;
  return values;
}

function remembered(of: (every: number) => Float64Array): (every: number) => Float64Array {
  const known = new Map<number, Float64Array>();
  return (every) => {
    let values = known.get(every);
    if (values === undefined) known.set(every, (values = of(every)));
    return values;
  };
}

/** One in so many values, side by side: a sum that skips from one to the next waits for each of them. */
function everyOf(values: Float64Array, every: number): Float64Array {
  if (every === 1) return values;
  const some = new Float64Array(Math.ceil(values.length / every));
  for (let at = 0; at < some.length; at++) some[at] = values[at * every]!;
  return some;
}

function inner(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < one.length; at++) sum += one[at]! * other[at]!;
  return sum;
}

function innerCounted(one: Float64Array, counts: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < one.length; at++) sum += one[at]! * counts[at]! * other[at]!;
  return sum;
}

/** The total share when every group that may turn lies the way that counts less. */
function leastTotal(groups: readonly Group[], one: Float64Array, other: Float64Array, stride: number): number {
  let total = 0;
  let at = 0;
  for (let index = 0; index < groups.length; index++) {
    const { count, ways } = groups[index]!;
    if (index % stride !== 0) {
      at += ways.length;
      continue;
    }
    let share = one[at]! * other[at]!;
    at++;
    if (ways.length === 2) {
      share = Math.min(share, one[at]! * other[at]!);
      at++;
    }
    total += count * share;
  }
  return total;
}
