import type { Body, Kind } from "../enclosure/kind";
import { InputError, shown } from "../measure/errors";
import { boardName, boardOfCaliper, onePly, type Board } from "../settings/boards";
import type { SettledSettings, Settings } from "../settings/schema";
import { refuseBoardCaliper } from "../settings/stock";
import { guideBoard } from "./guideAnswer";
import type { ItemLoad } from "./itemWeight";

/** Settings in which every board of one item is decided, and the board that its body is made of. */
export interface SettledBoards {
  readonly settings: SettledSettings;
  readonly board: Board;
}

/**
 * The board in force for an item: the row's preference, else the settings', else the guide's; base and case follow the
 * walls unless they are named.
 *
 * @param settings as asked for, with `auto` boards still `auto`
 * @throws InputError when a board that is named cannot be used for this kind
 */
export function settledBoards(itemLoad: ItemLoad, settings: Settings): SettledBoards {
  const body = itemLoad.kind.body(settings);
  const board = body === "wrapper" ? wrapperCard(itemLoad, settings) : bodyBoard(itemLoad, body, settings);
  // Settings that are chosen by the guide once more are another matter.
  if (settings.baseBoard === "auto" || settings.caseBoard === "auto") return settled(itemLoad, body, board, settings);
  let known = remembered[body].get(settings);
  if (known === undefined) remembered[body].set(settings, (known = new WeakMap()));
  let result = known.get(board);
  if (result === undefined) known.set(board, (result = settled(itemLoad, body, board, settings)));
  return result;
}

/** Settings are long, and thousands of rows have the same ones and the same board. */
const remembered: Readonly<Record<Body, WeakMap<Settings, WeakMap<Board, SettledBoards>>>> = {
  walls: new WeakMap(),
  "cut blank": new WeakMap(),
  "creased blank": new WeakMap(),
  wrapper: new WeakMap(),
};

function settled(itemLoad: ItemLoad, body: Body, board: Board, settings: Settings): SettledBoards {
  const decided = (each: Board | "auto" | undefined) => {
    if (each !== "auto") return each;
    return body === "walls" ? guideBoard(itemLoad, body, settings) : board;
  };
  const { wallBoard, wrapperCard: card, baseBoard, caseBoard } = settings;
  const decidedSettings: SettledSettings = {
    ...settings,
    // What a kind has no use for is decided too, so that nothing is left open.
    wallBoard: body === "wrapper" && wallBoard !== "auto" ? wallBoard : board,
    wrapperCard: body === "wrapper" ? board : card,
    baseBoard: decided(baseBoard),
    caseBoard: decided(caseBoard),
  };
  return { settings: decidedSettings, board };
}

/** Whether the guide decides on the board of a row, so that its weight counts. */
export function isByGuide(kind: Kind, settings: Settings): boolean {
  const { ownOfRow, wallBoard, baseBoard, caseBoard, guide, origins } = settings;
  if (kind.body(settings) !== "wrapper") return [wallBoard, baseBoard, caseBoard].includes("auto");
  if (ownOfRow.has("wrapperCard")) return false;
  if (ownOfRow.has("wallBoard")) return wallBoard === "auto";
  return !origins.has("wrapperCard") && (guide !== undefined || wallBoard === "auto");
}

function bodyBoard(itemLoad: ItemLoad, body: Body, settings: Settings): Board {
  const { wallBoard, ownOfRow } = settings;
  if (wallBoard === "auto") return guideBoard(itemLoad, body, settings);
  refuseBoardCaliper(wallBoard.caliper, "wall board", wallBoard.caliper, body === "creased blank" ? "card" : "board");
  if (body === "walls" || wallBoard.plies === 1) return wallBoard;
  if (ownOfRow.has("wallBoard")) throw foldedFromOne(wallBoard, itemLoad.kind);
  return onePly(wallBoard);
}

function wrapperCard(itemLoad: ItemLoad, settings: Settings): Board {
  const { wallBoard, ownOfRow } = settings;
  if (isByGuide(itemLoad.kind, settings)) return guideBoard(itemLoad, "wrapper", settings);
  if (ownOfRow.has("wrapperCard") || !ownOfRow.has("wallBoard") || wallBoard === "auto") return settings.wrapperCard;
  if (wallBoard.plies > 1) throw foldedFromOne(wallBoard, itemLoad.kind);
  // A bare caliper was looked up among the boards.
  return wallBoard.listed === undefined ? boardOfCaliper(wallBoard.caliper, "card", settings.stock) : wallBoard;
}

function foldedFromOne(board: Board, { name }: Kind): InputError {
  return new InputError(
    "wall board",
    shown(boardName(board)),
    `a ${name} is folded from one piece, which is never laminated`,
    "name one board or card",
  );
}
