import { extent, X, Y, Z, type Axis, type Cuboid } from "../enclosure/space";
import type { Mm } from "../measure/units";
import { drawnExtent, RISE } from "./projection";
import { along, isTurnedOver, moved, type Piece, type Scene, type TrayPieces } from "./scene";
import { thickened } from "./thickened";

/** Shares of the plan, measured from head to tail and spine to fore-edge together. */
const LEAST_THICK = 0.011;
const LEAST_GAP = 0.06;
const MOST_GAP = 0.16;
/** How much of a tray's drawn height another may stand before it. */
const TRAY_OVERLAP = 0.12;
/** Between two trays over a case, and from them down to its boards. */
const CASE_GAP = 0.05;
const CASE_FALL = 0.28;

/**
 * The pieces of an enclosure drawn apart: walls outward, bases down (a lid's up), cards beyond them, lids above, the
 * boards of a case below. A folded piece stays as it is folded.
 */
export function pulledApart({ trays, cover }: Scene): readonly Piece[] {
  const plan = Math.max(...trays.map(({ tray }) => extent(tray.outside, X) + extent(tray.outside, Y)));
  const groups = trays.map((tray) => ({ tray: tray.tray, pieces: opened(tray, plan) }));
  if (cover.length > 0) return overCase(groups, cover, plan);
  const stack = [...groups].sort((one, other) => height(one) - height(other));
  const placed: Piece[] = [];
  for (const { pieces } of stack) {
    if (placed.length === 0) placed.push(...pieces);
    else {
      const [below, above] = [drawnExtent(placed.map(bodyOf)), drawnExtent(pieces.map(bodyOf))];
      const lift = above.bottom - below.top - TRAY_OVERLAP * (above.bottom - above.top);
      placed.push(...shifted(pieces, Z, lift / RISE.z));
    }
  }
  return placed;
}

/** Where a tray comes in the stack: the one that holds the others lowest, what is turned over highest. */
function height({ tray }: TrayPieces): Mm {
  return tray.outside.min[Z] + (isTurnedOver(tray) ? tray.outside.max[Z] - tray.inside.min[Z] + LID_FIRST : 0);
}

/** Higher than any enclosure is deep, so that a lid comes above everything upright. */
const LID_FIRST: Mm = 1e6;

/** One tray's boards, each moved out along its own thickness, those further out further. */
function opened({ tray, pieces }: TrayPieces, plan: Mm): readonly Piece[] {
  const thick = thickPieces(pieces, plan);
  if (pieces.some(({ part }) => part.role === "folded")) return apartByPart(thick, plan);
  const middle = middleOf(tray.inside);
  const wallHeight = Math.max(...pieces.map(({ body, part }) => (part.role === "wall" ? extent(body, Z) : 0)));
  // Far enough for a near wall not to stand before the base, unless the tray is deep.
  const gap = clamped((wallHeight * RISE.z) / RISE.plan, plan * LEAST_GAP, plan * MOST_GAP);
  const fall = (gap * RISE.plan) / RISE.z + plan * LEAST_GAP;
  return pieces.map(({ body, part }, index) => {
    const axis = normalOf(part.lengthAxis, part.widthAxis);
    const side = Math.sign(middleOf(body)[axis]! - middle[axis]!);
    const out = (other: Piece) => side * (middleOf(other.body)[axis]! - middle[axis]!);
    const rank = new Set(
      pieces
        .filter((other) => normalOf(other.part.lengthAxis, other.part.widthAxis) === axis)
        .map((other) => out(other))
        .filter((distance) => distance > 0 && distance < out({ body, part }) - NOISE_MM),
    ).size;
    const step = axis === Z ? fall * (rank + FIRST_FALL) : gap * (1 + rank * LATER_RING);
    return { body: moved(thick[index]!.body, along(axis, side * step)), part };
  });
}

const NOISE_MM: Mm = 1e-6;
/** The base falls less than what lies under it; an outer ring stands nearer to its inner one than that to the base. */
const FIRST_FALL = 0.35;
const LATER_RING = 0.55;

/** Folded pieces one above the other. */
function apartByPart(pieces: readonly Piece[], plan: Mm): readonly Piece[] {
  const parts = [...new Set(pieces.map(({ part }) => part))].reverse();
  const placed: Piece[] = [];
  for (const part of parts) {
    const own = pieces.filter((piece) => piece.part === part);
    const top = Math.max(0, ...placed.map(({ body }) => body.max[Z]));
    const foot = Math.min(...own.map(({ body }) => body.min[Z]));
    placed.push(...shifted(own, Z, placed.length === 0 ? 0 : top - foot + plan * LEAST_GAP));
  }
  return placed;
}

/** Trays beside each other over the boards of their case, which lie apart below. */
function overCase(groups: readonly TrayPieces[], cover: readonly Piece[], plan: Mm): readonly Piece[] {
  const [right, left] = [
    groups.find(({ tray }) => tray.inside.min[X] >= 0)!,
    groups.find(({ tray }) => tray.inside.max[X] <= 0)!,
  ];
  const near = Math.max(...left.pieces.map(({ body }) => body.max[X]));
  const far = Math.min(...right.pieces.map(({ body }) => body.min[X]));
  const spread = Math.max(0, near - far + plan * CASE_GAP);
  const trays = [...right.pieces, ...shifted(left.pieces, X, -spread)];
  const foot = Math.min(...trays.map(({ body }) => body.min[Z]));
  const boards = thickPieces(cover, plan);
  const fall = foot - Math.max(...boards.map(({ body }) => body.max[Z])) - plan * CASE_FALL;
  const share = (body: Cuboid) => (body.min[X] >= 0 ? 0 : body.max[X] > left.tray.inside.max[X] + NOISE_MM ? 0.5 : 1);
  return [
    ...trays,
    ...boards.map(({ body, part }, index) => ({
      body: moved(body, [-spread * share(cover[index]!.body), 0, fall]),
      part,
    })),
  ];
}

function thickPieces(pieces: readonly Piece[], plan: Mm): readonly Piece[] {
  const bodies = thickened(pieces.map(bodyOf), plan * LEAST_THICK);
  return pieces.map(({ part }, index) => ({ body: bodies[index]!, part }));
}

function shifted(pieces: readonly Piece[], axis: Axis, by: Mm): readonly Piece[] {
  return pieces.map(({ body, part }) => ({ body: moved(body, along(axis, by)), part }));
}

function bodyOf({ body }: Piece): Cuboid {
  return body;
}

function middleOf({ min, max }: Cuboid): readonly Mm[] {
  return min.map((low, axis) => (low + max[axis]!) / 2);
}

/** The direction of a flat part's thickness. */
export function normalOf(lengthAxis: Axis | undefined, widthAxis: Axis | undefined): Axis {
  return ([X, Y, Z] as const).find((axis) => axis !== lengthAxis && axis !== widthAxis) as Axis;
}

function clamped(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}
