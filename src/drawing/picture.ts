import type { Point } from "./projection";

/**
 * How much ink: 0 is bare paper, which hides what is drawn below it, 1 is full ink. Tones between are thin ink.
 */
export type Ink = number;

export interface Stroke {
  readonly ink: Ink;
  readonly width: number;
  /** Drawn and left out in turn; a whole line where it is missing. */
  readonly dash?: readonly number[];
}

/** How a closed shape is drawn; what is undefined is not drawn. */
export interface ClosedStyle {
  readonly fill?: Ink;
  readonly stroke?: Stroke;
}

export interface TextShape {
  readonly kind: "text";
  /** On its baseline. */
  readonly at: Point;
  readonly text: string;
  readonly size: number;
  readonly anchor: "start" | "middle" | "end";
  readonly bold: boolean;
  /** Upwards along the left edge of what it names. */
  readonly upright: boolean;
}

/** What a picture is made of, in its own units, y downwards. Text has a rim of paper round it. */
export type Shape =
  | (ClosedStyle & { readonly kind: "polygon"; readonly points: readonly Point[] })
  | (ClosedStyle & {
      readonly kind: "rectangle";
      /** Upper left. */
      readonly corner: Point;
      readonly width: number;
      readonly height: number;
    })
  | (ClosedStyle & { readonly kind: "circle"; readonly middle: Point; readonly radius: number })
  | { readonly kind: "polyline"; readonly points: readonly Point[]; readonly stroke: Stroke }
  | {
      readonly kind: "hatch";
      readonly lines: readonly (readonly [from: Point, to: Point])[];
      readonly stroke: Stroke;
    }
  | TextShape;

/** A drawing as data. Its unit is free: whoever shows it scales it. */
export interface Picture {
  /** What a screen reader says. */
  readonly title: string;
  readonly width: number;
  readonly height: number;
  /** In the order in which they are drawn, the last on top. */
  readonly shapes: readonly Shape[];
}

/** A stroke of full ink. */
export const PEN: Stroke = { ink: 1, width: 1 };

/** Finer than any screen or printer shows. */
const STEPS_IN_A_UNIT = 100;

/**
 * A checked picture: whole width and height, every coordinate in hundredths.
 *
 * @throws RangeError for a coordinate that is no number: a picture that holds one is shown as nothing at all
 */
export function picture(title: string, width: number, height: number, shapes: readonly Shape[]): Picture {
  return {
    title,
    width: Math.ceil(finite(width)),
    height: Math.ceil(finite(height)),
    shapes: shapes.map((shape) => changed(shape, hundredths, ([x, y]) => [hundredths(x), hundredths(y)])),
  };
}

/** The same shapes elsewhere: a figure placed in a picture. */
export function shapesMoved(shapes: readonly Shape[], right: number, down: number): readonly Shape[] {
  return shapes.map((shape) =>
    changed(
      shape,
      (size) => size,
      ([x, y]) => [x + right, y + down],
    ),
  );
}

/** One straight line. */
export function straight(from: Point, to: Point, stroke: Partial<Stroke> = {}): Shape {
  return { kind: "polyline", points: [from, to], stroke: { ...PEN, ...stroke } };
}

function changed(shape: Shape, size: (value: number) => number, place: (point: Point) => Point): Shape {
  const styled = shape.kind === "text" || shape.stroke === undefined ? {} : { stroke: strokeOf(shape.stroke, size) };
  switch (shape.kind) {
    case "polygon":
    case "polyline":
      return { ...shape, ...styled, points: shape.points.map(place) };
    case "hatch":
      return { ...shape, ...styled, lines: shape.lines.map(([from, to]) => [place(from), place(to)] as const) };
    case "rectangle":
      return {
        ...shape,
        ...styled,
        corner: place(shape.corner),
        width: size(shape.width),
        height: size(shape.height),
      };
    case "circle":
      return { ...shape, ...styled, middle: place(shape.middle), radius: size(shape.radius) };
    case "text":
      return { ...shape, at: place(shape.at), size: size(shape.size) };
  }
}

function strokeOf(stroke: Stroke, size: (value: number) => number): Stroke {
  return { ...stroke, width: size(stroke.width) };
}

function hundredths(value: number): number {
  return Math.round(finite(value) * STEPS_IN_A_UNIT) / STEPS_IN_A_UNIT + 0;
}

function finite(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`a coordinate is ${value}`);
  return value;
}
