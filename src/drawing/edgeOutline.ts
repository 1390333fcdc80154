import type { EdgeStep } from "../enclosure/placedPart";
import type { Point } from "./projection";
import type { Template } from "./template";

type Edges = NonNullable<Template["edges"]>;

/** The outline of a piece that is cut in along both edges of one direction. */
export function edgeOutline(edges: Edges, length: number, width: number): readonly Point[] {
  const [long, across] = edges.along === "length" ? [length, width] : [width, length];
  const near = wholeEdge(edges.steps, long).flatMap(({ from, to, deep }): readonly Point[] => [
    [from, deep],
    [to, deep],
  ]);
  const far = near.map(([x, y]): Point => [x, across - y]).reverse();
  return [...near, ...far].map(([x, y]): Point => (edges.along === "length" ? [x, y] : [y, x]));
}

/** What is cut away of it, as upright rectangles: corner, width and height. */
export function edgesAway(
  { along, steps }: Edges,
  length: number,
  width: number,
): readonly { readonly corner: Point; readonly width: number; readonly height: number }[] {
  return steps.flatMap(({ from, to, deep }) =>
    along === "length"
      ? [0, width - deep].map((y) => ({ corner: [from, y] as const, width: to - from, height: deep }))
      : [0, length - deep].map((x) => ({ corner: [x, from] as const, width: deep, height: to - from })),
  );
}

/** The steps, and the stretches between them where nothing is cut away. */
function wholeEdge(steps: readonly EdgeStep[], long: number): readonly EdgeStep[] {
  let at = 0;
  const whole = steps.flatMap((step) => {
    const before = { from: at, to: step.from, deep: 0 };
    at = step.to;
    return before.to > before.from ? [before, step] : [step];
  });
  return at < long ? [...whole, { from: at, to: long, deep: 0 }] : whole;
}
