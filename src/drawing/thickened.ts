import type { Mm } from "../measure/units";
import type { Axis, Cuboid, Vec } from "../enclosure/space";

/** Coordinates nearer than this are one. */
const NOISE_MM: Mm = 1e-6;

/**
 * Cuboids with everything thin drawn thicker: a stretch shorter than `least` between two faces becomes the geometric
 * mean of its length and `least`, so that card stays thinner than board. What touched still touches, and nothing
 * overlaps that did not.
 *
 * @param least what is drawn as long as it is, mm
 */
export function thickened(bodies: readonly Cuboid[], least: Mm): readonly Cuboid[] {
  const scales = ([0, 1, 2] as const).map((axis) => scaleOf(bodies, axis, least));
  const move = (corner: Vec): Vec => [scales[0]!(corner[0]), scales[1]!(corner[1]), scales[2]!(corner[2])];
  return bodies.map(({ min, max }) => ({ min: move(min), max: move(max) }));
}

function scaleOf(bodies: readonly Cuboid[], axis: Axis, least: Mm): (at: Mm) => Mm {
  const marks: Mm[] = [];
  for (const at of bodies.flatMap(({ min, max }) => [min[axis], max[axis]]).sort((a, b) => a - b))
    if (marks.length === 0 || at - marks[marks.length - 1]! > NOISE_MM) marks.push(at);
  const places: Mm[] = [marks[0] ?? 0];
  for (let i = 1; i < marks.length; i++) {
    const length = marks[i]! - marks[i - 1]!;
    places.push(places[i - 1]! + (length < least ? Math.sqrt(length * least) : length));
  }
  return (at) => places[marks.findIndex((mark) => Math.abs(mark - at) <= NOISE_MM)] as Mm;
}
