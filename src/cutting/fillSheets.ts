import { ALONG_LENGTH, ALONG_WIDTH, NONE } from "./forest";
import type { Job, SheetKind } from "./job";
import type { Panel } from "./panels";

/** Pieces that make a rectangle without waste. */
export interface Block {
  readonly panel: Panel;
  /** In rising order. */
  readonly pieces: readonly number[];
}

/** A block from edge to edge, with what it takes of the sheet along the axis on which strips lie side by side. */
interface Strip {
  readonly panel: Panel;
  readonly pieces: readonly number[];
  readonly axis: number;
  readonly size: number;
}

/** Strips weighed in all: about a tenth of a second. */
const MOST_CHOICES = 500_000;

/** What going on to the next sheet counts for among them. */
const SHEET_CHOICES = 200;

/**
 * Sheets filled by strips that add up exactly: takes the largest piece, tries each way to fill a sheet around it, and
 * goes back when a piece is left without one.
 *
 * @returns the most sheets that were filled at once
 */
export function fillSheets(job: Job, blocks: readonly Block[], kind: SheetKind): readonly Panel[] {
  const strips = [
    ...stripsAlong(blocks, ALONG_WIDTH, (panel) => (panel.length === kind.length ? panel.width : 0)),
    ...stripsAlong(blocks, ALONG_LENGTH, (panel) => (panel.width === kind.width ? panel.length : 0)),
  ];
  const byAxis = [ALONG_LENGTH, ALONG_WIDTH].map((axis) => strips.filter((strip) => strip.axis === axis));
  const ofPiece = Array.from(job.area, (_, piece) => strips.filter((strip) => strip.pieces.includes(piece)));
  const toCover = Array.from(job.area.keys())
    .filter((piece) => ofPiece[piece]!.length > 0)
    .sort((one, other) => job.area[other]! - job.area[one]!);
  const used = new Uint8Array(job.size);
  const filled: (readonly Strip[])[] = [];
  let best: readonly (readonly Strip[])[] = [];
  let choices = MOST_CHOICES;

  const isFree = (strip: Strip) => strip.pieces.every((piece) => used[piece] === 0);
  const mark = (strip: Strip, value: number) => strip.pieces.forEach((piece) => (used[piece] = value));
  const cover = (): boolean => {
    choices -= SHEET_CHOICES;
    if (filled.length > best.length) best = [...filled];
    const piece = toCover.find((candidate) => used[candidate] === 0);
    if (piece === undefined) return true;
    return ofPiece[piece]!.some((strip) => isFree(strip) && take(strip, sideOf(kind, strip.axis), [], 0));
  };
  const take = (strip: Strip, room: number, chosen: readonly Strip[], next: number): boolean => {
    mark(strip, 1);
    if (fill(room - strip.size, [...chosen, strip], next)) return true;
    mark(strip, 0);
    return false;
  };
  const fill = (room: number, chosen: readonly Strip[], from: number): boolean => {
    if (room === 0) {
      filled.push(chosen);
      if (cover()) return true;
      filled.pop();
      return false;
    }
    const others = byAxis[chosen[0]!.axis]!;
    for (let next = from; next < others.length && choices-- > 0; next++) {
      const other = others[next]!;
      if (other.size <= room && isFree(other) && take(other, room, chosen, next + 1)) return true;
    }
    return false;
  };
  cover();
  return best.map((strips) => sheetOf(strips, kind));
}

function stripsAlong(blocks: readonly Block[], axis: number, sizeOf: (panel: Panel) => number): readonly Strip[] {
  return blocks
    .map(({ panel, pieces }) => ({ panel, pieces, axis, size: sizeOf(panel) }))
    .filter(({ size }) => size > 0)
    .sort((one, other) => other.size - one.size);
}

function sideOf(kind: SheetKind, axis: number): number {
  return axis === ALONG_LENGTH ? kind.length : kind.width;
}

function sheetOf(strips: readonly Strip[], { length, width }: SheetKind): Panel {
  const [only] = strips;
  if (only !== undefined && strips.length === 1) return only.panel;
  return { length, width, axis: only?.axis ?? ALONG_LENGTH, parts: strips.map(({ panel }) => panel), piece: NONE };
}
