import type { Mm } from "../measure/units";
import { lettering } from "./lettering";
import { PEN, straight, type Shape } from "./picture";
import type { Box } from "./pieceLabel";
import type { Point } from "./projection";

export interface DrawnCut {
  readonly way: "across" | "along";
  readonly at: Mm;
  readonly from: Mm;
  readonly to: Mm;
}

export const CUT_NUMBER_RADIUS = 7;
const CUT_STROKE = { width: 1.2, dash: [6, 3] } as const;
const CUT_TEXT = 9;
/** Places tried for a cut's number, as shares of the cut from its start. */
const ALONG_CUT = [0, 0.06, 0.12, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1] as const;

/** Where a sheet lies on a drawing, and its scale. */
export interface SheetFrame {
  readonly left: number;
  readonly top: number;
  readonly scale: number;
}

/** Cuts dashed, each with its number in a circle on it, where it hides no label and no other number if it can. */
export function numberedCuts(
  cuts: readonly DrawnCut[],
  { left, top, scale }: SheetFrame,
  labels: readonly Box[],
): readonly Shape[] {
  const taken: Point[] = [];
  const lines: Shape[] = [];
  const numbers = cuts.flatMap(({ way, at, from, to }, index) => {
    const onCut = (along: number): Point =>
      way === "across" ? [left + at * scale, top + along * scale] : [left + along * scale, top + at * scale];
    lines.push(straight(onCut(from), onCut(to), CUT_STROKE));
    const spots = ALONG_CUT.map((share) => onCut(from + share * (to - from)));
    const free = spots.find((spot) => isFree(spot, taken, labels)) ?? spots.find((spot) => isFree(spot, taken, []));
    const [cx, cy] = free ?? spots[0]!;
    taken.push([cx, cy]);
    return [
      { kind: "circle", middle: [cx, cy], radius: CUT_NUMBER_RADIUS, fill: 0, stroke: PEN } as const,
      lettering(String(index + 1), cx, cy + CUT_TEXT / 3, { size: CUT_TEXT, anchor: "middle", bold: true }),
    ];
  });
  return [...lines, ...numbers];
}

function isFree([x, y]: Point, taken: readonly Point[], labels: readonly Box[]): boolean {
  return (
    taken.every(([cx, cy]) => Math.hypot(cx - x, cy - y) > 2 * CUT_NUMBER_RADIUS) &&
    labels.every(
      (box) =>
        x + CUT_NUMBER_RADIUS < box.x ||
        x - CUT_NUMBER_RADIUS > box.x + box.width ||
        y + CUT_NUMBER_RADIUS < box.y ||
        y - CUT_NUMBER_RADIUS > box.y + box.height,
    )
  );
}
