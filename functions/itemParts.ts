import { blankAnswer, boardAreaAnswer, partAnswer } from "../src/item/answers";
import { itemAnswer, rowProblem, selector, oneValue } from "./cells";

/**
 * Size of a covering or lining blank, turn-ins included, along or across its grain.
 * @customfunction COVER.BLANK COVER.BLANK
 * @param height Height of the item, head to tail: a number in the workbook's unit, or text such as 10 3/8 in; of several in one box 300 | 310
 * @param width Width of the item, spine to fore-edge
 * @param depth Depth (thickness) of the item
 * @param enclosure Kind of enclosure, such as tray, lidded box, slipcase or clamshell box
 * @param piece Name of the piece: wall strip, base panel, floor lining, wrap, case covering and so on, or all
 * @param direction along or across the grain, or all
 * @param settings Settings range, stock table or text such as turn-in=18; as many as you like, later over earlier
 * @returns Length in the workbook's unit
 */
export function coverBlank(
  height: any,
  width: any,
  depth: any,
  enclosure: any,
  piece: any[][],
  direction: any[][],
  settings?: any[][][],
): any[][] {
  return itemAnswer({ height, width, depth, enclosure }, settings, (sized) =>
    blankAnswer(sized, selector(piece, "piece", "wall strip"), selector(direction, "direction", "all")),
  );
}

/**
 * Any figure of any part: its length, width, count, caliper, grain, material, stock or folds.
 * @customfunction PART PART
 * @param height Height of the item, head to tail: a number in the workbook's unit, or text such as 10 3/8 in; of several in one box 300 | 310
 * @param width Width of the item, spine to fore-edge
 * @param depth Depth (thickness) of the item
 * @param enclosure Kind of enclosure, such as tray, lidded box, slipcase or clamshell box
 * @param part Name of the part, such as base, lid side wall, flange card or wall strip, or all
 * @param measure length, width, count, caliper, grain, material, stock, folds or all
 * @param settings Settings range, stock table or text such as fit=loose; as many as you like, later over earlier
 * @returns Number in the workbook's unit, or text
 */
export function part(
  height: any,
  width: any,
  depth: any,
  enclosure: any,
  part: any[][],
  measure: any[][],
  settings?: any[][][],
): any[][] {
  return itemAnswer({ height, width, depth, enclosure }, settings, (sized) =>
    partAnswer(sized, selector(part, "part", "base"), selector(measure, "measure", "length")),
  );
}

/**
 * Every part to cut for one item, a row each: boards, cards, covering, lining and cushioning, with how to cut it.
 * @customfunction PARTS PARTS
 * @param height Height of the item, head to tail: a number in the workbook's unit, or text such as 10 3/8 in; of several in one box 300 | 310
 * @param width Width of the item, spine to fore-edge
 * @param depth Depth (thickness) of the item
 * @param enclosure Kind of enclosure, such as tray, lidded box, slipcase or clamshell box
 * @param settings Settings range, stock table or text such as fit=loose; as many as you like, later over earlier
 * @returns Table with headings
 */
export async function parts(
  height: any,
  width: any,
  depth: any,
  enclosure: any,
  settings?: any[][][],
): Promise<any[][]> {
  const { partsCells } = await import(/* webpackChunkName: "survey" */ "./surveyTables");
  return partsCells({ height, width, depth, enclosure }, settings);
}

/**
 * Net area of the board, or of the card that it is folded from, that one enclosure takes: m2, or ft2 when the unit is in.
 * @customfunction BOARD.AREA BOARD.AREA
 * @param height Height of the item, head to tail: a number in the workbook's unit, or text such as 10 3/8 in; of several in one box 300 | 310
 * @param width Width of the item, spine to fore-edge
 * @param depth Depth (thickness) of the item
 * @param enclosure Kind of enclosure, such as tray, lidded box, slipcase or clamshell box
 * @param board Name of one stock board or card, or all for the sum over every one
 * @param settings Settings range, stock table or text such as fit=loose; as many as you like, later over earlier
 * @returns Area
 */
export function boardArea(
  height: any,
  width: any,
  depth: any,
  enclosure: any,
  board: any[][],
  settings?: any[][][],
): any {
  return oneValue(
    itemAnswer({ height, width, depth, enclosure }, settings, (sized) =>
      boardAreaAnswer(sized, selector(board, "board", "all")),
    ),
  );
}

/**
 * Why this row cannot be sized; empty when it can. Never an error, so that a survey can be filtered by it.
 * @customfunction PROBLEM PROBLEM
 * @param height Height of the item, head to tail: a number in the workbook's unit, or text such as 10 3/8 in; of several in one box 300 | 310
 * @param width Width of the item, spine to fore-edge
 * @param depth Depth (thickness) of the item
 * @param enclosure Kind of enclosure, such as tray, lidded box, slipcase or clamshell box
 * @param settings Settings range, stock table or text such as fit=loose; as many as you like, later over earlier
 * @returns Text
 */
export function problem(height: any, width: any, depth: any, enclosure: any, settings?: any[][][]): any {
  return oneValue(rowProblem({ height, width, depth, enclosure }, settings));
}
