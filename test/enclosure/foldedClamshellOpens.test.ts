import type { Assembly } from "../../src/enclosure/assembly";
import { extent, X, Y, Z, type Cuboid } from "../../src/enclosure/space";
import { inEveryStructure } from "./inEveryStructure";
import { bareOutsideOf, book, enclosed, expectLengths, hwd, insideOf, partNamed, partsOf } from "./sizing";
import { apart, carried, section, TOUCHING, type Outline, type Point } from "./swings";

const STEPS = 60;
const ITEM = book(300, 210, 40);

describe("by hand: 300 x 210 x 40, board 3, standard fit", () => {
  const text = "wall board=3";
  const parts = partsOf(ITEM, "folded clamshell", text);

  test("inside 302 x 215 x 42: one board of the width for the tabs", () => {
    const box = enclosed(ITEM, "folded clamshell", text);
    expectLengths(insideOf(box, "small"), [302, 215, 42]);
    // 302 + 6 + 1, 215 + 3 + 1, 42 + 1; outside a board more at head, tail and floor, two at the fore-edge.
    expectLengths(insideOf(box, "large"), [309, 219, 43]);
    expectLengths(bareOutsideOf(box, "large"), [315, 225, 46]);
    expectLengths(hwd(box.outside), [315, 228, 49]);
  });

  test.each([
    ["small blank", 392, 260],
    ["large blank", 401, 265],
    ["spine piece", 312, 49],
    // 25 + 3 + 49 / 2, to whole millimetres.
    ["hinge strip", 312, 53],
  ])("%s %d x %d", (name, length, width) => {
    const part = partNamed(parts, name);
    expectLengths([part.length, part.width], [length, width]);
  });

  test("folds and tabs: base 305 between walls of 43.5, fore-edge fold at 216.5, tabs creased at 213.5 and 223.5", () => {
    const [small, large] = [partNamed(parts, "small blank"), partNamed(parts, "large blank")];
    expectLengths(small.folds.alongLength, [43.5, 348.5]);
    expectLengths(small.folds.alongWidth, [216.5]);
    expectLengths(large.folds.alongLength, [44.5, 356.5]);
    expectLengths(large.folds.alongWidth, [220.5]);
    expect(small.corners).toMatchObject({ form: "end tab", from: "width", crease: 213.5, long: 15, high: 42 });
    expect(large.corners).toMatchObject({ form: "end tab", from: "width", crease: 223.5, long: 15, high: 43 });
  });

  test("an item so thin that no wall stands is refused", () => {
    expect(() => enclosed(book(300, 210, 0.5), "folded clamshell", "wall board=3; fit=none")).toThrow(
      "depth: got 0.5 mm; give an item whose walls are at least one board high (3 mm)",
    );
  });
});

test("the worked example opens flat without meeting itself", () => {
  opens(enclosed(ITEM, "folded clamshell", "wall board=3"));
});

test("a large tray narrower at the fore-edge would have met: the check can fail", () => {
  const box = enclosed(ITEM, "folded clamshell", "wall board=3; nest clearance=none");
  const [small, large, ...others] = box.parts;
  const nearer = large!.panels.map((panel) => ({
    ...panel,
    min: [panel.min[0] - 2, panel.min[1], panel.min[2]] as const,
  }));
  expect(() => opens({ ...box, parts: [small!, { ...large!, panels: nearer }, ...others] })).toThrow("meet");
});

inEveryStructure("folded clamshell", "opens flat", 2, opens);

/**
 * Seen from its head: first the large tray turns a quarter about the upper outer edge of the spine piece, then both turn
 * a quarter about its lower outer edge, until all lies flat.
 */
function opens({ parts, trays }: Assembly): void {
  const [small, large, spine] = parts.map(({ panels }) => panels);
  const [floor, foreEdge] = [small![0]!, small![1]!];
  const [cover, coverEdge, coverHead] = [large![0]!, large![1]!, large![2]!];
  const upright = spine![0]!;
  const [inner, outer] = trays;
  // Head walls pass each other at head and tail.
  if (inner!.outside.min[Y] - outer!.inside.min[Y] < -TOUCHING) throw new Error("head walls meet");
  const still = { "small base": section(floor, 0), "small fore-edge wall": section(foreEdge, 0) };
  const moving = [cover, coverEdge, coverHead].map((body) => section(body, 0));
  const low: Point = [upright.min[X], upright.min[Z]];
  const high: Point = [upright.min[X], upright.max[Z]];
  for (let step = 0; step <= STEPS; step++) {
    const open = step / STEPS;
    const first = carried(high, high, (-Math.PI / 2) * Math.min(2 * open, 1));
    const second = carried(low, low, (-Math.PI / 2) * Math.max(2 * open - 1, 0));
    const swung = (outline: Outline): Outline => outline.map(first).map(second);
    const [coverNow, edgeNow, headNow] = moving.map(swung) as [Outline, Outline, Outline];
    const spineNow = section(upright, 0).map(second);
    for (const [name, outline] of Object.entries(still)) {
      apart(outline, spineNow, `${name} and spine`, open);
      apart(outline, coverNow, `${name} and large base`, open);
      apart(outline, edgeNow, `${name} and large fore-edge wall`, open);
    }
    for (const outline of [coverNow, edgeNow, headNow]) apart(spineNow, outline, "spine and large tray", open);
  }
  // Flat at last: all undersides level, a board's thickness between them.
  const t = extent(upright, X);
  const end = (body: Cuboid) =>
    section(body, 0)
      .map(carried(high, high, -Math.PI / 2))
      .map(carried(low, low, -Math.PI / 2));
  const lowest = (outline: Outline) => Math.min(...outline.map(([, z]) => z));
  if (Math.abs(lowest(end(cover)) - floor.min[Z]) > TOUCHING) throw new Error("it does not lie flat");
  const edge = Math.max(...end(cover).map(([x]) => x));
  if (Math.abs(edge - (-2 * t - extent(upright, Z))) > TOUCHING) throw new Error("no board's thickness between them");
}
