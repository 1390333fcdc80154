/** Half of the draws at an end, where a bound would break first. */
export function between(low: number, high: number, random: () => number): number {
  const coin = random();
  if (coin < 0.25) return low;
  if (coin < 0.5) return high;
  return low + (high - low) * random();
}

export function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** Mulberry32: repeatable draws from 0 to 1. */
export function generator(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
