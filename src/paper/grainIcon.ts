import type { Part } from "../enclosure/part";
import type { Mm } from "../measure/units";
import { line, rectangle, type Placed } from "./page";

const LONGEST: Mm = 10;
const HIGHEST: Mm = 3.4;
const LEAST: Mm = 1.2;
const HEAD: Mm = 0.9;
const ARROW_SHARE = 0.8;
const ARROW_WEIGHT: Mm = 0.25;
/** A piece too slim for an arrow within bears it beside. */
const SLIM: Mm = 1.7;
const BESIDE: Mm = 1.1;

export const GRAIN_ICON_HEIGHT: Mm = 3.6;

/** A piece in small, its length lying, with a double-headed arrow along its grain; no arrow where either way will do. */
export function grainIcon({ length, width, grain }: Part, x: Mm, y: Mm): readonly Placed[] {
  const scale = Math.min(LONGEST / length, HIGHEST / width);
  const [w, h] = [Math.max(LEAST, length * scale), Math.max(LEAST, width * scale)];
  const slim = grain === "along length" ? h < SLIM : w < SLIM;
  const top = y + (GRAIN_ICON_HEIGHT - h - (slim && grain === "along length" ? BESIDE : 0)) / 2;
  const outline = rectangle({ x, y: top, width: w, height: h });
  if (grain === "either") return [outline];
  const along = grain === "along length";
  const half = ((along ? w : h) * ARROW_SHARE) / 2;
  const [cx, cy] = slim
    ? along
      ? [x + w / 2, top + h + BESIDE]
      : [x + w + BESIDE, top + h / 2]
    : [x + w / 2, top + h / 2];
  const at = (run: Mm, side: Mm): readonly [Mm, Mm] => (along ? [cx + run, cy + side] : [cx + side, cy + run]);
  const head = Math.min(HEAD, half);
  const wing = head / 2;
  const stroke = (from: readonly [Mm, Mm], to: readonly [Mm, Mm]) => line(from, to, { weight: ARROW_WEIGHT });
  return [
    outline,
    stroke(at(-half, 0), at(half, 0)),
    ...[-1, 1].flatMap((end) => [-wing, wing].map((side) => stroke(at(end * half, 0), at(end * (half - head), side)))),
  ];
}
