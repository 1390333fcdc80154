import type { Mm } from "../measure/units";
import { boardSag, type BaseUnderLoad, type BendingBoard } from "./boardSag";
import { requireAboveZero } from "./requireAboveZero";

/** A board that the shop stocks. */
export interface CandidateBoard extends BendingBoard {
  /** the longest side of an item that the shop makes from this board; undefined where it sets none */
  readonly sizeLimit: Mm | undefined;
}

/** When a sag is too much. */
export interface SagRule {
  /** the sag may be the short span over this (150: common practice, no source) */
  readonly sagRatio: number;
  /** and never more than this */
  readonly sagLimit: Mm;
}

/** What the base carries, and what decides whether it holds. */
export interface CaliperQuestion<Board extends CandidateBoard> extends BaseUnderLoad, SagRule {
  /** in any order; where two share a caliper, the first is preferred */
  readonly boards: readonly Board[];
  /** the item's longest side, for boards with a size limit */
  readonly longestSide: Mm;
  /** thickness of the plate that a board makes when it is glued to another; its caliper unless given */
  readonly thickness?: (board: Board) => Mm;
}

/** A board that was tried, and why it would not do. */
export interface PassedOver<Board> {
  readonly board: Board;
  readonly because: "size limit" | "sag";
  readonly sag: Mm;
}

export type NeededCaliper<Board> =
  | {
      readonly holds: true;
      readonly board: Board;
      readonly sag: Mm;
      readonly allowed: Mm;
      readonly passedOver: readonly PassedOver<Board>[];
    }
  | { readonly holds: false; readonly allowed: Mm; readonly passedOver: readonly PassedOver<Board>[] };

/**
 * The thinnest board that sags no more than the rule allows and whose own size limit covers the item. `passedOver`
 * gives the thinner boards with the reason each was left, or every board when none holds (it is empty when none
 * was offered), thinnest first.
 *
 * A heavier item, or a base larger in proportion under the same item, never gets a thinner board. A base that grows in
 * one direction alone may: the same weight then lies on more board.
 *
 * @throws InputError as `boardSag`, and when sag ratio or sag limit is not above zero
 */
export function neededCaliper<Board extends CandidateBoard>(question: CaliperQuestion<Board>): NeededCaliper<Board> {
  const { boards, longestSide, thickness = (board: Board) => board.caliper } = question;
  const allowed = sagAllowed(question, question);
  const passedOver: PassedOver<Board>[] = [];
  for (const board of [...boards].sort((one, other) => one.caliper - other.caliper)) {
    const sag = boardSag(board, question, thickness(board));
    const tooSmall = board.sizeLimit !== undefined && longestSide > board.sizeLimit;
    if (!tooSmall && sag <= allowed) return { holds: true, board, sag, allowed, passedOver };
    passedOver.push({ board, because: tooSmall ? "size limit" : "sag", sag });
  }
  return { holds: false, allowed, passedOver };
}

/**
 * The greatest sag that a base of this span may show, mm.
 *
 * @throws InputError when a span, the sag ratio or the sag limit is not above zero
 */
export function sagAllowed(span: Pick<BaseUnderLoad, "spanX" | "spanY">, { sagRatio, sagLimit }: SagRule): Mm {
  requireAboveZero("span", span.spanX);
  requireAboveZero("span", span.spanY);
  requireAboveZero("sag ratio", sagRatio);
  requireAboveZero("sag limit", sagLimit);
  return Math.min(Math.min(span.spanX, span.spanY) / sagRatio, sagLimit);
}
