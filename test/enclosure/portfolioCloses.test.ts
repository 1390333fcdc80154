import type { Assembly } from "../../src/enclosure/assembly";
import { panelsOf } from "../../src/enclosure/placedPart";
import { extent, X, Y, Z, type Axis, type Cuboid } from "../../src/enclosure/space";
import { inEveryStructure } from "./inEveryStructure";
import { book, enclosed, partNamed, partsOf } from "./sizing";

const AXES: readonly Axis[] = [X, Y, Z];
const NOISE = 1e-6;

inEveryStructure("flap portfolio", "closes round its item, every board covered on both faces", 1, closes);

test("a joint too narrow for the risers is refused, and would have met: the check can fail", () => {
  const text = "wall board=4; case board=2";
  expect(() => enclosed(book(300, 210, 40), "portfolio", `${text}; joint=5`)).toThrow(
    "joint: got 5 mm; give auto, or 5.39 mm or more; a narrower joint lets the risers press on the item",
  );
  const portfolio = enclosed(book(300, 210, 40), "portfolio", text);
  const moved = ({ min, max }: Cuboid): Cuboid => ({ min: nearer(min), max: nearer(max) });
  const parts = portfolio.parts.map((part) =>
    part.name === "head riser" ? { ...part, panels: part.panels.map(moved) } : part,
  );
  expect(() => closes({ ...portfolio, parts })).toThrow("meet");
});

test("without relief the covered edges of the head flaps still clear each other: (301 - 1) / 2 = 150", () => {
  const { length, width } = partNamed(partsOf(book(300, 210, 40), "portfolio", "flap relief=none"), "head flap");
  expect([length, width]).toEqual([211, 150]);
});

test.each([
  ["flaps=1 / 0.5", "flaps: got 1 / 0.5; the head and tail flaps of a portfolio are at most 0.5 of it; give 0.5 / 1"],
  ["flap relief=400", "flap relief: got 400 mm; give less than 301 mm, the height of the board"],
])("%s is refused", (text, message) => {
  expect(() => enclosed(book(300, 210, 40), "portfolio", text)).toThrow(message);
});

/** Covered boards and the item keep apart. */
function closes({ parts, holder: { covering: c, inside } }: Assembly): void {
  const boards = panelsOf(parts).map((panel) => grown(panel, c));
  const [back] = boards as [Cuboid];
  // Between the covered back board and the covered flaps, over the whole board.
  const room: Cuboid = { min: [0, 0, back.max[Z]], max: [inside.max[X], inside.max[Y], inside.max[Z] - c] };
  for (const [index, board] of boards.entries()) {
    if (overlap(board, room)) throw new Error(`${index} and the item meet`);
    for (const other of boards.slice(0, index)) if (overlap(board, other)) throw new Error(`${index} and another meet`);
  }
  if (extent(room, Z) <= 0) throw new Error("no room");
}

function grown({ min, max }: Cuboid, c: number): Cuboid {
  return { min: [min[0] - c, min[1] - c, min[2] - c], max: [max[0] + c, max[1] + c, max[2] + c] };
}

function nearer([x, y, z]: Cuboid["min"]): Cuboid["min"] {
  return [x, y + 0.6, z];
}

function overlap(one: Cuboid, other: Cuboid): boolean {
  return AXES.every(
    (axis) => Math.min(one.max[axis], other.max[axis]) - Math.max(one.min[axis], other.min[axis]) > NOISE,
  );
}
