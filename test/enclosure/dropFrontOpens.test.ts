import type { Assembly } from "../../src/enclosure/assembly";
import { extent, X, Y, Z, type Cuboid, type Vec } from "../../src/enclosure/space";
import { sizeRow } from "../../src/item/sizeItem";
import { settingsOf } from "../../src/settings/settingsOf";
import { inEveryStructure } from "./inEveryStructure";
import { bareOutsideOf, book, enclosed, expectLengths, insideOf, partNamed, partsOf } from "./sizing";
import { apart, carried, section, TOUCHING, type Point } from "./swings";

const STEPS = 45;
const ITEM = book(300, 210, 40);

describe("by hand: 300 x 210 x 40 on its foot, board 2, standard fit", () => {
  // As it stands: 40 + 1 + 2 from back to front, 210 + 1 + 2 wide, 300 + 0.5 + 2 high.
  const text = "rests on=foot; construction=around base";
  const parts = partsOf(ITEM, "drop-front box", text);

  test("inside 43 x 213 x 302.5", () => {
    expectLengths(insideOf(enclosed(ITEM, "drop-front box", text), "box"), [43, 213, 302.5]);
  });

  test.each([
    ["box base", 213, 43],
    ["box side wall", 47, 304.5],
    ["box back wall", 213, 304.5],
    // 213 - 4 x 0.5 - 1.
    ["box front wall", 210, 304.5],
    // Lid 30 deep: inside 30 + 0.5; over the box 217 + 2 + 1 wide. Front to back 43 + 2 x 2, and 1 for the coverings of the
    // hinge: 48, + 2 + 1 = 51. On base: 55 x 224.
    ["lid base", 224, 55],
    ["lid side wall", 55, 30.5],
    // 15 + 47 + 217 + 47 + 15; 15 + 304.5 + 2 + 15.
    ["box three-wall strip", 341, 337],
    // 15 + 210 + 15; 21.5 under the base (half of 43) + 1 + 2 + 304.5 + 2 + 15.
    ["box front covering", 346, 240],
    // From the foot of the front wall to 2 below its rim, 2 in from each side: 304.5 - 2, 210 - 4.
    ["box front lining", 302, 206],
    // 302.5 deep, 15 turned in, half of that under the turn-in: 302.5 - 15 + 7.5. As wide as the base.
    ["box side wall lining", 295, 43],
    ["box head wall lining", 295, 213],
    // The base, less two coverings of 0.5 and 1.
    ["box floor lining", 211, 41],
    // 15 under the base, 2 of its edge, 15 on the floor.
    ["box front-edge strip", 213, 32],
  ])("%s %d x %d", (name, length, width) => {
    const part = partNamed(parts, name);
    expectLengths([part.length, part.width], [length, width]);
  });

  test("flanged, the front wall is a card higher: 304.9; the card ends at the front edge of the base: 217 x 45", () => {
    const flanged = partsOf(ITEM, "drop-front box", "rests on=foot");
    expectLengths([partNamed(flanged, "box front wall").width], [304.9]);
    const { length, width } = partNamed(flanged, "box flange card").placed!;
    expectLengths([length, width], [217, 45]);
  });

  test("a low box has a lid of a third of its height: 45 / 3 = 15 for an object 40 high", () => {
    // Outside 40 + 0.5 + 2 + 2 = 44.5, a third 14.83; + 0.5, up to a step: 15.5.
    const box = enclosed(ITEM, "drop-front box", "construction=around base");
    expectLengths([insideOf(box, "lid")[2]!], [15.5]);
    expectLengths(bareOutsideOf(box, "box"), [308, 217, 44.5]);
  });

  test("without a word an object stands on its foot; said otherwise it lies", () => {
    const row = { height: 300, width: 210, depth: 40, enclosure: "drop front", weight: 1 };
    const depth = (settings: string[]) => insideOf(sizeRow(row, settingsOf(settings))!.assembly, "box")[2];
    expect([depth([]), depth(["rests on=back"])]).toEqual([302.5, 42.5]);
  });

  test("it has no construction on base", () => {
    expect(() => enclosed(ITEM, "drop-front box", "construction=on base")).toThrow(
      'construction: got "on base"; give flanged base or around base for a drop-front box',
    );
  });
});

inEveryStructure("drop-front box", "falls open, and the object slides out", 4, opens);

test("a front wall against the covered edge of the base would have met: the check can fail", () => {
  const box = enclosed(ITEM, "drop-front box", "rests on=foot");
  const nearer = (at: Vec): Vec => [at[0], at[1] - 1, at[2]];
  const parts = box.parts.map((part) =>
    part.name === "front wall"
      ? { ...part, panels: part.panels.map(({ min, max }) => ({ min: nearer(min), max: nearer(max) })) }
      : part,
  );
  expect(() => opens({ ...box, parts })).toThrow("meet");
});

/** Seen along x, in steps of two degrees: the covered front wall turns about its outer lower edge. */
function opens({ parts, holder: { covering: c, inside } }: Assembly): void {
  const own = parts.filter(({ tray }) => tray === "box");
  const panels = (name: string) => own.filter((part) => part.name === name).flatMap((part) => part.panels);
  const [front] = panels("front wall") as [Cuboid];
  const covered = [...panels("base"), ...panels("back wall")].map((body) => section(alongX(body), c));
  const bare = panels("flange card").map((body) => section(alongX(body), 0));
  // Beside it: a covering on each of the facing surfaces, at both ends.
  for (const wall of panels("side wall"))
    if (Math.max(front.min[X] - wall.max[X], wall.min[X] - front.max[X]) - 2 * c < -TOUCHING)
      throw new Error("front wall and side wall meet");
  const hinge: Point = [front.max[Y], front.min[Z]];
  // Its foot is bare: covered on both faces and at the top.
  const outline = section(alongX(front), c).map(([y, z]): Point => [y, Math.max(z, front.min[Z])]);
  for (let step = 0; step <= STEPS; step++) {
    const open = step / STEPS;
    const turned = outline.map(carried(hinge, hinge, (Math.PI / 2) * open));
    for (const body of covered) apart(body, turned, "front wall and box", open / 2);
    for (const body of bare) apart(body, turned, "front wall and card", open / 2);
  }
  // Nothing stands before the opening: the object slides out over the edge of the base.
  const lying = outline.map(carried(hinge, hinge, Math.PI / 2));
  if (Math.max(...lying.map(([, z]) => z)) > front.min[Z] + extent(front, Y) + 2 * c + TOUCHING)
    throw new Error("the front wall stands up when open");
  if (front.min[Z] > inside.min[Z]) throw new Error("the front wall leaves a sill");
}

/** The sight from the side: front and back across, height up. */
function alongX({ min, max }: Cuboid): Cuboid {
  return { min: [min[1], 0, min[2]], max: [max[1], 0, max[2]] };
}
