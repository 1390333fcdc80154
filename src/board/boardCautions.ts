import type { Assembly, Plate } from "../enclosure/assembly";
import { formatLengthWithUnit } from "../measure/formatLength";
import type { Mm } from "../measure/units";
import { boardName, type Board } from "../settings/boards";
import type { Settings } from "../settings/schema";
import { basePlate, bending } from "./basePlate";
import { boardSag, plateThickness } from "./boardSag";
import type { Body } from "../enclosure/kind";
import { guideAnswer, type GuideAnswer } from "./guideAnswer";
import { weightOf, type ItemLoad } from "./itemWeight";
import { springing, springingAllowed } from "./springing";

/** An item in its enclosure, with the board in force. */
export interface Boarded extends ItemLoad {
  readonly assembly: Assembly;
  /** What its body is made of. */
  readonly board: Board;
}

/**
 * What to watch about the board: the item is beyond the guide, the stock lacks what the guide asks for, the base springs
 * when the box is lifted.
 *
 * @param settings with the shop's guide; without a guide nothing is said of it
 */
export function boardCautions(boarded: Boarded, settings: Settings): readonly string[] {
  return [
    ...ofGuide(boarded, settings),
    ...overSizeLimit(boarded, settings),
    ...springs("base", "when lifted", boarded.assembly.base, weightOf(boarded, settings)?.kg, settings),
    ...springs("top", "under the stack above", boarded.assembly.top, settings.stackAbove, settings),
  ];
}

function ofGuide(boarded: Boarded, settings: Settings): readonly string[] {
  if (settings.guide === undefined) return [];
  const body = boarded.kind.body(settings);
  const answer = guideAnswer(boarded, body, settings);
  const inForce = boardName(answer.board) === boardName(boarded.board);
  return [
    ...(answer.beyondLimits ? [BEYOND[body]] : []),
    ...(inForce ? lacking(answer) : []),
    ...(inForce && answer.bySizeAlone ? ["weight not given: the board is chosen by size alone"] : []),
  ];
}

const LARGE =
  "large or heavy for covered board: consider double walls, corrugated board, a crate or a support of another kind; lift with another person";
const SOFT = "large or heavy for card: a box would hold it better";

/** Said of an item beyond every limit of the guide. Common practice, no source. */
const BEYOND: Readonly<Record<Body, string>> = {
  walls: LARGE,
  "cut blank": LARGE,
  "creased blank": SOFT,
  wrapper: SOFT,
};

function lacking({ how, board, row }: GuideAnswer): readonly string[] {
  if (how === "exact") return [];
  const instead = how === "thicker" ? "is taken instead" : "is the thickest that may be taken";
  return [`the board guide asks for ${row.askedText}, which the stock table lacks: ${boardName(board)} ${instead}`];
}

function overSizeLimit({ item, board }: Boarded, { answerUnit: unit }: Settings): readonly string[] {
  const limit = board.listed?.sizeLimit ?? Infinity;
  if (Math.max(item.height, item.width, item.depth) <= limit) return [];
  return [`${board.stock} is for items up to ${formatLengthWithUnit(limit, unit)}`];
}

function springs(
  what: "base" | "top",
  when: string,
  carrying: Plate | undefined,
  loadKg: number | undefined,
  settings: Settings,
): readonly string[] {
  if (carrying === undefined || loadKg === undefined || loadKg === 0) return [];
  const plate = bending(carrying);
  const { board } = carrying.part;
  const w = springing(boardSag(board, plate, loadKg, settings), plateThickness(board, plate));
  if (w <= springingAllowed(plate)) return [];
  return [`the ${what} springs about ${Math.round(w)} mm ${when}: next board, or double it`];
}

/**
 * Springing of the base under an item with another board, mm; undefined where the enclosure has no base board.
 *
 * @param caseUnder caliper of the case board that a clamshell's tray is glued to
 */
export function baseSpringing(
  assembly: Assembly,
  board: Board,
  caseUnder: Mm,
  loadKg: number,
  settings: Settings,
): Mm | undefined {
  const own = basePlate(assembly);
  const plate = own && { ...own, gluedTo: own.gluedTo === 0 ? 0 : caseUnder };
  return plate && springing(boardSag(board, plate, loadKg, settings), plateThickness(board, plate));
}
