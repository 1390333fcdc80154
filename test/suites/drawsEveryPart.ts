import fc from "fast-check";
import { assembledView } from "../../src/drawing/assembledView";
import { explodedView } from "../../src/drawing/explodedView";
import { cross } from "../../src/drawing/labelPlaces";
import { isBehind, paintOrder } from "../../src/drawing/paintOrder";
import { project, type Point } from "../../src/drawing/projection";
import { pulledApart } from "../../src/drawing/pulledApart";
import type { Assembly } from "../../src/enclosure/assembly";
import type { Kind } from "../../src/enclosure/kind";
import { boardParts } from "../../src/enclosure/part";
import type { Cuboid, Vec } from "../../src/enclosure/space";
import { outside, overlapping, readDrawing } from "../drawing/readDrawing";
import { anyItem, anyShop, assemblyOf, titled, type Structure } from "../enclosure/everyEnclosure";
import { book } from "../enclosure/sizing";

const ITEMS = [book(300, 210, 40), book(210, 300, 1), book(150, 150, 150), book(2000, 400, 30), book(60, 45, 200)];
const RUNS = 4;
const WIDTHS = [720, 320];
/** A kind with more structures than this is drawn in a sample of them. */
const MANY = 60;

/** Every structure is drawn: each part named once, nothing over anything that it should be behind. */
export function drawsEveryPart(structures: readonly Structure[]): void {
  // Of a kind with many structures every fifth: what they differ in, each has somewhere.
  const count = (kind: Kind) => structures.filter((each) => each.kind === kind).length;
  const sample = titled(structures).filter(([, , { kind }], index) => count(kind) < MANY || index % 5 === 0);

  test.each(sample)(
    "%s, %s: every part is named once, nothing overlaps or leaves the drawing",
    (_name, _text, { kind, settings }) => {
      // Two items for each structure, in turn, so that every item meets every kind.
      const turn = sample.findIndex(([, , structure]) => structure.settings === settings);
      const items = [ITEMS[turn % ITEMS.length]!, ITEMS[(turn + 2) % ITEMS.length]!, ITEMS[0]!];
      const built = items.flatMap((item) => assemblyOf(kind, item, settings) ?? []);
      expect(built.length).toBeGreaterThan(0);
      built.slice(0, 2).forEach((assembly, index) => check(assembly, WIDTHS[(turn + index) % WIDTHS.length]!));
    },
  );

  test.each(titled(structures))(
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
}

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
      if (cross(one.from, one.to, other.from, other.to)) crossings.push(`${String(one.from)} ${String(other.from)}`);
  expect(crossings).toEqual([]);
  expect(outside(readDrawing(assembledView(assembly)))).toEqual([]);
  drawsItClosed(assembly);
}

/** Open and closed below it, within the drawing; head and spine named where the object lies on its back. */
function drawsItClosed(assembly: Assembly): void {
  const closed = assembledView(assembly, { width: 250, height: 300, closed: true });
  expect(outside(readDrawing(closed))).toEqual([]);
  const words = closed.shapes.flatMap((shape) => (shape.kind === "text" ? [shape.text] : []));
  expect(words).toEqual(assembly.restsOn === "back" ? ["head", "spine"] : []);
}

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
