import { DOMParser, type Element } from "@xmldom/xmldom";
import { assembledView } from "../../src/drawing/assembledView";
import { explodedView } from "../../src/drawing/explodedView";
import { lettering } from "../../src/drawing/lettering";
import { IN_PAGE, ON_WHITE } from "../../src/drawing/look";
import { picture, shapesMoved, type Shape } from "../../src/drawing/picture";
import { element, escaped } from "../../src/drawing/svg";
import { svgOf } from "../../src/drawing/svgOf";
import { book, enclosed } from "../enclosure/sizing";

/** Reads markup with a strict parser of its own; anything that is not well-formed throws. */
function parsed(svg: string): Element {
  const document = new DOMParser({
    onError: (level, message) => {
      throw new Error(`${level}: ${message}`);
    },
  }).parseFromString(svg, "image/svg+xml");
  return document.documentElement as Element;
}

const PEN = { ink: 1, width: 1 };
const TRIANGLE = [
  [0, 0],
  [10.004, 0],
  [0, 5],
] as const;

test.each<[string, Shape, string]>([
  [
    "a polygon of bare paper",
    { kind: "polygon", points: TRIANGLE, fill: 0 },
    '<polygon points="0,0 10,0 0,5" fill="#ffffff" stroke="none"/>',
  ],
  [
    "a polygon of thin ink",
    { kind: "polygon", points: TRIANGLE, fill: 0.25, stroke: { ink: 1, width: 2 } },
    '<polygon points="0,0 10,0 0,5" fill="#222222" fill-opacity="0.25" stroke-width="2"/>',
  ],
  [
    "a rectangle, dashed",
    { kind: "rectangle", corner: [1, 2], width: 3, height: 4, stroke: { ...PEN, dash: [6, 3] } },
    '<rect x="1" y="2" width="3" height="4" stroke-dasharray="6 3"/>',
  ],
  [
    "a circle of full ink",
    { kind: "circle", middle: [5, 5], radius: 2, fill: 1, stroke: { ink: 0, width: 1 } },
    '<circle cx="5" cy="5" r="2" fill="#222222" stroke="#ffffff"/>',
  ],
  ["a line", { kind: "polyline", points: TRIANGLE.slice(0, 2), stroke: PEN }, '<line x1="0" y1="0" x2="10" y2="0"/>'],
  ["a bent line", { kind: "polyline", points: TRIANGLE, stroke: PEN }, '<polyline points="0,0 10,0 0,5"/>'],
  [
    "a hatch",
    {
      kind: "hatch",
      lines: [
        [
          [0, 0],
          [1, 1],
        ],
        [
          [2, 0],
          [3, 1],
        ],
      ],
      stroke: { ink: 0.4, width: 0.6 },
    },
    '<path d="M0 0L1 1M2 0L3 1" stroke="#222222" stroke-opacity="0.4" stroke-width="0.6"/>',
  ],
  [
    "a text",
    lettering("a<b", 1, 2, { size: 12 }),
    '<text x="1" y="2" font-size="12" fill="#222222" stroke="#ffffff" stroke-width="3" paint-order="stroke">a&lt;b</text>',
  ],
])("%s is written in full", (_, shape, markup) => {
  expect(svgOf(picture("one", 20, 10, [shape]), ON_WHITE)).toContain(markup);
});

test("markup is escaped, a coordinate that is no number is refused", () => {
  expect(element("text", { x: 1, y: undefined, name: `"<&>` }, escaped("a<b\u0000"))).toBe(
    '<text x="1" name="&quot;&lt;&amp;&gt;">a&lt;b\u25a1</text>',
  );
  expect(() => picture("none", 20, 10, [{ kind: "circle", middle: [NaN, 0], radius: 1, fill: 1 }])).toThrow(RangeError);
  expect(() => picture("none", Infinity, 10, [])).toThrow(RangeError);
});

test("a picture keeps hundredths of its unit and whole sides; shapes are placed elsewhere as they are", () => {
  const shape = lettering("a", 1.004, -0.001, { size: 10.126 });
  const { width, height, shapes } = picture("one", 20.2, 10, shapesMoved([shape], 2, 3));
  expect([width, height]).toEqual([21, 10]);
  expect(shapes).toEqual([{ ...shape, at: [3, 3], size: 10.13 }]);
});

test("every shape is one element, and the title is what a screen reader says", () => {
  const drawn = [
    assembledView(enclosed(book(300, 210, 40), "slipcase")),
    explodedView(enclosed(book(300, 210, 40), "clamshell box"), { unit: "mm" }),
  ];
  for (const each of drawn) {
    const root = parsed(svgOf(each, IN_PAGE));
    expect(root.getAttribute("aria-label")).toBe(each.title);
    expect(root.childNodes.length).toBe(each.shapes.length);
    // A drawing in a page has no colour of its own.
    expect(svgOf(each)).not.toMatch(/#[0-9a-f]{3,6}|rgb|style=|id=/i);
  }
});
