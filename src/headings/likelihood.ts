import type { Mm } from "../measure/units";
import { OBJECT_CLASSES, type ObjectClass } from "./objectClasses";

/** The measures of a row, in mm and kg. */
export interface Measures {
  readonly height: Mm;
  readonly width: Mm;
  readonly depth: Mm;
  readonly weightKg: number | undefined;
}

/** kg/m3 of the block around an object. */
export function density({ height, width, depth, weightKg }: Measures): number | undefined {
  return weightKg === undefined ? undefined : (weightKg * MM3_PER_M3) / (height * width * depth);
}

/** How likely the measures are for the objects that surveys hold: a natural logarithm, comparable between measures. */
export function likelihood(measures: Measures): number {
  const { size, shape, thickness, density: heavy } = featuresOf(measures);
  let sum = LEAST;
  for (const { means, halves, bare, weighed } of SORTS) {
    const [a, b, c] = [size - means[0]!, shape - means[1]!, thickness - means[2]!];
    let log = (heavy === undefined ? bare : weighed) - a * a * halves[0]! - b * b * halves[1]! - c * c * halves[2]!;
    if (heavy !== undefined) log -= (heavy - means[3]!) ** 2 * halves[3]!;
    if (log > NEGLIGIBLE) sum += Math.exp(log);
  }
  return Math.log(sum);
}

/** Whether the measures clearly show the sort of object, such as a coin or a map. */
export function isDistinct(measures: Measures): boolean {
  const features = featuresOf(measures);
  return OBJECT_CLASSES.some((each) => each.distinct && isWithin(each, features));
}

const MM3_PER_M3 = 1e9;
/** Keeps one absurd row from outweighing all others. */
const LEAST = 1e-9;
/** Below this, next to nothing is added to that. */
const NEGLIGIBLE = -28;
/** Spreads from the middle within which an object belongs to a sort. */
const WITHIN = 2.2;
const ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

interface Features {
  readonly size: number;
  readonly shape: number;
  readonly thickness: number;
  readonly density: number | undefined;
}

function featuresOf(measures: Measures): Features {
  const { height, width, depth } = measures;
  const size = Math.sqrt(height * width);
  const heavy = density(measures);
  return {
    size: Math.log(size),
    shape: Math.log(height / width),
    thickness: Math.log(depth / size),
    density: heavy === undefined ? undefined : Math.log(heavy),
  };
}

/** A sort of object as one row of numbers: this runs some ten thousand times a survey. */
const SORTS = OBJECT_CLASSES.map(({ size, shape, thickness, density: heavy, share }) => {
  const constant = (...spreads: readonly number[]) =>
    spreads.reduce((sum, spread) => sum - Math.log(spread * ROOT_TWO_PI), Math.log(share));
  return {
    means: [size[0], shape[0], thickness[0], heavy[0]],
    halves: [size, shape, thickness, heavy].map(([, spread]) => 1 / (2 * spread * spread)),
    bare: constant(size[1], shape[1], thickness[1]),
    weighed: constant(size[1], shape[1], thickness[1], heavy[1]),
  };
});

function isWithin(each: ObjectClass, features: Features): boolean {
  const near = (value: number | undefined, [middle, spread]: ObjectClass["size"]) =>
    value === undefined || Math.abs(value - middle) <= WITHIN * spread;
  return (["size", "shape", "thickness", "density"] as const).every((name) => near(features[name], each[name]));
}
