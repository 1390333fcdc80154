import fc from "fast-check";
import { coveringParts } from "../../src/covering/partList";
import type { Part } from "../../src/enclosure/part";
import { flapPortfolio } from "../../src/enclosure/kinds/flapPortfolio";
import { foldedClamshell } from "../../src/enclosure/kinds/foldedClamshell";
import { fourFlapWrapper } from "../../src/enclosure/kinds/fourFlapWrapper";
import type { Item } from "../../src/enclosure/restingItem";
import { X, Y } from "../../src/enclosure/space";
import type { SettledSettings } from "../../src/settings/schema";
import { settledOf } from "../settings/settledOf";
import { anyItem, anyShop, assemblyOf } from "../enclosure/everyEnclosure";
import { book } from "../enclosure/sizing";

interface Rectangle {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
}

interface Board extends Rectangle {
  readonly name: string;
}

/** Pieces within a face are cut down to whole millimetres and lie in its middle; a margin of two is left to turn-ins. */
const EDGE = 1.01;
const POINTS = 9;

test("every inside face of a portfolio is painted, and twice near its edges and hinges alone", () => {
  let looked = 0;
  fc.assert(
    fc.property(anyItem, anyShop, (item, shop) => {
      // Paper of any length: splitting has its own tests.
      looked += paint(item, { ...settledOf(), ...shop, stock: [] }) ? 1 : 0;
    }),
    { numRuns: 60, seed: 4 },
  );
  expect(looked).toBeGreaterThan(20);
});

test("without its linings the back board is seen as bare: the check can fail", () => {
  expect(() => paint(book(300, 210, 40), { ...settledOf(), lining: "none" })).toThrow("back board is bare");
});

test("a wrapper and a folded clamshell are bare inside, of card and board that may touch the object", () => {
  for (const kind of [fourFlapWrapper, foldedClamshell]) {
    const settings = settledOf();
    const assembly = assemblyOf(kind, book(300, 210, 40), settings)!;
    expect(kind.blanks(assembly, settings).filter(({ note }) => !note.endsWith("outside"))).toEqual([]);
  }
});

/** @returns false where the item takes no portfolio */
function paint(item: Item, settings: SettledSettings): boolean {
  const assembly = assemblyOf(flapPortfolio, item, settings);
  if (assembly === undefined) return false;
  const bodies = flapPortfolio.opened(assembly).map(({ body: { min, max } }) => ({
    x: [min[X], max[X]] as const,
    y: [min[Y], max[Y]] as const,
  }));
  const boards = NAMES.map((name, index): Board => ({ name, ...bodies[index]! }));
  const of = (name: string) => boards.find((each) => each.name === name)!;
  const parts = coveringParts(assembly, settings);
  const blanks = flapPortfolio.blanks(assembly, settings);
  const turn = (name: string) => blanks.find((each) => each.name === name)!.runAcross![0]!.length;
  const [caseTurn, flapTurn] = [turn("case covering"), turn("flap covering")];
  const painted: Rectangle[] = [];
  // Turned in at head and tail, but for the back board, and at both far ends.
  for (const name of ["front board", "spine", "fore-edge riser", "fore-edge flap"]) {
    const { x, y } = of(name);
    painted.push({ x, y: [y[0], y[0] + caseTurn] }, { x, y: [y[1] - caseTurn, y[1]] });
  }
  const [front, flap] = [of("front board"), of("fore-edge flap")];
  painted.push(
    { x: [front.x[0], front.x[0] + caseTurn], y: front.y },
    { x: [flap.x[1] - caseTurn, flap.x[1]], y: flap.y },
  );
  for (const end of ["head", "tail"]) {
    for (const name of [`${end} riser`, `${end} flap`]) {
      const { x, y } = of(name);
      painted.push({ x: [x[0], x[0] + flapTurn], y }, { x: [x[1] - flapTurn, x[1]], y });
    }
    const { x, y } = of(`${end} flap`);
    painted.push({ x, y: end === "head" ? [y[0], y[0] + flapTurn] : [y[1] - flapTurn, y[1]] });
  }
  const lap = settings.hingeLap;
  const part = (name: string): Part | undefined => parts.find((each) => each.name === name);
  // Over spine or riser, and on to what is hinged to it on both sides.
  const overHinge = (lining: string, name: string, axis: "x" | "y", one: string, other: string): void => {
    const piece = part(lining);
    if (piece === undefined) return;
    const [middle, before, after] = [of(name), of(one), of(other)];
    const [low, high] = before[axis][0] < after[axis][0] ? [before, after] : [after, before];
    const width = (board: Board) => board[axis][1] - board[axis][0];
    const from = low[axis][1] - Math.min(lap, width(low) / 2);
    const to = high[axis][0] + Math.min(lap, width(high) / 2);
    const [along, across] = piece.grain === "along width" ? [piece.width, piece.length] : [piece.length, piece.width];
    const size = axis === "x" ? along : lining === "head riser lining" ? across : along;
    const cross = axis === "x" ? "y" : "x";
    const centre = (middle[cross][0] + middle[cross][1]) / 2;
    const range = [centre - size / 2, centre + size / 2] as const;
    painted.push(axis === "x" ? { x: [from, to], y: range } : { x: range, y: [from, to] });
  };
  overHinge("spine lining", "spine", "x", "front board", "back board");
  overHinge("fore-edge riser lining", "fore-edge riser", "x", "back board", "fore-edge flap");
  overHinge("head riser lining", "head riser", "y", "head flap", "back board");
  overHinge("head riser lining", "tail riser", "y", "tail flap", "back board");
  const within = (lining: string, name: string): void => {
    const piece = part(lining);
    if (piece === undefined) return;
    const { x, y } = of(name);
    const [along, across] = piece.grain === "along width" ? [piece.width, piece.length] : [piece.length, piece.width];
    painted.push({ x: middleOf(x, across), y: middleOf(y, along) });
  };
  within("board lining", "back board");
  within("board lining", "front board");
  within("head flap lining", "head flap");
  within("head flap lining", "tail flap");
  within("fore-edge flap lining", "fore-edge flap");
  const near = Math.max(caseTurn, flapTurn, lap) + EDGE;
  for (const board of boards) lookAt(board, painted, near);
  return true;
}

const NAMES = [
  "back board",
  "spine",
  "front board",
  "head riser",
  "head flap",
  "tail riser",
  "tail flap",
  "fore-edge riser",
  "fore-edge flap",
];

function lookAt({ name, x, y }: Board, painted: readonly Rectangle[], near: number): void {
  for (let i = 0; i < POINTS; i++)
    for (let j = 0; j < POINTS; j++) {
      const at = [between(x, i), between(y, j)] as const;
      const layers = painted.filter((each) => holds(each.x, at[0]) && holds(each.y, at[1])).length;
      if (layers === 0) throw new Error(`the ${name} is bare at ${at.join(", ")}`);
      const inward = Math.min(at[0] - x[0], x[1] - at[0], at[1] - y[0], y[1] - at[1]);
      if (layers > 1 && inward > near) throw new Error(`the ${name} is painted ${layers} times at ${at.join(", ")}`);
    }
}

function between([low, high]: readonly [number, number], step: number): number {
  const edge = Math.min(EDGE, (high - low) / 2);
  return low + edge + ((high - low - 2 * edge) * step) / (POINTS - 1);
}

function middleOf([low, high]: readonly [number, number], size: number): readonly [number, number] {
  return [(low + high - size) / 2, (low + high + size) / 2];
}

function holds([low, high]: readonly [number, number], at: number): boolean {
  return at >= low && at <= high;
}
