import type { CuttingOptions, Held, Piece, Sheet } from "./types";
import type { Mm } from "../measure/units";

/**
 * What is cut from the sheets in the bench style. Walls of one ring become a strip, as wide as they are high, from which
 * they are cut later against the base; second-made parts are cut larger and trimmed to the finished first tray. What an
 * allowance makes too large for every sheet takes as much of it as fits.
 *
 * @returns blanks that hold every piece once, in the order of the pieces
 */
export function blanksOf(
  pieces: readonly Piece[],
  sheets: readonly Pick<Sheet, "length" | "width" | "edgeTrim" | "onHand">[],
  { bench, edgeTrim = 0, pieceGap = 0 }: CuttingOptions,
): readonly Piece[] {
  const allowance = bench?.matchAllowance ?? 0;
  if (allowance === 0) return pieces;
  const roomsOf = (some: typeof sheets) =>
    some.map(({ length, width, edgeTrim: own = edgeTrim }) => ({
      // A strip longer than the longest cut could not be cut.
      length: Math.min(length - 2 * own, bench?.cutLength ?? Number.POSITIVE_INFINITY),
      width: width - 2 * own,
    }));
  const bought = roomsOf(sheets.filter(({ onHand }) => onHand === undefined));
  const all = [...bought, ...roomsOf(sheets.filter(({ onHand }) => onHand !== undefined && onHand > 0))];
  // An allowance made for the few sheets in hand could leave a piece too large for those that can be bought.
  const roomsFor = (some: readonly Piece[]) =>
    some.every((piece) => bought.some((room) => fits(piece, room))) ? bought : all;
  const rings = ringsOf(pieces);
  const blanks: Piece[] = [];
  const cut = new Set<readonly Piece[]>();
  pieces.forEach((piece, index) => {
    const walls = rings[index];
    if (walls === undefined) blanks.push(largerBlank(piece, allowance, roomsFor));
    else if (!cut.has(walls)) {
      cut.add(walls);
      blanks.push(...stripsFor(walls, { allowance, pieceGap }, roomsFor(walls)));
    }
  });
  return blanks;
}

/** For each piece the walls that are cut from the same strips, in order, or undefined: of one ring and height. */
function ringsOf(pieces: readonly Piece[]): readonly (readonly Piece[] | undefined)[] {
  const ofItem = new Map<string, Piece[][]>();
  return pieces.map((piece) => {
    // Walls of no ring, and those that no sheet holds, are not in a strip.
    if (piece.strip === undefined || piece.joinedFrom !== undefined) return undefined;
    let rings = ofItem.get(piece.item);
    if (rings === undefined) ofItem.set(piece.item, (rings = []));
    let walls = rings.find(([first]) => isOfOneRing(first!, piece));
    if (walls === undefined) rings.push((walls = []));
    walls.push(piece);
    return walls;
  });
}

function isOfOneRing(one: Piece, other: Piece): boolean {
  return (
    one.strip === other.strip &&
    one.width === other.width &&
    one.turn === other.turn &&
    one.batch === other.batch &&
    one.plies === other.plies
  );
}

interface Room {
  readonly length: Mm;
  readonly width: Mm;
}

function largerBlank(piece: Piece, allowance: Mm, roomsFor: (pieces: readonly Piece[]) => readonly Room[]): Piece {
  const { later } = piece;
  if (later === undefined || !(later.length || later.width)) return piece;
  const more = Math.max(0, allowance - (piece.pressed ?? 0));
  const wanted = { length: later.length ? more : 0, width: later.width ? more : 0 };
  const found = roomsFor([piece]).find((each) => fits(piece, each)) ?? { length: 0, width: 0 };
  // What fits only turned grows along the sides that it then lies along.
  const turned = piece.length > found.length || piece.width > found.width;
  const room = turned ? { length: found.width, width: found.length } : found;
  const length = piece.length + Math.max(0, Math.min(wanted.length, room.length - piece.length));
  const width = piece.width + Math.max(0, Math.min(wanted.width, room.width - piece.width));
  const { id, item, part, count = 1, turn, strip, plies, pressed, joinedFrom, batch } = piece;
  const holds = [{ piece, count: 1 }];
  // Written out, so that it is of the shape of all pieces.
  return { id, item, part, length, width, count, turn, strip, later, plies, pressed, joinedFrom, batch, holds };
}

/** Strips for the walls of a ring: longest first, each on the first strip that has room for it. */
function stripsFor(
  walls: readonly Piece[],
  { allowance, pieceGap }: { readonly allowance: Mm; readonly pieceGap: Mm },
  rooms: readonly Room[],
): readonly Piece[] {
  const [first] = walls;
  if (first === undefined) return [];
  // A ply is larger by the pressed board's trim already: of the two allowances the greater counts.
  const more = Math.max(0, allowance - (first.pressed ?? 0));
  const plies = first.plies ?? 1;
  const height = first.width + (first.later?.width === true ? more : 0);
  const holding = rooms.filter((room) => room.width >= first.width);
  const longest = holding.reduce((most, room) => Math.max(most, room.length), 0);
  const room = holding.find((each) => each.length === longest);
  const width = room === undefined ? first.width : Math.min(height, Math.max(first.width, room.width));
  const each = [...walls]
    .sort((one, other) => other.length - one.length)
    .flatMap((wall) => Array.from({ length: (wall.count ?? 1) / plies }, () => wall));
  const strips: { walls: Piece[]; length: Mm }[] = [];
  for (const wall of each) {
    // The cut between two walls of a strip takes no less than the gap between other pieces.
    const taken = wall.length + Math.max(more, pieceGap);
    const strip = strips.find((own) => own.length + taken <= longest);
    if (strip === undefined) strips.push({ walls: [wall], length: wall.length + more });
    else {
      strip.walls.push(wall);
      strip.length += taken;
    }
  }
  const many = strips.length > 1;
  return strips.map((strip, index) => {
    const bare = strip.walls.reduce((sum, wall) => sum + wall.length, 0);
    return {
      id: `${first.id} strip ${index + 1}`,
      item: first.item,
      part: `${first.strip!} strip${many ? ` ${index + 1}` : ""}`.trim(),
      length: strip.length <= longest ? strip.length : Math.max(bare, Math.min(strip.length, longest)),
      width,
      count: plies,
      turn: first.turn,
      strip: first.strip!,
      later: { length: true, width: first.later?.width === true },
      plies: undefined,
      pressed: undefined,
      joinedFrom: undefined,
      batch: first.batch,
      holds: countedWalls(strip.walls),
    };
  });
}

function countedWalls(walls: readonly Piece[]): readonly Held[] {
  const counts = new Map<Piece, number>();
  for (const wall of walls) counts.set(wall, (counts.get(wall) ?? 0) + 1);
  return [...counts].map(([piece, count]) => ({ piece, count }));
}

function fits(piece: Piece, room: Room): boolean {
  return (
    (piece.length <= room.length && piece.width <= room.width) ||
    (piece.turn && piece.width <= room.length && piece.length <= room.width)
  );
}
