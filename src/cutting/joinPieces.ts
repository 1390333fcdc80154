import type { Mm } from "../measure/units";
import type { Piece, Sheet } from "./types";

/** The shorter piece of a ply is two thirds of each of the others. */
const [SHORTER, OF] = [2, 3];

interface Room {
  readonly length: Mm;
  readonly width: Mm;
}

/**
 * The pieces, with those that no sheet holds cut in several that are joined at the bench: butted where the board is single;
 * in a laminated board the joints of one ply lie away from those of the next. The joined board is trimmed to size, so
 * that its pieces are whole millimetres.
 *
 * @param edgeTrim cut away all round each sheet, mm
 */
export function joinPieces(
  pieces: readonly Piece[],
  sheets: readonly Pick<Sheet, "length" | "width">[],
  edgeTrim: Mm,
): readonly Piece[] {
  const rooms = sheets.map(({ length, width }) => ({ length: length - 2 * edgeTrim, width: width - 2 * edgeTrim }));
  return pieces.flatMap((piece) => {
    if (rooms.some((room) => fits(piece, room))) return [piece];
    const ways = rooms.flatMap((room) => {
      const own = inRoom(piece, room);
      return own === undefined ? [] : [own];
    });
    const count = (way: readonly Piece[]) => way.reduce((sum, own) => sum + (own.count ?? 1), 0);
    return ways.length === 0 ? [piece] : ways.reduce((one, other) => (count(other) < count(one) ? other : one));
  });
}

function fits({ length, width, turn }: Piece, room: Room): boolean {
  return (length <= room.length && width <= room.width) || (turn && width <= room.length && length <= room.width);
}

/** The pieces that a board is joined from where this much of a sheet can be used; undefined where that is next to nothing. */
function inRoom(piece: Piece, room: Room): readonly Piece[] | undefined {
  const [mostLength, mostWidth] = [Math.floor(room.length), Math.floor(room.width)];
  if (mostLength < 1 || mostWidth < 1) return undefined;
  const plies = piece.plies ?? 1;
  const cuts = stretches(piece.length, mostLength, plies).flatMap((along) =>
    stretches(piece.width, mostWidth, plies).map((across) => ({
      length: along.size,
      width: across.size,
      perPly: along.perPly * across.perPly,
    })),
  );
  const joinedFrom = cuts.reduce((sum, { perPly }) => sum + perPly, 0);
  return cuts.map(({ length, width, perPly }, index) => ({
    ...piece,
    ...{ length, width, joinedFrom },
    id: `${piece.id} / ${index + 1}`,
    part: `${piece.part}, joined from ${joinedFrom}`,
    count: (piece.count ?? 1) * perPly,
  }));
}

/** Sizes that make up a whole one, and how many of each a ply takes. */
function stretches(whole: Mm, most: Mm, plies: number): readonly { readonly size: Mm; readonly perPly: number }[] {
  if (whole <= most) return [{ size: whole, perPly: 1 }];
  const fewest = Math.ceil(whole / most);
  if (plies === 1) return [{ size: Math.ceil(whole / fewest), perPly: fewest }];
  // One piece is shorter: a ply turned end for end has its joints away from those of the next.
  const sizeOf = (count: number) => Math.ceil((whole * OF) / ((count - 1) * OF + SHORTER));
  const count = sizeOf(fewest) <= most ? fewest : fewest + 1;
  const size = sizeOf(count);
  return [
    { size, perPly: count - 1 },
    { size: Math.ceil(whole - (count - 1) * size), perPly: 1 },
  ];
}
