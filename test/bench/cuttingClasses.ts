import { createRandom, type Random } from "../../src/cutting/random";

/** One job of the bench, as its JSON files hold it: one sheet size, grain fixed. */
export interface Instance {
  readonly name: string;
  readonly sheet: { readonly length: number; readonly width: number };
  readonly pieces: readonly { readonly length: number; readonly width: number }[];
}

const SIZES = [20, 40, 60, 80, 100];

/** Sheet side and longest piece side of classes 1 to 6 (J. Berkey, P. Wang, Journal of the Operational Research Society 38, 1987). */
const EVEN_CLASSES: readonly (readonly [number, number])[] = [
  [10, 10],
  [30, 10],
  [40, 35],
  [100, 35],
  [100, 100],
  [300, 100],
];

/** Sheet side of classes 7 to 10 (S. Martello, D. Vigo, Management Science 44, 1998). */
const MIXED_SIDE = 100;

/** Parts in ten of the type that a mixed class is named for; each of the other three types has one part. */
const MAIN_TYPE_PARTS = 7;

/** The instances of the ten published classes: five sizes, `perSize` of each, from a seed. */
export function publishedClasses(perSize: number, seed: number): readonly Instance[] {
  const instances: Instance[] = [];
  for (let kind = 1; kind <= 10; kind++)
    for (const size of SIZES)
      for (let number = 1; number <= perSize; number++) {
        const random = createRandom(seed + kind * 1_000_003 + size * 10_007 + number);
        const even = EVEN_CLASSES[kind - 1];
        const side = even?.[0] ?? MIXED_SIDE;
        const pieces = Array.from({ length: size }, () =>
          even === undefined ? mixedPiece(random, kind - 7) : evenPiece(random, even[1]),
        );
        instances.push({
          name: `class ${kind}, ${size} pieces, no. ${number}`,
          sheet: { length: side, width: side },
          pieces,
        });
      }
  return instances;
}

/** Sheets cut up at random, edge to edge, so that no fewer sheets can hold the pieces. */
export function cutUpSheets(sheets: number, side: number, cutsPerSheet: number, seed: number): Instance {
  const random = createRandom(seed);
  const pieces: { length: number; width: number }[] = [];
  for (let sheet = 0; sheet < sheets; sheet++) {
    const panels = [{ length: side, width: side }];
    for (let cut = 0; cut < cutsPerSheet; cut++) {
      const at = random.below(panels.length);
      const { length, width } = panels[at]!;
      const byLength = random.below(2) === 0;
      const whole = byLength ? length : width;
      if (whole < 2) continue;
      const part = 1 + random.below(whole - 1);
      panels[at] = byLength ? { length: part, width } : { length, width: part };
      panels.push(byLength ? { length: whole - part, width } : { length, width: whole - part });
    }
    pieces.push(...panels);
  }
  return { name: `${sheets} sheets of ${side} cut up, no. ${seed}`, sheet: { length: side, width: side }, pieces };
}

/** Pieces like those of enclosures, on a board of 1000 x 1400 mm: sides from 60 to 560 mm, to the millimetre. */
export function boardJob(size: number, seed: number): Instance {
  const random = createRandom(seed);
  const side = () => 60 + random.below(501);
  return {
    name: `${size} board pieces`,
    sheet: { length: 1400, width: 1000 },
    pieces: Array.from({ length: size }, () => ({ length: side(), width: side() })),
  };
}

function evenPiece(random: Random, longest: number): { length: number; width: number } {
  return { length: 1 + random.below(longest), width: 1 + random.below(longest) };
}

function mixedPiece(random: Random, main: number): { length: number; width: number } {
  const part = random.below(10);
  const others = [0, 1, 2, 3].filter((type) => type !== main);
  const type = part < MAIN_TYPE_PARTS ? main : others[part - MAIN_TYPE_PARTS]!;
  const between = (low: number, high: number) => low + random.below(high - low + 1);
  const half = MIXED_SIDE / 2;
  const twoThirds = Math.ceil((2 * MIXED_SIDE) / 3);
  const small = () => between(1, half);
  const wide = () => between(twoThirds, MIXED_SIDE);
  if (type === 0) return { length: wide(), width: small() };
  if (type === 1) return { length: small(), width: wide() };
  if (type === 2) return { length: between(half, MIXED_SIDE), width: between(half, MIXED_SIDE) };
  return { length: small(), width: small() };
}
