import fc from "fast-check";
import { boardParts } from "../../src/enclosure/part";
import { boundingBox, type Cuboid, type Vec } from "../../src/enclosure/space";
import type { Assembly } from "../../src/enclosure/assembly";
import { assembledView } from "../../src/drawing/assembledView";
import { explodedView } from "../../src/drawing/explodedView";
import { cross } from "../../src/drawing/labelPlaces";
import { isBehind, paintOrder } from "../../src/drawing/paintOrder";
import { project, type Point } from "../../src/drawing/projection";
import { pulledApart } from "../../src/drawing/pulledApart";
import { anyItem, anyShop, assemblyOf, EVERY_STRUCTURE, titled } from "../enclosure/everyEnclosure";
import { book, enclosed } from "../enclosure/sizing";
import { outside, overlapping, readDrawing } from "./readDrawing";

const ITEMS = [book(300, 210, 40), book(210, 300, 1), book(150, 150, 150), book(2000, 400, 30), book(60, 45, 200)];
const STRUCTURES = titled(EVERY_STRUCTURE);
const RUNS = 4;
const WIDTHS = [720, 320];

function check(assembly: Assembly, width: number): void {
  const read = readDrawing(explodedView(assembly, { unit: "mm", width }));
  expect(outside(read)).toEqual([]);
  expect(overlapping(read.texts)).toEqual([]);
  const said = read.texts.map(({ text }) => text.replace(/^\d+: /, "").replace(/( × \d+)?(,.*)?$/, ""));
  for (const { fullName } of boardParts(assembly))
    expect([fullName, said.filter((text) => text === fullName).length]).toEqual([fullName, 1]);
  const crossings: string[] = [];
  const { leaders } = read;
  for (const [index, one] of leaders.entries())
    for (const other of leaders.slice(0, index))
      if (cross(one.from, one.to, other.from, other.to)) crossings.push(`${one.from} ${other.from}`);
  expect(crossings).toEqual([]);
  expect(outside(readDrawing(assembledView(assembly)))).toEqual([]);
}

/** Of a kind with many structures every fifth: what they differ in, each has somewhere. */
const SAMPLE = STRUCTURES.filter(([name], index) => name !== "lidded box" || index % 5 === 0);

test.each(SAMPLE)(
  "%s, %s: every part is named once, nothing overlaps or leaves the drawing",
  (_name, _text, { kind, settings }) => {
    // Two items for each structure, in turn, so that every item meets every kind.
    const turn = SAMPLE.findIndex(([, , structure]) => structure.settings === settings);
    const items = [ITEMS[turn % ITEMS.length]!, ITEMS[(turn + 2) % ITEMS.length]!, ITEMS[0]!];
    const built = items.flatMap((item) => assemblyOf(kind, item, settings) ?? []);
    expect(built.length).toBeGreaterThan(0);
    built.slice(0, 2).forEach((assembly, index) => check(assembly, WIDTHS[(turn + index) % WIDTHS.length]!));
  },
);

test.each(STRUCTURES)(
  "%s, %s: boards are drawn from back to front, none through another",
  (_name, _text, { kind, settings }) => {
    fc.assert(
      fc.property(anyItem, anyShop, (item, shop) => {
        const inForce = { ...settings, ...shop };
        const assembly = assemblyOf(kind, item, inForce);
        if (assembly === undefined) return true;
        const bodies = pulledApart(assembly.kind.apart(assembly)).map(({ body }) => body);
        const order = paintOrder(bodies).map((index) => bodies[index]!);
        return order.every((later, place) =>
          order.slice(0, place).every((earlier) => isBehind(earlier, later) || !drawingsOverlap(earlier, later)),
        );
      }),
      { numRuns: RUNS, seed: 5 },
    );
  },
);

/** Whether two drawings share area, by the sides of their outlines. */
function drawingsOverlap(one: Cuboid, other: Cuboid): boolean {
  const [a, b] = [outlineOf(one), outlineOf(other)];
  return [a, b].every((outline) =>
    outline.every(([x0, y0], index) => {
      const [x1, y1] = outline[(index + 1) % outline.length]!;
      const side = ([x, y]: Point) => (x - x0) * (y1 - y0) - (y - y0) * (x1 - x0);
      const [ownSides, otherSides] = outline === a ? [a.map(side), b.map(side)] : [b.map(side), a.map(side)];
      // An outline lies on one side of each of its sides; the other drawing must reach over to it.
      return (
        Math.min(...ownSides) < Math.max(...otherSides) - SLIVER &&
        Math.min(...otherSides) < Math.max(...ownSides) - SLIVER
      );
    }),
  );
}

/** Less than this, mm2, is no overlap that shows. */
const SLIVER = 1e-3;

function outlineOf({ min: [x0, y0, z0], max: [x1, y1, z1] }: Cuboid): readonly Point[] {
  const corners: readonly Vec[] = [
    [x0, y0, z1],
    [x1, y0, z1],
    [x1, y1, z1],
    [x1, y1, z0],
    [x0, y1, z0],
    [x0, y0, z0],
  ];
  return corners.map(project);
}

test("a part says the size that it is cut to, in the workbook's unit", () => {
  const read = readDrawing(explodedView(enclosed(book(300, 210, 40), "tray"), { unit: "mm" }));
  expect(read.texts.map(({ text }) => text)).toEqual([
    "base",
    "303 × 213 mm",
    "side wall × 2",
    "307 × 44.5 mm",
    "head wall × 2",
    "213 × 44.5 mm",
    "flange card",
    "327 × 237 mm",
  ]);
  const inches = readDrawing(
    explodedView(enclosed(book(254, 203.2, 25.4), "tray", "fit=none; covering allowance=none; round to=none"), {
      unit: "in",
    }),
  );
  expect(inches.texts.map(({ text }) => text)).toContain("10 × 8 in");
});

test("a drawing without labels says nothing", () => {
  const assembly = enclosed(book(300, 210, 40), "lidded box");
  expect(readDrawing(explodedView(assembly, { unit: "mm", labels: false })).texts).toEqual([]);
});

test("a lid lies over its box, the base of a tray under its walls", () => {
  const lidded = enclosed(book(300, 210, 40), "lidded box");
  const pieces = pulledApart(lidded.kind.apart(lidded));
  const least = (test: (name: string, tray: string) => boolean) =>
    Math.min(...pieces.filter(({ part }) => test(part.name, part.tray)).map(({ body }) => body.min[2]));
  const most = (test: (name: string, tray: string) => boolean) =>
    Math.max(...pieces.filter(({ part }) => test(part.name, part.tray)).map(({ body }) => body.max[2]));
  expect(least((_, tray) => tray === "lid")).toBeGreaterThan(most((_, tray) => tray === "box"));
  expect(most((name, tray) => name === "base" && tray === "box")).toBeLessThan(least((name) => name.endsWith("wall")));
  expect(least((name, tray) => name === "base" && tray === "lid")).toBeGreaterThan(
    most((name) => name.endsWith("wall")),
  );
});

test("an opened clamshell holds the large tray on the front board, the small one on the back", () => {
  const box = enclosed(book(300, 210, 40), "clamshell box");
  const { groups, between } = box.kind.apart(box);
  const [small, large] = groups.map(({ pieces }) => boundingBox(pieces.map(({ body }) => body)));
  const cover = [...groups.flatMap(({ bed }) => bed), ...between];
  // Joint 5, spine 50.5 (large tray 48.5 outside and 2 of covering): by hand from the sizing rules.
  expect(large!.max[0]).toBeCloseTo(-(2 * 5 + 50.5), 9);
  expect(small!.min[0]).toBe(0);
  for (const { body } of cover) expect(body.max[2] - body.min[2]).toBeCloseTo(2, 9);
  expect(new Set(cover.map(({ body }) => Math.round(body.max[2] * 1e6))).size).toBe(1);
});
