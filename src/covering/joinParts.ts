import { roomsOf, type Room } from "../enclosure/build/sheetHolds";
import type { Part } from "../enclosure/part";
import type { Mm } from "../measure/units";
import type { Settings } from "../settings/schema";

/** The shorter piece of a ply is two thirds of each of the others. */
const [SHORTER, OF] = [2, 3];

/**
 * The parts, with boards and cards that no sheet holds cut in several pieces that are joined at the bench, where the
 * settings allow it: butted where the board is single; in a laminated board the joints of one ply lie away from those of
 * the next. The joined board is trimmed to size, so that its pieces are whole millimetres. What covers a board is
 * lapped where its blank is cut.
 */
export function joinParts(parts: readonly Part[], settings: Settings): readonly Part[] {
  return settings.join ? parts.flatMap((part) => joined(part, settings)) : parts;
}

function joined(part: Part, settings: Settings): readonly Part[] {
  if (part.material !== "board" && part.material !== "card") return [part];
  const rooms = roomsOf(part.stock, settings);
  const [along, across] = turned([part.length, part.width], part);
  const fits = ([length, width]: Room) =>
    (along <= length && across <= width) || (part.grain === "either" && across <= length && along <= width);
  const ways = rooms.some(fits) ? [] : rooms.flatMap((room) => inRoom(part, [along, across], room));
  return ways.length === 0 ? [part] : ways.reduce((one, other) => (countOf(other) < countOf(one) ? other : one));
}

/** Sizes in the order of the part, or back from it. */
function turned([one, other]: Room, { grain }: Part): Room {
  return grain === "along width" ? [other, one] : [one, other];
}

function countOf(pieces: readonly Part[]): number {
  return pieces.reduce((sum, { count }) => sum + count, 0);
}

/** The pieces that a board is joined from in one size of sheet; none where next to nothing of a sheet can be used. */
function inRoom(part: Part, [along, across]: Room, room: Room): readonly (readonly Part[])[] {
  const [longest, widest] = room.map(Math.floor) as [Mm, Mm];
  if (longest < 1 || widest < 1) return [];
  const cuts = stretches(along, longest, part.plies).flatMap(([length, lengths]) =>
    stretches(across, widest, part.plies).map(([width, widths]) => ({
      size: turned([length, width], part),
      perPly: lengths * widths,
    })),
  );
  const pieces = cuts.reduce((sum, { perPly }) => sum + perPly, 0);
  const fullName = `${part.fullName}, joined from ${pieces}`;
  const whole = { pieces, length: part.length, width: part.width };
  return [
    cuts.map(({ size: [length, width], perPly }) => ({
      ...part,
      ...{ fullName, length, width, count: part.count * perPly, joined: whole },
    })),
  ];
}

/** Sizes that make up a whole one, and how many of each a ply takes. */
function stretches(whole: Mm, most: Mm, plies: number): readonly (readonly [size: Mm, perPly: number])[] {
  if (whole <= most) return [[whole, 1]];
  const fewest = Math.ceil(whole / most);
  if (plies === 1) return [[Math.ceil(whole / fewest), fewest]];
  // One piece is shorter: a ply turned end for end has its joints away from those of the next.
  const sizeOf = (count: number) => Math.ceil((whole * OF) / ((count - 1) * OF + SHORTER));
  const count = sizeOf(fewest) <= most ? fewest : fewest + 1;
  const size = sizeOf(count);
  return [
    [size, count - 1],
    [Math.ceil(whole - (count - 1) * size), 1],
  ];
}
