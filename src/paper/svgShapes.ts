import { SaxesParser } from "saxes";

/** What a drawing of `src/drawing` is made of, in its own units. Ink is 0 for paper to 1 for full ink. */
export type Shape =
  | {
      readonly kind: "path";
      readonly points: readonly (readonly (readonly [number, number])[])[];
      readonly closed: boolean;
      readonly fill: number | undefined;
      readonly stroke: number | undefined;
      readonly strokeWidth: number;
      readonly dash: readonly number[];
    }
  | {
      readonly kind: "circle";
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly fill: number | undefined;
      readonly stroke: number | undefined;
      readonly strokeWidth: number;
    }
  | {
      readonly kind: "text";
      readonly x: number;
      readonly y: number;
      readonly text: string;
      readonly size: number;
      readonly anchor: "start" | "middle" | "end";
      readonly bold: boolean;
      readonly upright: boolean;
    };

export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
}

type Attributes = Readonly<Record<string, string>>;

/**
 * Reads a drawing made by `src/drawing`: its few elements, nothing else.
 *
 * @throws Error for an element that no drawing has used so far, so that nothing is lost in silence
 */
export function svgShapes(svg: string): Picture {
  const shapes: Shape[] = [];
  let [width, height] = [0, 0];
  let shift: readonly [number, number] = [0, 0];
  const outer: (readonly [number, number])[] = [];
  let lettering: Attributes | undefined;
  let words = "";
  const parser = new SaxesParser();
  parser.on("opentag", ({ name, attributes }) => {
    if (name === "svg")
      [width, height] = (attributes["viewBox"] ?? "").split(" ").slice(2).map(Number) as [number, number];
    else if (name === "g") {
      outer.push(shift);
      const [, x = 0, y = 0] = /^translate\((\S+) (\S+)\)$/.exec(attributes["transform"] ?? "") ?? [];
      shift = [shift[0] + Number(x), shift[1] + Number(y)];
    } else if (name === "text") [lettering, words] = [attributes, ""];
    else shapes.push(shapeOf(name, attributes, shift));
  });
  parser.on("text", (text) => {
    words += text;
  });
  parser.on("closetag", ({ name }) => {
    if (name === "g") shift = outer.pop()!;
    if (name === "text") shapes.push(textOf(lettering!, words, shift));
  });
  parser.write(svg).close();
  return { width, height, shapes };
}

function shapeOf(name: string, attributes: Attributes, [dx, dy]: readonly [number, number]): Shape {
  const number = (key: string, otherwise = 0) => (attributes[key] === undefined ? otherwise : Number(attributes[key]));
  const style = {
    fill: inkOf(attributes["fill"] ?? "none", number("fill-opacity", 1)),
    stroke: inkOf(attributes["stroke"] ?? INK, number("stroke-opacity", 1)),
    strokeWidth: number("stroke-width", 1),
  };
  const dash = (attributes["stroke-dasharray"] ?? "")
    .split(/[ ,]+/)
    .filter((each) => each !== "")
    .map(Number);
  const path = (points: readonly (readonly (readonly [number, number])[])[], closed: boolean): Shape => ({
    kind: "path",
    points: points.map((part) => part.map(([x, y]) => [x + dx, y + dy] as const)),
    closed,
    ...style,
    dash,
  });
  if (name === "circle")
    return { kind: "circle", x: number("cx") + dx, y: number("cy") + dy, radius: number("r"), ...style };
  if (name === "line") return path([pairs(["x1", "y1", "x2", "y2"].map((key) => number(key)))], false);
  if (name === "polyline" || name === "polygon")
    return path([pairs(numbersIn(attributes["points"] ?? ""))], name === "polygon");
  if (name === "rect") {
    const [x, y, right, bottom] = [
      number("x"),
      number("y"),
      number("x") + number("width"),
      number("y") + number("height"),
    ];
    return path([pairs([x, y, right, y, right, bottom, x, bottom])], true);
  }
  if (name === "path") {
    const data = attributes["d"] ?? "";
    if (/[^MLZ\d\s.,-]/.test(data)) throw new Error(`a path that pages cannot draw: ${data}`);
    return path(
      data
        .split("M")
        .slice(1)
        .map((part) => pairs(numbersIn(part))),
      false,
    );
  }
  throw new Error(`an element that pages cannot draw: ${name}`);
}

function textOf(attributes: Attributes, words: string, [dx, dy]: readonly [number, number]): Shape {
  const anchor = attributes["text-anchor"] ?? "start";
  return {
    kind: "text",
    x: Number(attributes["x"]) + dx,
    y: Number(attributes["y"]) + dy,
    text: words,
    size: Number(attributes["font-size"]),
    anchor: anchor === "middle" || anchor === "end" ? anchor : "start",
    bold: attributes["font-weight"] !== undefined,
    upright: (attributes["transform"] ?? "").startsWith("rotate(-90"),
  };
}

const INK = "#222222";
const PAPER = "#ffffff";

/** Thin ink on paper, as a tone: pages are drawn without transparency, which some printers handle badly. */
function inkOf(colour: string, opacity: number): number | undefined {
  if (colour === "none") return undefined;
  if (colour === PAPER) return 0;
  if (colour === INK) return opacity;
  throw new Error(`a colour that pages do not print: ${colour}`);
}

function numbersIn(text: string): readonly number[] {
  return (text.match(/-?[\d.]+/g) ?? []).map(Number);
}

function pairs(values: readonly number[]): readonly (readonly [number, number])[] {
  return values.flatMap((value, index) => (index % 2 === 0 ? [[value, values[index + 1]!] as const] : []));
}
