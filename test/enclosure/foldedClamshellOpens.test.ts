import type { Assembly } from "../../src/enclosure/assembly";
import { extent, X, Y, Z, type Cuboid } from "../../src/enclosure/space";
import type { EdgeCuts } from "../../src/enclosure/placedPart";
import type { Item } from "../../src/enclosure/restingItem";
import { enclosureMass } from "../../src/board/mass";
import { settledOf } from "../settings/settledOf";
import { creasedOpens } from "./creasedOpens";
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

describe("creased from one blank, by hand: 300 x 210 x 40, board 3, standard fit", () => {
  const text = "wall board=3; clamshell spine=creased";
  const box = enclosed(ITEM, "folded clamshell", text);
  const blank = partNamed(partsOf(ITEM, "folded clamshell", text), "blank");

  test("inside 302 x 212 x 42; outside a spine, two folded walls of three boards and a play of 1 wider", () => {
    expectLengths(insideOf(box, "small"), [302, 212, 42]);
    expectLengths(insideOf(box, "large"), [309, 222, 43]);
    // 222 + 9 + the spine 3; 309 + 6; 42 + 1 + 6.
    expectLengths(hwd(box.outside), [315, 234, 49]);
  });

  test("one blank 677 x 401, creased along at 40.5, 6, 42, base 221, spine 46, base 231, 43, 6, 41.5", () => {
    expect(partsOf(ITEM, "folded clamshell", text).map(({ fullName }) => fullName)).toEqual(["blank", "tie"]);
    expectLengths([blank.length, blank.width], [677, 401]);
    expectLengths(blank.folds.alongLength, [40.5, 46.5, 88.5, 309.5, 355.5, 586.5, 629.5, 635.5]);
    // 43 + 1.5 of the large tray; half of 401 less half of 302 + 3 of the small one.
    expectLengths(blank.folds.alongWidth, [44.5, 48, 353, 356.5]);
    expect(blank.grain).toBe("along width");
  });

  test("edges cut away: what folds over, the tabs a board lower than the rims, head walls half a board from the spine", () => {
    // Half of 401 less: 301 / 2; 302 / 2 + 3; tabs 302 / 2 + 42; rim a board more; base 305 / 2, 312 / 2; and for the large.
    const wanted = [
      [0, 46.5, 50],
      // To the tip of a tab of 15, creased 218 from the spine's crease.
      [46.5, 76.5, 46.5],
      [76.5, 91.5, 7.5],
      [91.5, 308, 4.5],
      [308, 309.5, 48],
      [309.5, 357, 44.5],
      // The large tray's crease is 228 from the spine's.
      [583.5, 598.5, 3],
      [598.5, 629.5, 43],
      [629.5, 677, 46.5],
    ];
    const { steps, tabs } = blank.corners as EdgeCuts;
    expect(steps).toHaveLength(wanted.length);
    steps.forEach(({ from, to, deep }, index) => expectLengths([from, to, deep], wanted[index]!));
    expect(tabs).toMatchObject([
      { name: "small", long: 15, high: 39 },
      { name: "large", long: 15, high: 40 },
    ]);
  });

  test("tabs reach up to the folded rim and no further: a hair higher they are in it", () => {
    const { panels } = box.parts[0]!;
    const [rim, tab] = [panels[2]!, panels[6]!];
    expectLengths([rim.min[2], tab.max[2], tab.min[2]], [39, 39, 0]);
    const meet = (high: number) =>
      [0, 1].every((axis) => tab.max[axis]! > rim.min[axis]! && rim.max[axis]! > tab.min[axis]!) && high > rim.min[2];
    expect([meet(tab.max[2]), meet(tab.max[2] + 0.01)]).toEqual([false, true]);
  });

  test("it weighs what is left of the blank", () => {
    // 677 x 401 less twice 46.5 x 50 + 30 x 46.5 + 15 x 7.5 + 216.5 x 4.5 + 1.5 x 48 + 47.5 x 44.5 + 15 x 3 + 31 x 43 + 47.5 x 46.5.
    const away = 2 * (2325 + 1395 + 112.5 + 974.25 + 72 + 2113.75 + 45 + 1333 + 2208.75);
    const grams = ((677 * 401 - away) / 1e6) * 645 * 3;
    expect(enclosureMass([blank], settledOf(text))).toBeCloseTo(grams / 1000, 9);
  });

  test("it opens flat", () => creasedOpens(box));

  test("head walls that began at the crease would have met the spine: the check can fail", () => {
    const [part] = box.parts;
    const panels = part!.panels.map((panel, index) =>
      index === 4 ? { ...panel, min: [-1.5, panel.min[1], panel.min[2]] as const } : panel,
    );
    expect(() => creasedOpens({ ...box, parts: [{ ...part!, panels }] })).toThrow("meet");
  });

  test("what no sheet holds in one piece is hinged, and says so; so is what is too low to fold over", () => {
    const said = (item: Item, row = "") => {
      const settings = settledOf(`wall board=conservation board 3; clamshell spine=creased; ${row}`);
      const assembly = enclosed(
        item,
        "folded clamshell",
        `wall board=conservation board 3; clamshell spine=creased; ${row}`,
      );
      return [assembly.parts.length, ...assembly.kind.cautions(assembly, settings)];
    };
    expect(said(ITEM)).toEqual([1]);
    expect(said(book(500, 400, 60))).toEqual([
      3,
      "spine hinged, not creased: no sheet of conservation board 3 holds it in one piece",
    ]);
    expect(said(book(300, 210, 3))).toEqual([3, "spine hinged, not creased: its walls are less than two boards high"]);
  });
});

inEveryStructure("folded clamshell", "opens flat", 2, (assembly) =>
  (assembly.cover === undefined ? creasedOpens : opens)(assembly),
);

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
