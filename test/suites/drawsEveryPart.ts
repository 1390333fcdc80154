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
import type { Picture } from "../../src/drawing/picture";
import { outside, overlapping, readDrawing, type ReadDrawing } from "../drawing/readDrawing";
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
  const view = explodedView(assembly, { unit: "mm", width });
  const read = readDrawing(view);
  expect(outside(read)).toEqual([]);
  if (!assembly.kind.folded) leadersCrossNoBoard(assembly, view, read);
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

/** By geometry: a leader begins on a board that shows there, and passes over no board of another part. */
function leadersCrossNoBoard(assembly: Assembly, { shapes }: Picture, { leaders }: ReadDrawing): void {
  const pieces = pulledApart(assembly.kind.apart(assembly));
  const faces = shapes.flatMap((shape) => (shape.kind === "polygon" ? shape.points : []));
  const model = pieces.flatMap(({ body }) => outlineOf(body));
  const [left, top] = ([0, 1] as const).map((axis) => Math.min(...faces.map((point) => point[axis]))) as [
    number,
    number,
  ];
  const low = ([0, 1] as const).map((axis) => Math.min(...model.map((point) => point[axis]))) as [number, number];
  const wide = (points: readonly Point[]) => Math.max(...points.map(([x]) => x)) - Math.min(...points.map(([x]) => x));
  const scale = wide(faces) / wide(model);
  const onPaper = ([x, y]: Point): Point => [left + (x - low[0]) * scale, top + (y - low[1]) * scale];
  const outlines = pieces.map(({ body }) => outlineOf(body).map(onPaper));
  const painted = paintOrder(pieces.map(({ body }) => body));
  for (const { from, to } of leaders) {
    const own = painted.findLast((index) => shared(outlines[index]!, from, from) !== undefined);
    if (own === undefined) throw new Error(`a leader begins on no board: ${from.join(", ")}`);
    for (const [index, { part }] of pieces.entries()) {
      const over = part === pieces[own]!.part ? undefined : shared(outlines[index]!, from, to);
      if (over !== undefined && over > HAIR)
        throw new Error(`the leader of a ${pieces[own]!.part.name} passes over a ${part.name} for ${over}`);
    }
  }
}

/** Units of the drawing: its points are rounded to hundredths. */
const HAIR = 0.5;

/** How much of a straight line lies within a convex outline; undefined where none does. */
function shared(outline: readonly Point[], from: Point, to: Point): number | undefined {
  const turning = Math.sign(side(outline[0]!, outline[1]!, outline[2]!));
  let [enter, leave] = [0, 1];
  for (const [index, corner] of outline.entries()) {
    const next = outline[(index + 1) % outline.length]!;
    const [start, end] = [turning * side(corner, next, from), turning * side(corner, next, to)];
    if (start < 0 && end < 0) return undefined;
    if (start < 0) enter = Math.max(enter, start / (start - end));
    else if (end < 0) leave = Math.min(leave, start / (start - end));
  }
  return enter > leave ? undefined : (leave - enter) * Math.hypot(to[0] - from[0], to[1] - from[1]);
}

/** Which side of a line through two points a third lies on. */
function side([x0, y0]: Point, [x1, y1]: Point, [x, y]: Point): number {
  return (x - x0) * (y1 - y0) - (y - y0) * (x1 - x0);
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
