import { lettering } from "./lettering";
import { PEN, type Shape } from "./picture";
import type { Point } from "./projection";

export const NUMBER_RADIUS = 9;
const SIZE = 11;
/** From the middle of a figure down to its foot. */
const FOOT = 4;

/** The number of a part in a ring: beside its name, and on the board itself where no leader reaches it. */
export function numberAt([x, y]: Point, index: number): readonly Shape[] {
  return [
    { kind: "circle", middle: [x, y], radius: NUMBER_RADIUS, fill: 0, stroke: PEN },
    lettering(String(index + 1), x, y + FOOT, { size: SIZE, anchor: "middle" }),
  ];
}
