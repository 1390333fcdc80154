import type { SizeColumn } from "./columnPool";
import type { Effort } from "./effort";
import type { FlatNeeds } from "./flatNeeds";
import type { SizesSearch } from "./sizesSearch";

/** Steps of the first round, and of a later one, which starts near the end. */
const FIRST_STEPS = 600;
const LATER_STEPS = 40;

/** The step and the smoothing at the start of the first round, and what is left of them at the end of a round. */
const FIRST_STEP = 0.1;
const LAST_STEP = 0.005;
const FIRST_SMOOTHING = 0.2;
const LAST_SMOOTHING = 0.004;

/** What of the last steps' shares is kept in the next one: without it the prices swing. */
const KEPT = 0.8;

/** Steps between two choices of the needs that count, and how far below its cost in a column a need's price may lie. */
const STEPS_BETWEEN = 50;
const NEAR = 1.3;

/**
 * Prices of the needs that make the bound over the columns large:
 * sum of the prices + count x the least reduced cost of a column.
 *
 * Each price is multiplied up where no column of low reduced cost holds its need, and down where too many do; "low" is soft
 * at first and hard at the end, so that the prices settle. A price is never above what it costs to make the need to measure.
 *
 * @param calm from 0 for the first round towards 1: smaller steps
 */
export function raisePrices(
  { problem: { count }, flat, madeCost, pool, effort }: SizesSearch,
  start: Float64Array,
  calm: number,
  until: number,
): Float64Array {
  const columns = pool.columns();
  const prices = Float64Array.from(start);
  let best = { prices: Float64Array.from(start), bound: Number.NEGATIVE_INFINITY };
  const reduced = new Float64Array(columns.length);
  const share = new Float64Array(prices.length);
  const held = new Float64Array(prices.length).fill(1);
  const [firstStep, firstSmoothing] = [
    warmed(FIRST_STEP, LAST_STEP, calm),
    warmed(FIRST_SMOOTHING, LAST_SMOOTHING, calm),
  ];
  const steps = calm === 0 ? FIRST_STEPS : LATER_STEPS;
  let near = nearNeeds(flat, columns, prices, effort);
  for (let step = 0; step < steps && effort.spent() < until; step++) {
    if (step > 0 && step % STEPS_BETWEEN === 0) near = nearNeeds(flat, columns, prices, effort);
    const { starts, needs, costs } = near;
    let least = 0;
    for (let at = 0; at < columns.length; at++) {
      let sum = 0;
      for (let i = starts[at]!; i < starts[at + 1]!; i++) {
        const part = costs[i]! - prices[needs[i]!]!;
        if (part < 0) sum += part;
      }
      reduced[at] = sum;
      if (sum < least) least = sum;
    }
    effort.count(needs.length);
    let total = 0;
    for (let need = 0; need < prices.length; need++) total += prices[need]!;
    const bound = total + count * least;
    if (bound > best.bound) best = { prices: Float64Array.from(prices), bound };
    const done = step / steps;
    const smoothing = (-least || total / count) * warmed(firstSmoothing, LAST_SMOOTHING, done);
    const pace = warmed(firstStep, LAST_STEP, done);
    // An empty column, of reduced cost 0, stands for a size that is not used.
    let weights = Math.exp(least / smoothing);
    share.fill(0);
    for (let at = 0; at < columns.length; at++) {
      const weight = Math.exp((least - reduced[at]!) / smoothing);
      if (weight < 1e-6) continue;
      weights += weight;
      for (let i = starts[at]!; i < starts[at + 1]!; i++) {
        const need = needs[i]!;
        if (costs[i]! < prices[need]!) share[need]! += weight;
      }
    }
    for (let need = 0; need < prices.length; need++) {
      held[need] = KEPT * held[need]! + (1 - KEPT) * ((count * share[need]!) / weights);
      const factor = Math.exp(pace * Math.max(-2, 1 - held[need]!));
      prices[need] = Math.min(madeCost[need]!, prices[need]! * factor);
    }
  }
  return best.prices;
}

/** Of each column, one after another, the needs that it holds for their price or little more. */
interface NearNeeds {
  /** Where each column starts, and behind the last where it ends. */
  readonly starts: Int32Array;
  readonly needs: Int32Array;
  readonly costs: Float64Array;
}

function nearNeeds(
  { quantity }: FlatNeeds,
  columns: readonly SizeColumn[],
  prices: Float64Array,
  effort: Effort,
): NearNeeds {
  const starts = new Int32Array(columns.length + 1);
  const most = columns.reduce((sum, { holds }) => sum + holds.length, 0);
  const [needs, costs] = [new Int32Array(most), new Float64Array(most)];
  let kept = 0;
  columns.forEach(({ cost, holds }, at) => {
    starts[at] = kept;
    for (let i = 0; i < holds.length; i++) {
      const need = holds[i]!;
      const own = quantity[need]! * cost;
      if (own > prices[need]! * NEAR) continue;
      needs[kept] = need;
      costs[kept++] = own;
    }
  });
  starts[columns.length] = kept;
  effort.count(most);
  return { starts, needs: needs.slice(0, kept), costs: costs.slice(0, kept) };
}

/** From `first` to `last` as `done` goes from 0 to 1, by equal factors. */
function warmed(first: number, last: number, done: number): number {
  return first * (last / first) ** done;
}
