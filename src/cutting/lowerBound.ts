import { coverWeight, type Offer } from "./cover";
import { dualFeasible, type Share } from "./dualFeasible";
import type { Job, SheetKind } from "./job";
import { raiseLengths } from "./raise";

/** Pieces of one size, span one way, with the size raised where that is allowed. */
interface PlacedSpan {
  readonly length: number;
  readonly width: number;
}

/** Equal pieces; `ways` has two entries when they may turn and fit both ways. */
interface Group {
  readonly count: number;
  readonly ways: readonly PlacedSpan[];
}

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
  let best = 0;
  for (const one of alongLength) {
    const weighted = single ? one.values.map((value, index) => value * counts[index]!) : one.values;
    for (const other of alongWidth) {
      const total = single
        ? inner(weighted, other.values, stride)
        : leastTotal(groups, one.values, other.values, stride);
      const bound = boundBy(total * stride, one.share, other.share);
      if (stride === 1) best = Math.max(best, bound);
      else pairs.push({ one, weighted, other, bound });
    }
  }
  // What a part of the pieces promises is proved by all of them.
  pairs.sort((first, second) => second.bound - first.bound);
  for (const { one, weighted, other } of pairs.slice(0, MOST_PROVED)) {
    const total = single ? inner(weighted, other.values, 1) : leastTotal(groups, one.values, other.values, 1);
    best = Math.max(best, boundBy(total, one.share, other.share));
  }
  return best;
}

/** Shares of the length and of the width, and the bound that they seem to give. */
interface Pair {
  readonly one: Tabulated;
  /** Shares of the length, times how many pieces there are. */
  readonly weighted: Float64Array;
  readonly other: Tabulated;
  readonly bound: number;
}

interface Tabulated {
  readonly share: Share;
  readonly values: Float64Array;
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
    const own = different.map(share);
    const values = new Float64Array(lengths.length);
    for (let index = 0; index < values.length; index++) values[index] = own[placeOf[index]!]!;
    if (lengths.length > MOST_COMPARED) return [{ share, values }];
    const key = values.join(" ");
    if (seen.has(key)) return [];
    seen.add(key);
    return [{ share, values }];
  });
}

/** Of one in so many places. */
function inner(one: Float64Array, other: Float64Array, stride: number): number {
  let sum = 0;
  for (let index = 0; index < one.length; index += stride) sum += one[index]! * other[index]!;
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

/** Equal pieces together, and the sheets; with one size of sheet, pieces raised or the sheet cut down. */
function raisedGroups(job: Job): { groups: readonly Group[]; kinds: readonly SheetKind[] } {
  const ways: PlacedSpan[] = [];
  const owner: number[] = [];
  for (let piece = 0; piece < job.size; piece++)
    for (const way of waysOf(job, piece)) {
      ways.push(way);
      owner.push(piece);
    }
  const [kind] = job.kinds;
  if (kind === undefined || job.kinds.length !== 1) return { groups: groupsOf(ways, owner), kinds: job.kinds };
  const lengths = raiseLengths(
    ways.map((way) => way.length),
    owner,
    kind.length,
  );
  const widths = raiseLengths(
    ways.map((way) => way.width),
    owner,
    kind.width,
  );
  const raised = ways.map((_, at) => ({ length: lengths.lengths[at]!, width: widths.lengths[at]! }));
  return { groups: groupsOf(raised, owner), kinds: [{ ...kind, length: lengths.side, width: widths.side }] };
}

/** Pieces that lie the same ways, counted. */
function groupsOf(ways: readonly PlacedSpan[], owner: readonly number[]): readonly Group[] {
  const groups: { count: number; ways: readonly PlacedSpan[] }[] = [];
  const oneWay = new Map<number, Map<number, { count: number }>>();
  const twoWays = new Map<string, { count: number }>();
  const add = (own: readonly PlacedSpan[]) => {
    const group = { count: 1, ways: own };
    groups.push(group);
    return group;
  };
  for (let at = 0; at < ways.length; at++) {
    const way = ways[at]!;
    const { length, width } = way;
    if (owner[at + 1] === owner[at]) {
      const other = ways[++at]!;
      const key = `${length} ${width} ${other.length} ${other.width}`;
      const group = twoWays.get(key);
      if (group === undefined) twoWays.set(key, add([way, other]));
      else group.count++;
      continue;
    }
    let byWidth = oneWay.get(length);
    if (byWidth === undefined) oneWay.set(length, (byWidth = new Map<number, { count: number }>()));
    const group = byWidth.get(width);
    if (group === undefined) byWidth.set(width, add([way]));
    else group.count++;
  }
  return groups;
}

function waysOf(job: Job, piece: number): readonly PlacedSpan[] {
  const length = job.length[piece]!;
  const width = job.width[piece]!;
  const fits = (way: PlacedSpan) => job.kinds.some((kind) => way.length <= kind.length && way.width <= kind.width);
  if (job.turn[piece] === 0) return [{ length, width }];
  return [
    { length, width },
    { length: width, width: length },
  ].filter(fits);
}
