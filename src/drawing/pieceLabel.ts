import { fitted, lettering, textWidth } from "./lettering";
import type { TextShape } from "./picture";

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface LabelledPiece {
  readonly texts: readonly TextShape[];
  /** What the label takes up; undefined where the piece has no room for one. */
  readonly room: Box | undefined;
}

const SIZES = [12, 10, 8.5] as const;
const LEADING = 1.15;
const INSET = 4;
/** The last line, a size, is never cut off; a name keeps at least this many ems. */
const LEAST_NAME_EMS = 4;
const DROP = 0.35;

/** Lines of words inside a box, level or upright, in the largest size that holds them; the last line is never shortened. */
export function pieceLabel(lines: readonly string[], box: Box, sizes: readonly number[] = SIZES): LabelledPiece {
  const ways = [lines, [lines.slice(0, -1).join(" "), lines.at(-1)!], [lines.join("  ")]].map((rows) => ({
    rows,
    ems: rows.map((row) => textWidth(row.slice(0, LONGEST), 1)),
  }));
  for (const fullNames of [true, false])
    for (const size of sizes)
      for (const upright of [false, true])
        for (const { rows, ems } of ways) {
          const [along, across] = upright ? [box.height, box.width] : [box.width, box.height];
          if (rows.length * size * LEADING > across - INSET / 2) continue;
          const need = ems.map((row, index) => {
            const whole = index === rows.length - 1 || fullNames || rows.length === 1;
            return (whole ? row : Math.min(row, LEAST_NAME_EMS)) * size;
          });
          if (Math.max(...need) > along - 2 * INSET) continue;
          return written(rows, box, size, upright);
        }
  return { texts: [], room: undefined };
}

/** Longer than any label shown whole. */
const LONGEST = 200;

function written(rows: readonly string[], box: Box, size: number, upright: boolean): LabelledPiece {
  const along = (upright ? box.height : box.width) - 2 * INSET;
  const [cx, cy] = [box.x + box.width / 2, box.y + box.height / 2];
  const lines = rows.map((row) => fitted(row, along, size));
  const texts = lines.map((text, index) => {
    const off = (index - (rows.length - 1) / 2) * size * LEADING + size * DROP;
    return upright
      ? lettering(text, cx + off, cy, { size, anchor: "middle", upright: true })
      : lettering(text, cx, cy + off, { size, anchor: "middle" });
  });
  const [long, deep] = [Math.max(...lines.map((line) => textWidth(line, size))), rows.length * size * LEADING];
  const [width, height] = upright ? [deep, long] : [long, deep];
  return { texts, room: { x: cx - width / 2, y: cy - height / 2, width, height } };
}
