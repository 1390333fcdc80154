import type { Assembly } from "../../src/enclosure/assembly";
import { panelsOf } from "../../src/enclosure/placedPart";
import { moved, X, Y, Z, type Axis, type Cuboid } from "../../src/enclosure/space";
import type { Blank } from "../../src/enclosure/blank";
import { settledOf } from "../settings/settledOf";
import { inEveryStructure } from "./inEveryStructure";
import { book, enclosed, expectLengths, insideOf, partNamed, partsOf } from "./sizing";

const AXES: readonly Axis[] = [X, Y, Z];
const NOISE = 1e-6;
const item = book(300, 210, 40);

test("of card of 0.5, by hand: 70 + 210.5 + 41.5 + 210.5 + 70 long; the slipcase is 302 x 211.5 x 44 inside", () => {
  const text = "chemise=card; wrapper card=0.5";
  const { length, width, folds } = partNamed(partsOf(item, "slipcase", text), "chemise card");
  expectLengths([length, width], [602.5, 300]);
  expectLengths(folds.alongLength, [70, 280.5, 322, 532.5]);
  expectLengths(insideOf(enclosed(item, "slipcase", text), ""), [302, 211.5, 44]);
});

test("flaps of a wide book are 75", () => {
  const { folds } = partNamed(partsOf(book(300, 240, 40), "slipcase", "chemise=card"), "chemise card");
  expect(folds.alongLength[0]).toBe(75);
});

test("of board of 2, by hand: boards 300 x 210, spine 40 + 2 x 0.5 + 2; it holds 301 x 215.58 x 49", () => {
  const text = "chemise=board; case board=2; wrapper card=0.5; round to=none; fit=none";
  const parts = partsOf(item, "slipcase", text);
  const size = (name: string) => {
    const { length, width, count } = partNamed(parts, name);
    return [length, width, count];
  };
  expectLengths(size("chemise board"), [300, 210, 2]);
  expectLengths(size("chemise spine"), [300, 43, 1]);
  // 15 + 210 + 5 + 43 + 5 + 210 + 15 by 300 + 30.
  expectLengths(size("case covering"), [503, 330, 1]);
  expectLengths(size("chemise lining"), [296, 206, 2]);
  // 210 + sqrt(5^2 - 2^2) + 1, and half a millimetre at the back; 40 + 1 + 3 + 4 + 1.
  expectLengths(insideOf(enclosed(item, "slipcase", text), ""), [302, 211.5 + Math.sqrt(21), 49]);
});

inEveryStructure("slipcase", "has no bare face in its chemise of board", 8, (assembly) => painted(assembly));

test("without its linings the boards of the chemise are seen as bare: the check can fail", () => {
  const wrapped = enclosed(item, "slipcase", "chemise=board");
  expect(() => painted(wrapped, false)).toThrow("bare");
});

/**
 * The inside of a chemise of board, from the fore-edge of one board over the spine to that of the other: turn-in of the
 * covering, lining over it, and the lining of the spine, which goes down into both joints.
 */
function painted({ cover, kind }: Assembly, lined = true): void {
  if (cover === undefined) return;
  // A thing thinner than what linings leave bare, standing on its foot or edge, has no book's boards.
  if (Math.min(cover.boardWidth, cover.boardHeight) < LEAST_BOARD_MM) return;
  const settings = settledOf();
  const blanks = new Map(partsOfBlanks(kind.blanks({ ...enclosed(item, "slipcase"), cover }, settings)));
  const covering = blanks.get("case covering")!;
  const spine = blanks.get("spine lining")!;
  const lining = blanks.get("chemise lining")!;
  const { boardWidth, boardHeight, joint, spineWidth, boardCaliper: q } = cover;
  const turn = (covering.across - 2 * boardWidth - 2 * joint - spineWidth) / 2;
  const lap = (spine.across - spineWidth - 2 * (joint + 2 * q)) / 2;
  // Across a board, from its fore-edge to its spine edge; head to tail the lining leaves as much as at the sides.
  const [from, to] = [(boardWidth - lining.across) / 2, (boardWidth + lining.across) / 2];
  const margin = (boardHeight - lining.along) / 2;
  for (let step = 0; step <= 40; step++) {
    const x = (boardWidth * step) / 40;
    const onLining = lined && x >= from - NOISE && x <= to + NOISE;
    const onTurn = x <= turn + NOISE;
    const onLap = x >= boardWidth - lap - NOISE;
    if (!onLining && !onTurn && !onLap) throw new Error(`a chemise board is bare ${x} from its fore-edge`);
    // Twice at the turn-in and at the lap of the spine lining alone, never three times.
    if (onTurn && onLap && boardWidth > turn + lap + NOISE) throw new Error(`covered twice at ${x}`);
  }
  if (margin > turn + NOISE) throw new Error("a chemise board is bare at head or tail");
  if (spine.along < boardHeight - NOISE && (boardHeight - spine.along) / 2 > turn) throw new Error("its spine is bare");
  if (spine.across < spineWidth + 2 * joint - NOISE) throw new Error("its joints are bare");
}

const LEAST_BOARD_MM = 4;

function partsOfBlanks(blanks: readonly Blank[]): readonly (readonly [string, Blank])[] {
  return blanks.map((blank) => [blank.name, blank] as const);
}

inEveryStructure("slipcase", "lets chemise and book slide in, both covered", 4, slidesIn);

test("a slipcase made to the book alone would not take them: the check can fail", () => {
  const wrapped = enclosed(item, "slipcase", "chemise=card");
  const alone = enclosed(item, "slipcase");
  const parts = [...alone.parts, ...wrapped.parts.filter(({ role }) => role === "folded")];
  expect(() => slidesIn({ ...wrapped, parts })).toThrow("meets");
});

const STEPS = 12;

/** From outside the mouth to its place, in steps, the chemise meets no lined board of the slipcase and holds the book. */
function slidesIn({ parts, holder, cover }: Assembly): void {
  const round = parts.filter(({ role }) => role === "folded" || role === "case");
  if (round.length === 0) return;
  const skin = cover?.covering ?? 0;
  const chemise = panelsOf(round).map((panel) => grown(panel, skin));
  const walls = panelsOf(parts.filter((part) => !round.includes(part))).map((panel) => grown(panel, holder.covering));
  const far = holder.outside.max[X];
  for (let step = 0; step <= STEPS; step++) {
    const by = -far * (1 - step / STEPS);
    for (const panel of chemise) {
      const at = moved(panel, [by, 0, 0]);
      for (const wall of walls) if (overlap(at, wall)) throw new Error(`the chemise meets the slipcase at ${by}`);
    }
  }
  for (const [index, panel] of chemise.entries())
    for (const other of chemise.slice(0, index))
      if (skin === 0 && overlap(panel, other)) throw new Error("two of its panels meet");
  // The spine of the book sits at the mouth, but for the chemise's own.
  if (Math.min(...chemise.map(({ min }) => min[X])) < -NOISE) throw new Error("it stands out at the mouth");
}

function grown({ min, max }: Cuboid, c: number): Cuboid {
  return { min: [min[0] - c, min[1] - c, min[2] - c], max: [max[0] + c, max[1] + c, max[2] + c] };
}

function overlap(one: Cuboid, other: Cuboid): boolean {
  return AXES.every(
    (axis) => Math.min(one.max[axis], other.max[axis]) - Math.max(one.min[axis], other.min[axis]) > NOISE,
  );
}
