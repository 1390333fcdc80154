/**
 * What sorts of object surveys hold, as spreads of natural logarithms: `[middle, spread]`. `size` is the geometric mean
 * of height and width in mm, `shape` height over width, `thickness` depth over that mean, `density` kg/m3 of the block
 * around it. They serve the questions about units and odd rows alone, never a size. From memory.
 */
export interface ObjectClass {
  readonly name: string;
  readonly share: number;
  readonly size: readonly [middle: number, spread: number];
  readonly shape: readonly [middle: number, spread: number];
  readonly thickness: readonly [middle: number, spread: number];
  readonly density: readonly [middle: number, spread: number];
  /** The measures of this sort of object cannot be a typing error. */
  readonly distinct: boolean;
}

const log = Math.log;

export const OBJECT_CLASSES: readonly ObjectClass[] = [
  sort("books", 0.4, [log(230), 0.45], [log(1.35), 0.25], [log(0.13), 0.75], [log(650), 0.4]),
  sort("albums and wide books", 0.1, [log(260), 0.4], [log(0.8), 0.25], [log(0.12), 0.75], [log(600), 0.45]),
  sort("files and boxes of papers", 0.12, [log(270), 0.4], [log(1.2), 0.35], [log(0.35), 0.5], [log(450), 0.55]),
  sort("other objects", 0.12, [log(180), 0.75], [log(1), 0.6], [log(0.6), 0.7], [log(450), 1]),
  sort("small books", 0.05, [log(55), 0.35], [log(1.35), 0.25], [log(0.3), 0.5], [log(700), 0.4], true),
  sort("coins and medals", 0.04, [log(30), 0.45], [log(1), 0.12], [log(0.09), 0.5], [log(6300), 0.45], true),
  sort("maps and sheets", 0.05, [log(550), 0.55], [log(1), 0.5], [log(0.0025), 1.1], [log(700), 0.7], true),
  sort("framed works", 0.04, [log(480), 0.5], [log(1), 0.4], [log(0.07), 0.5], [log(550), 0.6], true),
  sort("glass plates", 0.04, [log(160), 0.4], [log(1.2), 0.3], [log(0.013), 0.5], [log(2400), 0.35], true),
  sort("hats", 0.03, [log(200), 0.35], [log(0.45), 0.4], [log(1.5), 0.4], [log(28), 0.8], true),
  sort("metal type", 0.03, [log(20), 0.6], [log(1.5), 0.7], [log(0.8), 0.8], [log(8000), 0.45], true),
  sort("rolls", 0.02, [log(250), 0.5], [log(11), 0.6], [log(0.3), 0.4], [log(300), 0.8], true),
  sort("anything", 0.02, [log(200), 1.3], [log(1), 1.1], [log(0.2), 1.6], [log(500), 1.6]),
];

type Spread = readonly [middle: number, spread: number];

function sort(
  name: string,
  share: number,
  size: Spread,
  shape: Spread,
  thickness: Spread,
  density: Spread,
  distinct = false,
): ObjectClass {
  return { name, share, size, shape, thickness, density, distinct };
}
