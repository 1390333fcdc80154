import { coveringParts, partList } from "../covering/partList";
import { boardParts, type Part } from "../enclosure/part";
import type { PlacedPart } from "../enclosure/placedPart";
import { extent, X, Y, Z, type Axis } from "../enclosure/space";
import type { Assembly } from "../enclosure/assembly";
import type { NoAnswer } from "../measure/errors";
import { InputError, shown } from "../measure/errors";
import { areaIn, fromMm, tidy, type Mm } from "../measure/units";
import { didYouMean, listed, plainName } from "../settings/names";
import type { Settings } from "../settings/schema";
import { findPart } from "./findPart";
import { onShelf } from "./onShelf";
import type { Sized } from "./sizeItem";

/** What one cell shows; in a table an error stands in its own cell and the others stand. */
export type Cell = number | string | NoAnswer | InputError;

/** One cell, or a table that spills. */
export type Answer = Cell | readonly (readonly Cell[])[];

/** What is read of a cell: of an error, why. */
export function plainCell(cell: Cell): number | string {
  return typeof cell === "object" ? cell.message : cell;
}

export function plainRows(rows: readonly (readonly Cell[])[]): readonly (readonly (number | string)[])[] {
  return rows.map((row) => row.map(plainCell));
}

/** Inside size, board to board, of the tray that holds the item. */
export function insideAnswer(sized: Sized, direction: string): Answer {
  const { inside } = sized.assembly.holder;
  return sizeAnswer((axis) => extent(inside, axis), direction, sized.settings);
}

/** What `OUTSIDE` answers beside the directions: the room that the enclosure takes along its shelf. */
export const SHELF_WIDTH = "shelf width";

/** Outside size, closed and covered. */
export function outsideAnswer(sized: Sized, direction: string): Answer {
  if (!Object.hasOwn(AXES, direction) && plainName(direction) === SHELF_WIDTH)
    return inUnit(onShelf(sized).along, sized.settings);
  const { outside } = sized.assembly;
  return sizeAnswer((axis) => outside[axis], direction, sized.settings);
}

/** Height and width of a base board as it lies. */
export function baseAnswer(sized: Sized, base: string, direction: string): Answer {
  const bases = boardParts(sized.assembly, "base");
  if (isAll(base)) {
    const wanted = isAll(direction) ? (["height", "width"] as const) : [chosen(direction, "direction", BASE_WAYS)];
    return table(["part", ...wanted], bases, (part) => [
      part.fullName,
      ...wanted.map((each) => baseSize(part, each, sized.settings)),
    ]);
  }
  const part = findPart(bases, base, sized, "base");
  if (isAll(direction)) return [BASE_WAYS.map((each) => baseSize(part, each, sized.settings))];
  return baseSize(part, chosen(direction, "direction", BASE_WAYS), sized.settings);
}

/** Length or cut height of a wall. */
export function wallAnswer(sized: Sized, wall: string, measure: "length" | "height"): Answer {
  const walls = boardParts(sized.assembly, "wall");
  // The run of a wall is its length and its cut height its width, however deep the tray.
  const size = (part: Part) => inUnit(measure === "length" ? part.length : part.width, sized.settings);
  if (isAll(wall)) return table(["wall", measure], walls, (part) => [part.fullName, size(part)]);
  return size(findPart(walls, wall, sized, "wall"));
}

/** A covering or lining blank, along and across its grain. */
export function blankAnswer(sized: Sized, piece: string, direction: string): Answer {
  const blanks = coveringParts(sized.assembly, sized.settings).filter(({ material }) => material !== "closure");
  const size = (part: Part, way: "along" | "across") => {
    const lengthways = part.grain !== "along width";
    return inUnit((way === "along") === lengthways ? part.length : part.width, sized.settings);
  };
  const ways = isAll(direction) ? GRAIN_WAYS : [chosen(direction, "direction", GRAIN_WAYS)];
  if (isAll(piece))
    return table(["piece", ...ways], blanks, (part) => [part.fullName, ...ways.map((way) => size(part, way))]);
  const part = findPart(blanks, piece, sized, "piece");
  return isAll(direction) ? [ways.map((way) => size(part, way))] : size(part, ways[0]);
}

/** Any figure of any part. */
export function partAnswer(sized: Sized, part: string, measure: string): Answer {
  const parts = partList(sized.assembly, sized.settings);
  const wanted = isAll(measure) ? PART_MEASURES : [chosen(measure, "measure", PART_MEASURES)];
  const figures = (each: Part) => wanted.map((one) => partFigure(each, one, sized.settings));
  if (isAll(part)) return table(["part", ...wanted], parts, (each) => [each.fullName, ...figures(each)]);
  const found = findPart(parts, part, sized, "part");
  return isAll(measure) ? [figures(found)] : figures(found)[0]!;
}

/**
 * Net area of what an enclosure is built of, of one stock or of all: its boards, or the card that it is folded from. Card
 * that is laminated under a base or over joints is no part of it.
 */
export function boardAreaAnswer({ assembly, settings }: Sized, board: string, boards = boardsOf(assembly)): Answer {
  const area = (parts: readonly Part[]) => tidy(areaIn(netAreaM2(parts), settings.answerUnit));
  if (isAll(board)) return area(boards);
  const wanted = plainName(board);
  const stocked = settings.stock.filter(({ material }) => material === "board" || material === "card");
  const row = stocked.find((each) => plainName(each.stock) === wanted);
  const stock = row?.stock ?? boards.find((part) => plainName(part.stock) === wanted)?.stock;
  if (stock !== undefined) return area(boards.filter((part) => part.stock === stock));
  const names = [...new Set(stocked.map((each) => each.stock))];
  throw new InputError("board", shown(board), `give all, ${listed(names, "or")}`, didYouMean(board, names));
}

/** Its boards, without cards and joint strips. */
export function boardsOf(assembly: Assembly, parts = boardParts(assembly)): readonly Part[] {
  return parts.filter(({ placed }) => !ADDED.has(placed!.role));
}

const ADDED: ReadonlySet<string> = new Set<PlacedPart["role"]>(["card", "strip"]);

/** Net area of parts, m2, each as often as it is cut. */
export function netAreaM2(parts: readonly Part[]): number {
  return parts.reduce((sum, { count, length, width }) => sum + count * length * width, 0) / MM2_PER_M2;
}

export const PART_MEASURES = ["length", "width", "count", "caliper", "grain", "material", "stock", "folds"] as const;
export type PartMeasure = (typeof PART_MEASURES)[number];

export function partFigure(part: Part, measure: PartMeasure, settings: Settings): Cell {
  if (measure === "folds") return foldsText(part, settings);
  if (measure === "count" || measure === "grain" || measure === "material" || measure === "stock") return part[measure];
  return inUnit(part[measure], settings);
}

/** One of some words; an error lists them, and `all` besides where that is dealt with before. */
export function chosen<T extends string>(
  typed: string,
  argument: string,
  words: readonly T[],
  accepted?: readonly string[],
): T {
  const exact = words.find((each) => each === typed);
  if (exact !== undefined) return exact;
  const wanted = plainName(typed);
  const word = words.find((each) => each === wanted || OTHER_WORDS[wanted] === each);
  if (word !== undefined) return word;
  throw new InputError(
    argument,
    shown(typed),
    `give ${listed(accepted ?? [...words, "all"], "or")}`,
    didYouMean(typed, words),
  );
}

export function isAll(selector: string): boolean {
  return selector === "all" || plainName(selector) === "all";
}

export const DIRECTIONS = ["height", "width", "depth"] as const;

export const AXES: Readonly<Record<(typeof DIRECTIONS)[number], Axis>> = { height: Y, width: X, depth: Z };
const BASE_WAYS = ["height", "width"] as const;
type BaseWay = (typeof BASE_WAYS)[number];
const GRAIN_WAYS = ["along", "across"] as const;
const OTHER_WORDS: Readonly<Record<string, string>> = { thickness: "depth", number: "count", quantity: "count" };
const MM2_PER_M2 = 1e6;

function sizeAnswer(sizeAlong: (axis: Axis) => Mm, direction: string, settings: Settings): Answer {
  if (isAll(direction)) return [DIRECTIONS.map((each) => inUnit(sizeAlong(AXES[each]), settings))];
  return inUnit(sizeAlong(AXES[chosen(direction, "direction", DIRECTIONS)]), settings);
}

function baseSize(part: Part, way: BaseWay, settings: Settings): number {
  return inUnit(extent(part.placed!.panels[0]!, AXES[way]), settings);
}

function inUnit(size: Mm, { answerUnit: unit }: Settings): number {
  return tidy(fromMm(size, unit));
}

/** Fold positions from one end, `12 / 54`; of a blank folded both ways, along its length and then along its width. */
function foldsText({ folds: { alongLength, alongWidth } }: Part, settings: Settings): string {
  const positions = (all: readonly Mm[]) => all.map((each) => String(inUnit(each, settings))).join(" / ");
  if (alongWidth.length === 0) return positions(alongLength);
  return `along length ${positions(alongLength)}; along width ${positions(alongWidth)}`;
}

function table<T>(headings: readonly string[], rows: readonly T[], cells: (row: T) => readonly Cell[]): Answer {
  return [[...headings], ...rows.map(cells)];
}
