import type { SizeColumn } from "./columnPool";
import type { Effort } from "./effort";
import type { SizesProblem } from "./sizesProblem";

/** Steps of the first round, and of a later one, which starts near the end. */
const FIRST_STEPS = 300;
const LATER_STEPS = 80;

/** The step and the smoothing at the start of the first round, and what is left of them at the end of a round. */
const FIRST_STEP = 0.1;
const LAST_STEP = 0.005;
const FIRST_SMOOTHING = 0.2;
const LAST_SMOOTHING = 0.004;

/** What of the last steps' shares is kept in the next one: without it the prices swing. */
const KEPT = 0.8;

/**
 * Prices of the needs that make the bound over the columns large:
 * sum of the prices + count x the least reduced cost of a column.
 *
 * Each price is multiplied up where no column of low reduced cost holds its need, and down where too many do; "low" is soft
 * at first and hard at the end, so that the prices settle.
 *
 * @param madeCost a price is never above what it costs to make the need to measure
 * @param calm from 0 for the first round towards 1: smaller steps
 */
export function raisePrices(
  { needs, count }: SizesProblem,
  columns: readonly SizeColumn[],
  madeCost: Float64Array,
  start: Float64Array,
  calm: number,
  effort: Effort,
  until: number,
): Float64Array {
  const prices = Float64Array.from(start);
  let best = { prices: Float64Array.from(start), bound: Number.NEGATIVE_INFINITY };
  const reduced = new Float64Array(columns.length);
  const share = new Float64Array(needs.length);
  const held = new Float64Array(needs.length).fill(1);
  const [firstStep, firstSmoothing] = [
    warmed(FIRST_STEP, LAST_STEP, calm),
    warmed(FIRST_SMOOTHING, LAST_SMOOTHING, calm),
  ];
  const steps = calm === 0 ? FIRST_STEPS : LATER_STEPS;
  for (let step = 0; step < steps && effort.spent() < until; step++) {
    let least = 0;
    let looks = 0;
    for (let at = 0; at < columns.length; at++) {
      const { cost, holds } = columns[at]!;
      let sum = 0;
      for (let i = 0; i < holds.length; i++) {
        const need = holds[i]!;
        const part = needs[need]!.quantity * cost - prices[need]!;
        if (part < 0) sum += part;
      }
      looks += holds.length;
      reduced[at] = sum;
      if (sum < least) least = sum;
    }
    effort.count(looks);
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
      const { cost, holds } = columns[at]!;
      for (let i = 0; i < holds.length; i++) {
        const need = holds[i]!;
        if (needs[need]!.quantity * cost < prices[need]!) share[need]! += weight;
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

/** From `first` to `last` as `done` goes from 0 to 1, by equal factors. */
function warmed(first: number, last: number, done: number): number {
  return first * (last / first) ** done;
}
