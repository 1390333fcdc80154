import type { Assembly } from "../enclosure/assembly";
import type { Kind } from "../enclosure/kind";
import { restingItem, type Item } from "../enclosure/restingItem";
import { InputError, NoAnswer } from "../measure/errors";
import { formatLengthWithUnit } from "../measure/formatLength";
import type { Mm } from "../measure/units";
import type { Board } from "../settings/readers";
import type { Settings, SettledSettings } from "../settings/schema";
import type { StockRow } from "../settings/stock";
import { basePlate, topPlate, type BasePlate } from "./basePlate";
import { boardSag, type BendingBoard } from "./boardSag";
import { neededCaliper, type CaliperQuestion, type CandidateBoard, type NeededCaliper } from "./neededCaliper";

/** An item to be boxed, with what its base must carry. */
export interface ItemLoad {
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
  { item, weightKg }: Pick<ItemLoad, "item" | "weightKg">,
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
 * @param settings as asked for, with `auto` boards still `auto`
 * @throws NoAnswer without a weight, for a kind without a base board, and when no stocked board is stiff enough
 */
export function neededBoard(itemLoad: ItemLoad, settings: Settings): StockRow {
  const weight = weightOf(itemLoad, settings);
  if (weight === undefined)
    throw new NoAnswer("weight: the board that an item needs follows from its weight; give it, or set item density");
  const boards = candidates(settings);
  const [first] = boards;
  if (first === undefined) throw new NoAnswer("stock: the stock table has no board");
  // The inside that the item lies in does not hang on the board, so that one trial tells the base's span for all.
  const trial = assembledWith(first.row, itemLoad, settings);
  const base = basePlate(trial);
  if (base === undefined)
    throw new NoAnswer(`enclosure: a ${itemLoad.kind.name} has no base board to be chosen by weight`);
  const held = neededCaliper({ loadKg: weight.kg, ...question(base, boards, itemLoad, settings) });
  if (!held.holds) throw new NoAnswer(noneHolds(held, settings));
  if (settings.stackAbove === 0 || topPlate(trial) === undefined) return held.board.row;
  // The span of a lid grows with the walls that it goes over: each board is judged over its own.
  const enough = boards.find(({ row }) => boardHolds(itemLoad, boardOf(row), settings));
  if (enough !== undefined) return enough.row;
  throw new NoAnswer(noneCarries(boards[boards.length - 1]!, base, weight.kg, itemLoad, settings));
}

/**
 * Whether a board holds the item and the stack above, by sag and by its own size limit. True without a weight, and for
 * a kind without a base board.
 */
export function boardHolds(itemLoad: ItemLoad, board: Board, settings: Settings): boolean {
  const weight = weightOf(itemLoad, settings);
  if (weight === undefined) return true;
  const assembly = assembledWith(board, itemLoad, settings);
  const { caliper, listed } = board;
  const one = [{ caliper, sizeLimit: listed?.sizeLimit, ...moduli(listed, settings) }];
  const holds = (plate: BasePlate | undefined, loadKg: number) =>
    plate === undefined || neededCaliper({ loadKg, ...question(plate, one, itemLoad, settings) }).holds;
  return holds(basePlate(assembly), weight.kg) && holds(topPlate(assembly), settings.stackAbove);
}

/**
 * Settings in which `auto` boards are the one that the row's weight needs. A kind that has no use for a board takes for
 * it what it is made of.
 *
 * @throws InputError when a board is auto and there is no weight
 * @throws NoAnswer when no stocked board is stiff enough, or the walls of a kind without a base board are auto
 */
export function settledBoards(itemLoad: ItemLoad, settings: Settings): SettledSettings {
  if (isSettled(settings)) return settings;
  const { kind } = itemLoad;
  if (kind.body !== "wallBoard") return withBoard(settings[kind.body], settings);
  const auto = settings.wallBoard === "auto" ? "wall board" : "base board";
  if (kind.folded) {
    if (settings.wallBoard !== "auto") return withBoard(settings.wallBoard, settings);
    throw new NoAnswer(`wall board: a ${kind.name} has no base board to be chosen by weight; name its wall board`);
  }
  if (weightOf(itemLoad, settings) === undefined)
    throw new InputError(
      "weight",
      "a blank",
      `${auto}=auto needs it: give the weight`,
      "or set item density, or name a board",
    );
  return withBoard(neededBoard(itemLoad, settings), settings);
}

/**
 * Sag of the base under the item with one board, creep counted.
 *
 * @param settings as asked for, with `auto` boards still `auto`: they take this board
 * @throws NoAnswer without a weight, and for a kind without a base board
 */
export function baseSag(itemLoad: ItemLoad, board: Board, settings: Settings): Mm {
  const weight = weightOf(itemLoad, settings);
  if (weight === undefined) throw new NoAnswer("weight: a sag follows from the weight; give it, or set item density");
  const plate = basePlate(assembledWith(board, itemLoad, settings));
  if (plate === undefined) throw new NoAnswer(`enclosure: a ${itemLoad.kind.name} has no base board that sags`);
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

function isSettled(settings: Settings): settings is SettledSettings {
  return settings.wallBoard !== "auto" && settings.baseBoard !== "auto";
}

/** What `neededCaliper` is asked of one plate, its load aside. */
function question<B extends CandidateBoard>(
  plate: BasePlate,
  boards: readonly B[],
  { item }: ItemLoad,
  settings: Settings,
): Omit<CaliperQuestion<B>, "loadKg"> {
  const { creep, sagRatio, sagLimit } = settings;
  return {
    ...plate,
    boards,
    creep,
    sagRatio,
    sagLimit,
    longestSide: Math.max(item.height, item.width, item.depth),
    thickness: (board) => plateThickness(board, plate, settings),
  };
}

/** Each stock board once, whatever the sheet sizes that it comes in; thinnest first. */
function candidates(settings: Settings): readonly Candidate[] {
  const names = new Set<string>();
  return settings.stock
    .flatMap((row) => {
      if (row.material !== "board" || names.has(row.stock)) return [];
      names.add(row.stock);
      return [{ row, caliper: row.caliper, sizeLimit: row.sizeLimit, ...moduli(row, settings) }];
    })
    .sort((one, other) => one.caliper - other.caliper);
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

function assembledWith(board: StockRow | Board, { item, kind }: ItemLoad, settings: Settings): Assembly {
  const trial = withBoard(board, settings);
  return kind.assemble(restingItem(item, trial), trial);
}

function withBoard(board: StockRow | Board, settings: Settings): SettledSettings {
  return {
    ...settings,
    wallBoard: settings.wallBoard === "auto" ? boardOf(board) : settings.wallBoard,
    baseBoard: settings.baseBoard === "auto" ? boardOf(board) : settings.baseBoard,
  };
}

function boardOf(board: StockRow | Board): Board {
  return "listed" in board ? board : { stock: board.stock, caliper: board.caliper, listed: board };
}

/** Why not even the thickest board carries the stack above, or the item in its turn. */
function noneCarries(
  thickest: Candidate,
  base: BasePlate,
  itemKg: number,
  itemLoad: ItemLoad,
  settings: Settings,
): string {
  const top = topPlate(assembledWith(thickest.row, itemLoad, settings)) ?? base;
  const under = (plate: BasePlate, loadKg: number) =>
    neededCaliper({ loadKg, ...question(plate, [thickest], itemLoad, settings) });
  const stack = under(top, settings.stackAbove);
  return stack.holds ? noneHolds(under(base, itemKg), settings) : noneHolds(stack, settings, " under the stack above");
}

/** What the last board tried, the thickest, fails by. */
function noneHolds({ passedOver, allowed }: NeededCaliper<Candidate>, { unit }: Settings, where = ""): string {
  const { board, because, sag } = passedOver[passedOver.length - 1]!;
  const { stock } = board.row;
  const shown = (size: Mm) => formatLengthWithUnit(size, unit);
  if (because === "size limit")
    return `board: no stocked board is made for an item this large; the size limit of ${stock} is too small`;
  return `board: no stocked board is stiff enough; the thickest, ${stock}, would sag ${shown(sag)}${where} where ${shown(allowed)} is allowed`;
}
