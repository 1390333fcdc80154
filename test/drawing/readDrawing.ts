import type { Picture, Shape, TextShape } from "../../src/drawing/picture";
import type { Point } from "../../src/drawing/projection";

export interface TextBox {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface ReadDrawing {
  readonly width: number;
  readonly height: number;
  readonly texts: readonly TextBox[];
  /** Every point of every outline, line and circle. */
  readonly points: readonly Point[];
  /** Straight lines that are bare paper: the rims of leaders. */
  readonly leaders: readonly { readonly from: Point; readonly to: Point }[];
  readonly circles: number;
}

/** Narrower than the drawings assume, wider than a common font sets these words. */
const LETTER_EM = 0.57;
const WIDE_EM = 1;

/** What a picture says and where it draws. */
export function readDrawing({ width, height, shapes }: Picture): ReadDrawing {
  return {
    width,
    height,
    texts: shapes.flatMap((shape) => (shape.kind === "text" ? [boxOf(shape)] : [])),
    points: shapes.flatMap(pointsOf),
    leaders: shapes.flatMap((shape) =>
      shape.kind === "polyline" && shape.stroke.ink === 0 ? [{ from: shape.points[0]!, to: shape.points[1]! }] : [],
    ),
    circles: shapes.filter(({ kind }) => kind === "circle").length,
  };
}

function pointsOf(shape: Shape): readonly Point[] {
  switch (shape.kind) {
    case "polygon":
    case "polyline":
      return shape.points;
    case "hatch":
      return shape.lines.flat();
    case "rectangle": {
      const [x, y] = shape.corner;
      return [shape.corner, [x + shape.width, y + shape.height]];
    }
    case "circle": {
      const [x, y] = shape.middle;
      return [
        [x - shape.radius, y - shape.radius],
        [x + shape.radius, y + shape.radius],
      ];
    }
    case "text":
      return [];
  }
}

function boxOf({ at: [x, y], text, size, anchor, upright }: TextShape): TextBox {
  const width = [...text].reduce(
    (sum, letter) => sum + (letter.codePointAt(0)! > 0x2fff ? WIDE_EM : LETTER_EM) * size,
    0,
  );
  const start = anchor === "end" ? -width : anchor === "middle" ? -width / 2 : 0;
  const [up, down] = [0.72 * size, 0.2 * size];
  return upright
    ? { text, left: x - up, right: x + down, top: y - start - width, bottom: y - start }
    : { text, left: x + start, right: x + start + width, top: y - up, bottom: y + down };
}

export function overlapping(boxes: readonly TextBox[]): readonly string[] {
  return boxes.flatMap((one, index) =>
    boxes
      .slice(0, index)
      .filter(
        (other) => one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom,
      )
      .map((other) => `${one.text} | ${other.text}`),
  );
}

/** Texts and points outside the drawing. */
export function outside({ width, height, texts, points }: ReadDrawing): readonly string[] {
  const noise = 0.02;
  return [
    ...texts
      .filter(({ left, right, top, bottom }) => left < 0 || right > width || top < 0 || bottom > height)
      .map(({ text }) => text),
    ...points
      .filter(([x, y]) => x < -noise || y < -noise || x > width + noise || y > height + noise)
      .map(([x, y]) => `${x}, ${y}`),
  ];
}
