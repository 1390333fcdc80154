import { along, boundingBox, extent, moved, X, Y, Z, type Axis, type Cuboid } from "../enclosure/space";
import type { Apart, ApartGroup, Piece } from "../enclosure/view";
import type { Mm } from "../measure/units";
import { drawnExtent, RISE } from "./projection";
import { thickened } from "./thickened";

/** Shares of the plan, measured from head to tail and spine to fore-edge together. */
const LEAST_THICK = 0.011;
const LEAST_GAP = 0.06;
const MOST_GAP = 0.16;
/** How much of a tray's drawn height another may stand before it. */
const TRAY_OVERLAP = 0.12;
/** Between two trays over a case, and from them down to its boards. */
const CASE_GAP = 0.3;
const CASE_FALL = 0.5;

/**
 * The pieces of an enclosure drawn apart: walls outward, bases down (a lid's up), cards beyond them, lids above, the
 * boards of a case below. A folded piece stays as it is folded.
 */
export function pulledApart({ arranged, groups, between }: Apart): readonly Piece[] {
  const plan = Math.max(...groups.map(({ pieces }) => planOf(boundingBox(pieces.map(bodyOf)))));
  const opened = groups.map((group) => openedGroup(group, plan));
  if (arranged === "beside") return overCase(opened, between, plan);
  const placed: Piece[] = [];
  for (const { pieces } of opened) {
    if (placed.length === 0) placed.push(...pieces);
    else {
      const [below, above] = [drawnExtent(placed.map(bodyOf)), drawnExtent(pieces.map(bodyOf))];
      const lift = above.bottom - below.top - TRAY_OVERLAP * (above.bottom - above.top);
      placed.push(...shifted(pieces, Z, lift / RISE.z));
    }
  }
  return placed;
}

function planOf(body: Cuboid): Mm {
  return extent(body, X) + extent(body, Y);
}

/** Each board of a group moved out along its own thickness, those further out further. */
function openedGroup(group: ApartGroup, plan: Mm): ApartGroup {
  const thick = thickPieces(group.pieces, plan);
  return {
    ...group,
    pieces: group.around === undefined ? apartByPart(thick, plan) : apartFrom(group.around, group.pieces, thick, plan),
  };
}

/** @param thick the pieces as thick as they are drawn */
function apartFrom(around: Cuboid, pieces: readonly Piece[], thick: readonly Piece[], plan: Mm): readonly Piece[] {
  const middle = middleOf(around);
  const wallHeight = Math.max(...pieces.map(({ body, part }) => (part.role === "wall" ? extent(body, Z) : 0)));
  // Far enough for a near wall not to stand before the base, unless the tray is deep.
  const gap = clamped((wallHeight * RISE.z) / RISE.plan, plan * LEAST_GAP, plan * MOST_GAP);
  const fall = (gap * RISE.plan) / RISE.z + plan * LEAST_GAP;
  // Dividers are lifted out, those that cross others above them.
  const dividers = [...new Set(pieces.flatMap(({ part }) => (part.role === "divider" ? [part] : [])))];
  return pieces.map(({ body, part }, index) => {
    const lifted = dividers.indexOf(part) + 1;
    if (lifted > 0)
      return { body: moved(thick[index]!.body, along(Z, lifted * (wallHeight + plan * LEAST_GAP))), part };
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

/** Groups beside each other, from the right, over the boards of their case, which lie apart below. */
function overCase(groups: readonly ApartGroup[], between: readonly Piece[], plan: Mm): readonly Piece[] {
  const placed: Piece[] = [];
  const shifts = groups.map(({ pieces }, index) => {
    const near = Math.max(...pieces.map(({ body }) => body.max[X]));
    const far = Math.min(...placed.map(({ body }) => body.min[X]));
    const spread = index === 0 ? 0 : Math.max(0, near - far + plan * CASE_GAP);
    placed.push(...shifted(pieces, X, -spread));
    return spread;
  });
  const foot = Math.min(...placed.map(({ body }) => body.min[Z]));
  const cover = [...groups.flatMap(({ bed }) => bed), ...between];
  // The boards between two groups move half as far as they do.
  const moves = [
    ...groups.flatMap(({ bed }, index) => bed.map(() => shifts[index]!)),
    ...between.map(() => Math.max(...shifts) / 2),
  ];
  const boards = thickPieces(cover, plan);
  const fall = foot - Math.max(...boards.map(({ body }) => body.max[Z])) - plan * CASE_FALL;
  return [
    ...placed,
    ...boards.map(({ body, part }, index) => ({ body: moved(body, [-moves[index]!, 0, fall]), part })),
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
