import { DOMParser, type Element } from "@xmldom/xmldom";

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
  readonly label: string;
  readonly texts: readonly TextBox[];
  /** Every point of every outline, line and circle. */
  readonly points: readonly (readonly [number, number])[];
  readonly lines: readonly {
    readonly from: readonly [number, number];
    readonly to: readonly [number, number];
    readonly stroke: string;
  }[];
  readonly polygons: readonly (readonly (readonly [number, number])[])[];
  readonly circles: readonly { readonly x: number; readonly y: number; readonly r: number }[];
  readonly elements: readonly string[];
}

/** Narrower than the drawings assume, wider than a common font sets these words. */
const LETTER_EM = 0.57;
const WIDE_EM = 1;

/** Reads a drawing back with an XML parser of its own; anything that is not well-formed throws. */
export function readDrawing(svg: string): ReadDrawing {
  const document = new DOMParser({
    onError: (level, message) => {
      throw new Error(`${level}: ${message}`);
    },
  }).parseFromString(svg, "image/svg+xml");
  const root = document.documentElement as Element;
  const [, , width, height] = (root.getAttribute("viewBox") ?? "").split(" ").map(Number) as [
    number,
    number,
    number,
    number,
  ];
  const read = {
    width,
    height,
    label: root.getAttribute("aria-label") ?? "",
    texts: [] as TextBox[],
    points: [] as (readonly [number, number])[],
    lines: [] as ReadDrawing["lines"][number][],
    polygons: [] as (readonly (readonly [number, number])[])[],
    circles: [] as ReadDrawing["circles"][number][],
    elements: [] as string[],
  };
  visit(root, 0, 0, read);
  return read;
}

type Reading = {
  -readonly [K in keyof ReadDrawing]: ReadDrawing[K] extends readonly (infer T)[] ? T[] : ReadDrawing[K];
};

function visit(element: Element, dx: number, dy: number, read: Reading): void {
  const number = (name: string) => {
    const value = Number(element.getAttribute(name) ?? 0);
    if (!Number.isFinite(value)) throw new Error(`${element.tagName} ${name} is ${element.getAttribute(name)}`);
    return value;
  };
  const name = element.tagName;
  read.elements.push(name);
  const numbers = (text: string) => {
    const found = text.match(/[^\sMLA,]+/g) ?? [];
    const values = found.map(Number);
    if (values.some((value) => !Number.isFinite(value))) throw new Error(`${name} holds ${text}`);
    return values.flatMap((value, index) => (index % 2 === 0 ? [[value + dx, values[index + 1]! + dy] as const] : []));
  };
  const shift = /^translate\(([\d.-]+) ([\d.-]+)\)$/.exec(element.getAttribute("transform") ?? "");
  if (name === "g" && shift !== null) [dx, dy] = [dx + Number(shift[1]), dy + Number(shift[2])];
  if (name === "polygon" || name === "polyline") {
    const points = numbers(element.getAttribute("points") ?? "");
    read.points.push(...points);
    if (name === "polygon") read.polygons.push(points);
  }
  if (name === "path") read.points.push(...numbers(element.getAttribute("d") ?? ""));
  if (name === "line") {
    const [from, to] = [
      [number("x1") + dx, number("y1") + dy] as const,
      [number("x2") + dx, number("y2") + dy] as const,
    ];
    read.points.push(from, to);
    read.lines.push({ from, to, stroke: element.getAttribute("stroke") ?? "" });
  }
  if (name === "rect") {
    const [x, y] = [number("x") + dx, number("y") + dy];
    read.points.push([x, y], [x + number("width"), y + number("height")]);
  }
  if (name === "circle") {
    const [x, y, r] = [number("cx") + dx, number("cy") + dy, number("r")];
    read.points.push([x - r, y - r], [x + r, y + r]);
    read.circles.push({ x, y, r });
  }
  if (name === "text") read.texts.push(boxOf(element, number("x") + dx, number("y") + dy, number("font-size")));
  for (const child of Array.from(element.childNodes)) if (child.nodeType === 1) visit(child as Element, dx, dy, read);
}

function boxOf(element: Element, x: number, y: number, size: number): TextBox {
  const text = element.textContent ?? "";
  const width = [...text].reduce(
    (sum, letter) => sum + (letter.codePointAt(0)! > 0x2fff ? WIDE_EM : LETTER_EM) * size,
    0,
  );
  const anchor = element.getAttribute("text-anchor");
  const start = anchor === "end" ? -width : anchor === "middle" ? -width / 2 : 0;
  const [up, down] = [0.72 * size, 0.2 * size];
  return (element.getAttribute("transform") ?? "").startsWith("rotate(-90")
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
