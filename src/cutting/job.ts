import { UNITS2_PER_TENTH2, unitsDown, unitsUp } from "./grid";
import { type Limits, limitsOf, NO_LIMITS, STRETCH_LENGTH, STRETCH_WIDTH, stretchOf } from "./limits";
import type { CuttingOptions, Piece, Roll, Sheet, Uncuttable } from "./types";
import { worthOf } from "./worth";

/** Prices count in thousandths of the currency. */
export const PRICE_STEPS = 1000;

/** A size of sheet as the search sees it: usable size with one piece gap added, in units. */
export interface SheetKind {
  readonly length: number;
  readonly width: number;
  /** What the search keeps low: the price in steps; the area when no sheet costs anything. */
  readonly weight: number;
  readonly limit: number;
  readonly edgeTrim: number;
}

/** The pieces one by one, with the piece gap added, in units. */
export interface Job {
  readonly kinds: readonly SheetKind[];
  readonly size: number;
  readonly length: Int32Array;
  readonly width: Int32Array;
  readonly turn: Uint8Array;
  readonly area: Float64Array;
  /** What a leftover of each piece's area counts for. */
  readonly worth: Float64Array;
  /** The number of each piece's item, from 0 to `items` - 1: comparing names takes too long. */
  readonly item: Int32Array;
  readonly items: number;
  /** Bits: along its length, along its width a piece is trimmed later and may be larger. */
  readonly stretch: Uint8Array;
  readonly limits: Limits;
  /** For each piece of the search, the piece asked for and which copy of it. */
  readonly source: readonly Piece[];
  readonly copy: Int32Array;
}

export interface Prepared {
  readonly job: Job;
  readonly tooLarge: readonly Uncuttable[];
}

/** Whether a piece of the job goes on a sheet of that kind, lying one way or the other, and can be cut from it. */
export function fitsKind(job: Job, piece: number, kind: SheetKind): boolean {
  const shape = { length: job.length[piece]!, width: job.width[piece]!, stretch: job.stretch[piece]! };
  return isFreed(shape, kind, job.limits) || (job.turn[piece] === 1 && isFreed(turned(shape), kind, job.limits));
}

/**
 * Whether a piece is cut from a sheet of that kind. An off-cut, or another sheet of which there are only so many, is left
 * for other pieces where this one would leave a sliver beside it and leaves none on a sheet that can be bought.
 */
export function isTakenFor(job: Job, piece: number, kind: SheetKind): boolean {
  if (!fitsKind(job, piece, kind)) return false;
  if (!job.limits.bench || kind.limit === Number.POSITIVE_INFINITY || leavesNoSliver(job, piece, kind)) return true;
  return !job.kinds.some(
    (other) =>
      other.limit === Number.POSITIVE_INFINITY && fitsKind(job, piece, other) && leavesNoSliver(job, piece, other),
  );
}

function leavesNoSliver(job: Job, piece: number, kind: SheetKind): boolean {
  const { gap, leastWaste, absorbed } = job.limits;
  const shape = { length: job.length[piece]!, width: job.width[piece]!, stretch: job.stretch[piece]! };
  const clean = (over: number, stretches: boolean) =>
    over >= 0 && (over <= gap || (stretches && over <= absorbed) || over + kind.edgeTrim >= leastWaste);
  const lies = ({ length, width, stretch }: Shape) =>
    clean(kind.length - length, (stretch & STRETCH_LENGTH) !== 0) &&
    clean(kind.width - width, (stretch & STRETCH_WIDTH) !== 0);
  return lies(shape) || (job.turn[piece] === 1 && lies(turned(shape)));
}

interface Shape {
  readonly length: number;
  readonly width: number;
  readonly stretch: number;
}

function turned({ length, width, stretch }: Shape): Shape {
  return {
    length: width,
    width: length,
    stretch: (stretch & STRETCH_LENGTH ? STRETCH_WIDTH : 0) | (stretch & STRETCH_WIDTH ? STRETCH_LENGTH : 0),
  };
}

/** Whether a piece that lies so fits a whole sheet, and no cut that frees it is longer than the shop can make. */
function isFreed({ length, width, stretch }: Shape, kind: Side, { cutLength, absorbed }: Limits): boolean {
  if (length > kind.length || width > kind.width) return false;
  if (cutLength === NO_LIMITS.cutLength) return true;
  const isLong = length === kind.length || ((stretch & STRETCH_LENGTH) !== 0 && kind.length - length <= absorbed);
  const isWide = width === kind.width || ((stretch & STRETCH_WIDTH) !== 0 && kind.width - width <= absorbed);
  if (isLong) return isWide || kind.length <= cutLength;
  if (isWide) return kind.width <= cutLength;
  // The first cut goes right across the sheet, the second across the strip that it frees.
  return Math.min(Math.max(kind.width, length), Math.max(kind.length, width)) <= cutLength;
}

type Side = Pick<SheetKind, "length" | "width">;

/** Pieces and sheets in units, without the pieces that are larger than every sheet. */
export function prepareSheets(pieces: readonly Piece[], sheets: readonly Sheet[], options: CuttingOptions): Prepared {
  const free = sheets.every((sheet) => sheet.price === 0);
  const kinds = sheets.map((sheet) => {
    const edgeTrim = sheet.edgeTrim ?? options.edgeTrim ?? 0;
    const usable = usableSize(sheet.length, sheet.width, edgeTrim, options);
    const area = usable.length * usable.width;
    const byArea = free && sheet.onHand === undefined;
    return {
      ...usable,
      weight: byArea ? Math.ceil(area / UNITS2_PER_TENTH2) : Math.round(sheet.price * PRICE_STEPS),
      limit: sheet.onHand ?? Number.POSITIVE_INFINITY,
      edgeTrim: unitsDown(edgeTrim),
    };
  });
  return prepare(pieces, kinds, options);
}

/** The same for a roll: one sheet as wide as the roll and as long as it takes. */
export function prepareRoll(pieces: readonly Piece[], roll: Roll, options: CuttingOptions): Prepared {
  const { edgeTrim = 0 } = options;
  const endless = { length: Number.POSITIVE_INFINITY, width: usableSize(0, roll.width, edgeTrim, options).width };
  return prepare(pieces, [{ ...endless, weight: 1, limit: 1, edgeTrim: unitsDown(edgeTrim) }], options);
}

function usableSize(
  length: number,
  width: number,
  edgeTrim: number,
  { pieceGap = 0 }: CuttingOptions,
): { length: number; width: number } {
  const gap = unitsUp(pieceGap);
  const usable = (side: number) => Math.max(0, unitsDown(side - 2 * edgeTrim)) + gap;
  return { length: usable(length), width: usable(width) };
}

function prepare(pieces: readonly Piece[], kinds: readonly SheetKind[], options: CuttingOptions): Prepared {
  const gap = unitsUp(options.pieceGap ?? 0);
  const limits = limitsOf(options);
  const there = kinds.filter((kind) => kind.limit > 0);
  const goesOn = (shape: Shape, own: Limits) => there.some((kind) => isFreed(shape, kind, own));
  const goesAnyWay = (shape: Shape, turn: boolean, own: Limits) =>
    goesOn(shape, own) || (turn && goesOn(turned(shape), own));
  const source: Piece[] = [];
  const copies: number[] = [];
  const tooLarge: Uncuttable[] = [];
  for (const piece of pieces) {
    const shape = {
      length: unitsUp(piece.length) + gap,
      width: unitsUp(piece.width) + gap,
      stretch: stretchOf(piece),
    };
    const count = piece.count ?? 1;
    if (!goesAnyWay(shape, piece.turn, limits)) {
      const against = goesOn(turned(shape), NO_LIMITS) ? "fits only against the grain" : "larger than every sheet";
      const reason = goesAnyWay(shape, piece.turn, NO_LIMITS) ? "longer than the longest cut" : against;
      if (count > 0) tooLarge.push({ piece, count, reason });
      continue;
    }
    for (let copy = 1; copy <= count; copy++) {
      source.push(piece);
      copies.push(copy);
    }
  }
  const size = source.length;
  const length = new Int32Array(size);
  const width = new Int32Array(size);
  const turn = new Uint8Array(size);
  const area = new Float64Array(size);
  const worth = new Float64Array(size);
  const stretch = new Uint8Array(size);
  for (let index = 0; index < size; index++) {
    const piece = source[index]!;
    const own = unitsUp(piece.length) + gap;
    const across = unitsUp(piece.width) + gap;
    length[index] = own;
    width[index] = across;
    turn[index] = piece.turn && own !== across ? 1 : 0;
    area[index] = own * across;
    worth[index] = worthOf(own * across);
    stretch[index] = stretchOf(piece);
  }
  const copy = Int32Array.from(copies);
  return {
    job: { kinds, size, length, width, turn, area, worth, ...numberItems(source), stretch, limits, source, copy },
    tooLarge,
  };
}

function numberItems(source: readonly Piece[]): Pick<Job, "item" | "items"> {
  const numbers = new Map<string, number>();
  const item = new Int32Array(source.length);
  for (let index = 0; index < item.length; index++) {
    // The pieces of an item most often follow one another.
    const name = source[index]!.item;
    if (index > 0 && name === source[index - 1]!.item) {
      item[index] = item[index - 1]!;
      continue;
    }
    const number = numbers.get(name) ?? numbers.size;
    numbers.set(name, number);
    item[index] = number;
  }
  return { item, items: numbers.size };
}
