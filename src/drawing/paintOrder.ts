import type { Cuboid } from "../enclosure/space";
import { bandsOf } from "./projection";

const NOISE = 1e-7;

/**
 * The order in which cuboids are drawn, as indices, so that what is nearer the eye covers what is behind it.
 *
 * Two cuboids that share no volume are separated by a plane along the axes, which shows the nearer one. Where their
 * drawings do not overlap the order between them is free.
 */
export function paintOrder(bodies: readonly Cuboid[]): readonly number[] {
  const bands = bodies.map(bandsOf);
  const behind = bodies.map((body, index) =>
    bodies.flatMap((other, from) =>
      from !== index && overlap(bands[index]!, bands[from]!) && isBehind(other, body) ? [from] : [],
    ),
  );
  const drawn = new Set<number>();
  const order: number[] = [];
  while (order.length < bodies.length) {
    const waiting = bodies.map((_, index) => index).filter((index) => !drawn.has(index));
    // A ring of cuboids each behind the next has no order; the one with least behind it is drawn then.
    const left = (index: number) => behind[index]!.filter((from) => !drawn.has(from)).length;
    const next = waiting.find((index) => left(index) === 0) ?? waiting.reduce((a, b) => (left(b) < left(a) ? b : a));
    drawn.add(next);
    order.push(next);
  }
  return order;
}

/** Whether the first lies behind the second: further along x, less far along y, or lower. */
export function isBehind(one: Cuboid, other: Cuboid): boolean {
  return one.min[0] >= other.max[0] - NOISE || one.max[1] <= other.min[1] + NOISE || one.max[2] <= other.min[2] + NOISE;
}

function overlap(one: ReturnType<typeof bandsOf>, other: ReturnType<typeof bandsOf>): boolean {
  return one.every(([low, high], axis) => low < other[axis]![1] - NOISE && other[axis]![0] < high - NOISE);
}
