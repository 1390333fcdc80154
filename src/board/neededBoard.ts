import type { Assembly } from "../enclosure/assembly";
import type { Kind } from "../enclosure/kind";
import { lying, type Item } from "../enclosure/lying";
import { InputError, NoAnswer } from "../measure/errors";
import { formatLengthWithUnit } from "../measure/formatLength";
import type { Mm } from "../measure/units";
import type { Board } from "../settings/readers";
import type { Settings } from "../settings/schema";
import type { StockRow } from "../settings/stock";
import { basePlate, topPlate, type BasePlate } from "./basePlate";
import { boardSag, type BendingBoard } from "./boardSag";
import { neededCaliper, type CandidateBoard } from "./neededCaliper";

/** An item to be boxed, with what its base must carry. */
export interface Burden {
  readonly item: Item;
  readonly kind: Kind;
  /** Undefined where it was not given. */
  readonly weightKg: number | undefined;
}

/** A weight, and whether it was reckoned from a density. */
export interface Weight {
  readonly kg: number;
  readonly estimated: boolean;
}

/** The weight of an item: as given, else by `item density`; undefined where neither is there. */
export function weightOf(
  { item, weightKg }: Pick<Burden, "item" | "weightKg">,
  settings: Settings,
): Weight | undefined {
  if (weightKg !== undefined) return { kg: weightKg, estimated: false };
  if (settings.itemDensity === undefined) return undefined;
  return { kg: (item.height * item.width * item.depth * settings.itemDensity) / MM3_PER_M3, estimated: true };
}

/**
 * The thinnest stock board whose base sags no more than the settings allow under this item, and whose top carries the
 * stack above. Walls, bases and case take the candidate wherever the settings do not name another board.
 *
 * @throws NoAnswer without a weight, for a kind without a base board, and when no stocked board is stiff enough
 */
export function neededBoard(burden: Burden, settings: Settings): StockRow {
  const { kind, item } = burden;
  const weight = weightOf(burden, settings);
  if (weight === undefined)
    throw new NoAnswer("weight: the board that an item needs follows from its weight; give it, or set item density");
  const boards = candidates(settings);
  if (boards.length === 0) throw new NoAnswer("stock: the stock table has no board");
  // Inside sizes do not hang on the board, so that one trial tells the spans of all.
  const trial = assembledWith(boards[0]!.row, burden, settings);
  const base = basePlate(trial);
  if (base === undefined) throw new NoAnswer(`enclosure: a ${kind.name} has no base board to be chosen by weight`);
  const top = settings.stackAbove > 0 ? topPlate(trial) : undefined;
  const loads = [
    { plate: base, loadKg: weight.kg },
    ...(top === undefined ? [] : [{ plate: top, loadKg: settings.stackAbove }]),
  ];
  const needed = loads.map(({ plate, loadKg }) =>
    neededCaliper({
      ...plate,
      loadKg,
      boards,
      creep: settings.creep,
      sagRatio: settings.sagRatio,
      sagLimit: settings.sagLimit,
      longestSide: Math.max(item.height, item.width, item.depth),
      thickness: (board) => plateThickness(board, plate, settings),
    }),
  );
  for (const result of needed) if (!result.holds) throw new NoAnswer(noneHolds(result, settings));
  const held = needed.flatMap((result) => (result.holds ? [result.board] : []));
  return held.reduce((thicker, board) => (board.caliper > thicker.caliper ? board : thicker)).row;
}

/**
 * Settings in which `auto` boards are the one that the row's weight needs; as they are where no board is `auto`.
 *
 * @throws InputError when a board is auto and there is no weight
 * @throws NoAnswer when no stocked board is stiff enough, or the kind has no base board
 */
export function settledBoards(burden: Burden, settings: Settings): Settings {
  const auto = settings.wallBoard === "auto" ? "wall board" : settings.baseBoard === "auto" ? "base board" : undefined;
  if (auto === undefined || !burden.kind.boards) return settings;
  if (weightOf(burden, settings) === undefined)
    throw new InputError(
      "weight",
      "a blank",
      `${auto}=auto needs it: give the weight`,
      "or set item density, or name a board",
    );
  return withBoard(neededBoard(burden, settings), settings);
}

/** Sag of the base under the item with a board of that caliper and those moduli; a creep multiplier in it. */
export function baseSag(burden: Burden, board: Board, settings: Settings): Mm {
  const weight = weightOf(burden, settings);
  if (weight === undefined) throw new NoAnswer("weight: a sag follows from the weight; give it, or set item density");
  const plate = basePlate(assembledWith(board, burden, settings));
  if (plate === undefined) throw new NoAnswer(`enclosure: a ${burden.kind.name} has no base board that sags`);
  const bending = { ...moduli(board.listed, settings), caliper: board.caliper };
  return boardSag(
    bending,
    { ...plate, loadKg: weight.kg, creep: settings.creep },
    plateThickness(bending, plate, settings),
  );
}

const MM3_PER_M3 = 1e9;

interface Candidate extends CandidateBoard {
  readonly row: StockRow;
}

/** Each stock board once, whatever the sheet sizes that it comes in. */
function candidates(settings: Settings): readonly Candidate[] {
  const names = new Set<string>();
  return settings.stock.flatMap((row) => {
    if (row.material !== "board" || names.has(row.stock)) return [];
    names.add(row.stock);
    return [{ row, caliper: row.caliper, sizeLimit: row.sizeLimit, ...moduli(row, settings) }];
  });
}

function moduli(row: StockRow | undefined, settings: Settings): Omit<BendingBoard, "caliper"> {
  return {
    modulusAlongGpa: row?.modulusAlongGpa ?? settings.modulusAlong,
    modulusAcrossGpa: row?.modulusAcrossGpa ?? settings.modulusAcross,
  };
}

/** A clamshell's tray is glued to its case board; where the settings name none, that is the same board again. */
function plateThickness(board: BendingBoard, plate: BasePlate, { caseBoard, wallBoard }: Settings): Mm {
  if (plate.gluedTo === 0) return board.caliper;
  const named = caseBoard ?? (wallBoard === "auto" ? undefined : wallBoard);
  return board.caliper + (named?.caliper ?? board.caliper);
}

function assembledWith(board: StockRow | Board, { item, kind }: Burden, settings: Settings): Assembly {
  const boards = withBoard(board, settings);
  const trial = { ...boards, baseBoard: boardOf(board) };
  return kind.assemble(lying(item, trial), trial);
}

function withBoard(board: StockRow | Board, settings: Settings): Settings {
  return {
    ...settings,
    wallBoard: settings.wallBoard === "auto" ? boardOf(board) : settings.wallBoard,
    baseBoard: settings.baseBoard === "auto" ? boardOf(board) : settings.baseBoard,
  };
}

function boardOf(board: StockRow | Board): Board {
  return "listed" in board ? board : { stock: board.stock, caliper: board.caliper, listed: board };
}

function noneHolds(
  { passedOver, allowed }: Extract<ReturnType<typeof neededCaliper<Candidate>>, { holds: false }>,
  { unit }: Settings,
): string {
  const stiffest = passedOver[passedOver.length - 1]!;
  const shown = (size: Mm) => formatLengthWithUnit(size, unit);
  if (stiffest.because === "size limit")
    return `board: no stocked board is made for an item this large; the size limit of ${stiffest.board.row.stock} is too small`;
  return `board: no stocked board is stiff enough; the thickest, ${stiffest.board.row.stock}, would sag ${shown(stiffest.sag)} where ${shown(allowed)} is allowed`;
}
