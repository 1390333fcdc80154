/** Whole numbers from a seed, the same on every machine. */
export interface Random {
  /** A whole number from 0 to `limit` - 1; `limit` at most 2^32. */
  readonly below: (limit: number) => number;
}

const WORD = 4294967296;

/**
 * A stream of whole numbers from a seed.
 *
 * Source: G. Marsaglia, "Xorshift RNGs", Journal of Statistical Software 8 (14), 2003: the triple 13, 17, 5.
 */
export function createRandom(seed: number): Random {
  let state = scrambled(seed);
  return {
    below(limit) {
      state ^= state << 13;
      state ^= state >>> 17;
      state ^= state << 5;
      return Math.floor(((state >>> 0) / WORD) * limit);
    },
  };
}

/** Spreads near seeds far apart (the finishing step of MurmurHash3, public domain) and keeps the state off zero. */
function scrambled(seed: number): number {
  let word = seed | 0;
  word = Math.imul(word ^ (word >>> 16), 0x85ebca6b);
  word = Math.imul(word ^ (word >>> 13), 0xc2b2ae35);
  word ^= word >>> 16;
  return word === 0 ? 0x9e3779b9 | 0 : word;
}
