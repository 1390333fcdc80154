import { boardParts } from "../../src/enclosure/part";
import { flatFigure } from "../../src/drawing/flatFigure";
import { picture, type Picture } from "../../src/drawing/picture";
import type { Template } from "../../src/drawing/template";
import type { Blank } from "../../src/enclosure/blank";
import { trayBlanks } from "../../src/enclosure/build/trayBlanks";
import { settledOf } from "../settings/settledOf";
import { templateOfBlank } from "../../src/drawing/templateOfBlank";
import { templateOfPart } from "../../src/drawing/templateOfPart";
import { book, enclosed } from "../enclosure/sizing";
import { outside, overlapping, readDrawing } from "./readDrawing";

const WALL = [
  { name: "outside", length: 44.9 },
  { name: "rim", length: 2 },
  { name: "inside", length: 42.5 },
  { name: "on floor", length: 15 },
];
const ONE_PIECE: Blank = {
  material: "covering",
  name: "one-piece blank",
  tray: "",
  count: 1,
  along: 515.8,
  across: 425.8,
  within: false,
  note: "",
  runAlong: [...[...WALL].reverse(), { name: "base", length: 307 }, ...WALL],
  runAcross: [...[...WALL].reverse(), { name: "base", length: 217 }, ...WALL],
  cutAway: { along: 104.4, across: 89.4, at: "all" },
};
const STRIP: Blank = {
  ...ONE_PIECE,
  name: "wall strip",
  along: 1063,
  across: 119.4,
  runAlong: [307, 217, 307, 217, 15].map((length) => ({ name: length === 15 ? "lap" : "wall", length })),
  runAcross: [{ name: "turn-in", length: 15 }, ...WALL],
};

function blankOf(text: string, item = book(300, 210, 40)) {
  return templateOfPart(boardParts(enclosed(item, "folded tray", text))[0]!);
}

/** A flat figure as a picture of its own. */
function drawn(template: Template, wide: number): Picture {
  const { shapes, width, height } = flatFigure(template, { unit: "mm", width: wide, height: 0.75 * wide });
  return picture(template.name, width, height, shapes);
}

test.each([
  ["one-piece blank", templateOfBlank(ONE_PIECE)],
  ["wall strip without corners", templateOfBlank({ ...STRIP, ...{ cutAway: { along: 0, across: 0, at: "all" } } })],
  ["open at the spine", templateOfBlank({ ...ONE_PIECE, cutAway: { along: 104.4, across: 89.4, at: "far across" } })],
  ["plain panel", templateOfBlank({ ...ONE_PIECE, runAlong: [], runAcross: [] })],
  ["folded tray, cut", blankOf("fold=cut")],
  ["folded tray, creased", blankOf("fold=crease")],
  ["folded tray, thin", blankOf("fold=crease", book(90, 90, 1))],
  ["folded tray, long", blankOf("fold=cut", book(2000, 60, 20))],
  ...boardParts(enclosed(book(300, 210, 2), "four-flap wrapper")).map(
    (part) => [part.fullName, templateOfPart(part)] as const,
  ),
] as const)("a template of a %s writes nothing over anything else or outside", (_, template) => {
  for (const width of [640, 320]) {
    const read = readDrawing(drawn(template, width));
    expect(outside(read)).toEqual([]);
    expect(overlapping(read.texts)).toEqual([]);
  }
});

test("a one-piece blank is drawn in whole millimetres, its stretches as a bench rule reads them", () => {
  const template = templateOfBlank(ONE_PIECE);
  expect([template.length, template.width]).toEqual([516, 426]);
  const said = readDrawing(drawn(template, 640)).texts.map(({ text }) => text);
  expect(said[0]).toBe("one-piece blank, 516 × 426 mm");
  expect(said.filter((text) => text === "outside 45")).toHaveLength(4);
  expect(said).toContain("base 307");
  expect(said).toContain("hatched: 4 corners cut away, 104.5 × 89.5 each");
});

test("a fold of a one-piece blank ends where the corner is cut away, and runs on between the tabs", () => {
  const folds = templateOfBlank(ONE_PIECE).lines;
  const at = (x: number) => folds.find(({ from, to }) => Math.abs(from[0] - x) < 1e-9 && Math.abs(to[0] - x) < 1e-9);
  expect(at(15)).toMatchObject({ from: [15, 89.4], to: [15, 425.8 - 89.4] });
  expect(at(104.4)).toMatchObject({ from: [104.4, 0], to: [104.4, 425.8] });
});

test("a wall strip is slit at its corners, and not at its lap: by hand", () => {
  // Board 2, all of the inside covered: 42.5 down inside and 15 on the floor, in from the edge, at the four corners.
  const strip = trayBlanks(enclosed(book(300, 210, 40), "tray", "wall board=2").holder, settledOf("wall board=2")).find(
    ({ name }) => name === "wall strip",
  )!;
  const { lines } = templateOfBlank(strip);
  const cuts = lines.filter(({ kind }) => kind === "cut");
  expect(cuts.map(({ from, to }) => [from[0], to[0], to[1] - from[1]])).toEqual(
    [153.5, 153.5 + 217, 153.5 + 217 + 307, 153.5 + 2 * 217 + 307].map((x) => [x, x, strip.slit]),
  );
  expect(strip.slit).toBe(57.5);
  expect(cuts.every(({ to }) => to[1] === strip.across)).toBe(true);
});

test("a cut folded tray loses a notch a board shorter than its wall, and is cut free along it", () => {
  // Walls 42.5, board 2; through walls run along the length: notch 40.5 x 42.5.
  const { corners, lines, alongLength } = blankOf("fold=cut");
  expect(corners.map(({ length, width }) => [length, width])).toEqual(Array(4).fill([40.5, 42.5]));
  expect(lines.filter(({ kind }) => kind === "cut")).toContainEqual({
    kind: "cut",
    from: [40.5, 42.5],
    to: [42.5, 42.5],
  });
  expect(alongLength).toEqual([
    { name: "wall", length: 42.5 },
    { name: "base", length: 303 },
    { name: "wall", length: 42.5 },
  ]);
});

test("a creased tray keeps a tab at both ends of its head walls", () => {
  // Cx = 217, t = 2: blank 392 x 306, creases 215 apart, tabs 15 x 42.5 from 45.5 in to 30.5.
  const { corners, lines } = blankOf("fold=crease");
  expect(corners[0]).toMatchObject({ length: 42.5, width: 30.5 });
  expect(lines).toContainEqual({ kind: "fold", from: [0, 45.5], to: [42.5, 45.5] });
  expect(lines).toContainEqual({ kind: "cut", from: [42.5, 30.5], to: [42.5, 45.5] });
});

test("a wrapper's creases stand as the sizing puts them", () => {
  const [inner] = boardParts(enclosed(book(300, 210, 40), "four-flap wrapper"));
  const { alongLength } = templateOfPart(inner!);
  expect(alongLength.map(({ name }) => name)).toEqual(["flap", "wall", "base", "wall", "flap"]);
  // Hw 301, Dw 41, k 0.4, relief 3, flaps 1 and 0.5, which overlap: flap 298 / 2, Dw + k, Hw + k, Dw + 2k, flap 298, of
  // which 0.6 is lost to whole millimetres.
  const wanted = [149, 41.4, 301.4, 41.8, 297.4];
  alongLength.forEach(({ length }, index) => expect(length).toBeCloseTo(wanted[index]!, 9));
});

test("the corners of a case covering are mitred, one and a half boards left: by hand", () => {
  const turn = { name: "turn-in", length: 15 };
  const run = (size: number) => [turn, { name: "board", length: size }, turn];
  const blank = { name: "case covering", tray: "", material: "covering", count: 1, within: false, note: "" } as const;
  const cuts = templateOfBlank({
    ...blank,
    along: 330,
    across: 240,
    runAlong: run(300),
    runAcross: run(210),
    mitred: 2,
  }).lines.filter(({ kind }) => kind === "cut");
  // A line at 45 degrees, 3 mm from the corner of the board at 15, 15.
  const reach = 30 - 3 * Math.SQRT2;
  expect(cuts.map(({ from, to }) => [from, to])).toEqual([
    [
      [reach, 0],
      [0, reach],
    ],
    [
      [reach, 240],
      [0, 240 - reach],
    ],
    [
      [330 - reach, 0],
      [330, reach],
    ],
    [
      [330 - reach, 240],
      [330, 240 - reach],
    ],
  ]);
  const flap = { ...blank, along: 330, across: 240, runAlong: run(300).slice(1), runAcross: run(210), mitred: 2 };
  expect(templateOfBlank(flap).lines.filter(({ kind }) => kind === "cut")).toHaveLength(2);
});

test("a creased clamshell is drawn in steps along both edges, its tabs cut free and creased: by hand, board 3", () => {
  const [blank] = boardParts(enclosed(book(300, 210, 40), "folded clamshell", "wall board=3; clamshell spine=creased"));
  const template = templateOfPart(blank!);
  expect(template.alongLength.map(({ name, length }) => `${name} ${length}`)).toEqual([
    "inside 40.5",
    "rim 6",
    "wall 42",
    "small base 221",
    "spine 46",
    "large base 231",
    "wall 43",
    "rim 6",
    "inside 41.5",
  ]);
  const at = (kind: string, from: readonly number[], to: readonly number[]) => ({ kind, from, to });
  for (const line of [
    // What folds over is 301 of 401 wide, the wall below it 308 beside the tabs; base 305, large base 312.
    at("fold", [46.5, 50], [46.5, 351]),
    at("fold", [88.5, 46.5], [88.5, 354.5]),
    at("fold", [309.5, 48], [309.5, 353]),
    at("fold", [355.5, 44.5], [355.5, 356.5]),
    // A head wall from half a board beside the spine to its tab; the tab's crease, and the cuts that free it.
    at("fold", [308, 48], [91.5, 48]),
    at("fold", [91.5, 7.5], [91.5, 46.5]),
    at("cut", [91.5, 46.5], [76.5, 46.5]),
    at("cut", [91.5, 48], [91.5, 46.5]),
    at("cut", [583.5, 358], [598.5, 358]),
  ])
    expect(template.lines).toContainEqual(line);
  const { shapes } = flatFigure(template, { unit: "mm", width: 700, height: 400 });
  const words = shapes.flatMap((shape) => (shape.kind === "text" ? [shape.text] : [])).join(" ");
  expect(words).toContain("0 to 46.5, 50 deep; 46.5 to 76.5, 46.5 deep");
});
