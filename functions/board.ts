import {
  boardStockAnswer,
  caliperAnswer,
  cautionsAnswer,
  fitRangeAnswer,
  massAnswer,
  modulusAnswer,
  sagAnswer,
} from "../src/item/boardAnswers";
import { typedHeight } from "../src/item/saidOfRow";
import { itemAnswer, measuringAnswer, plainCell, selector, oneValue } from "./cells";

/**
 * Caliper of the board in force for this item: the number in the stock table, so that a filter or SUMIFS matches it.
 * @customfunction BOARD.CALIPER BOARD.CALIPER
 * @param height Height of the item, head to tail: a number in the workbook's unit, or text such as 10 3/8 in; of several in one box 300 | 310
 * @param width Width of the item, spine to fore-edge
 * @param depth Depth (thickness) of the item
 * @param weight Weight of the item in kg (lb when the unit is in), or text such as 850 g
 * @param enclosure Kind of enclosure, such as tray, lidded box, slipcase or clamshell box
 * @param settings Settings range, stock table, board guide or text such as wall board=3 mm; as many as you like, later over earlier
 * @returns Number as in the stock table
 */
export function boardCaliper(
  height: any,
  width: any,
  depth: any,
  weight: any,
  enclosure: any,
  settings?: any[][][],
): any {
  return oneValue(
    itemAnswer({ height, width, depth, weight, enclosure }, settings, caliperAnswer, { starterGuide: true }),
  );
}

/**
 * Board in force for this item: as named in the settings, else by the board guide (the starter guide if none is given).
 * @customfunction BOARD.STOCK BOARD.STOCK
 * @param height Height of the item, head to tail: a number in the workbook's unit, or text such as 10 3/8 in; of several in one box 300 | 310
 * @param width Width of the item, spine to fore-edge
 * @param depth Depth (thickness) of the item
 * @param weight Weight of the item in kg (lb when the unit is in), or text such as 850 g
 * @param enclosure Kind of enclosure, such as tray, lidded box, slipcase or clamshell box
 * @param settings Settings range, stock table, board guide or text such as wall board=3 mm; as many as you like, later over earlier
 * @returns Text
 */
export function boardStock(
  height: any,
  width: any,
  depth: any,
  weight: any,
  enclosure: any,
  settings?: any[][][],
): any {
  return oneValue(
    itemAnswer({ height, width, depth, weight, enclosure }, settings, boardStockAnswer, { starterGuide: true }),
  );
}

/**
 * How far the base springs under the item when the box is lifted lying flat, with the board named.
 * @customfunction BASE.SAG BASE.SAG
 * @param height Height of the item, head to tail: a number in the workbook's unit, or text such as 10 3/8 in; of several in one box 300 | 310
 * @param width Width of the item, spine to fore-edge
 * @param depth Depth (thickness) of the item
 * @param weight Weight of the item in kg (lb when the unit is in), or text such as 850 g
 * @param enclosure Kind of enclosure, such as tray, lidded box, slipcase or clamshell box
 * @param board Name of a stock board, a caliper such as 2 mm, or all
 * @param settings Settings range, stock table or text such as modulus along=2.5; as many as you like, later over earlier
 * @returns Length in the workbook's unit; a table for all
 */
export function sag(
  height: any,
  width: any,
  depth: any,
  weight: any,
  enclosure: any,
  board: any[][],
  settings?: any[][][],
): any[][] {
  return itemAnswer({ height, width, depth, weight, enclosure }, settings, (sized) =>
    sagAnswer(sized, selector(board, "board", "all")),
  );
}

/**
 * Stiffness of your own board: lay a strip over two supports, hang a weight from its middle, read the sag.
 * @customfunction BOARD.MODULUS BOARD.MODULUS
 * @param length Distance between the supports: a number in the workbook's unit, or text with its unit
 * @param width Width of the strip
 * @param caliper Thickness of the strip, as measured
 * @param load Weight hung from the middle in kg (lb when the unit is in), or text such as 200 g
 * @param sag How far the middle goes down when the weight is hung
 * @param settings Settings range or text such as unit=in; as many as you like, later over earlier
 * @returns Modulus in GPa, for the settings modulus along and modulus across
 */
export function boardModulus(length: any, width: any, caliper: any, load: any, sag: any, settings?: any[][][]): any {
  return oneValue(
    measuringAnswer(length, settings, (cell, read) =>
      modulusAnswer(
        {
          length: cell,
          width: plainCell(width),
          caliper: plainCell(caliper),
          load: plainCell(load),
          sag: plainCell(sag),
        },
        read,
      ),
    ),
  );
}

/**
 * Free play that is left over the year, when board and item move with the air and cuts are a little off.
 * @customfunction FIT.RANGE FIT.RANGE
 * @param height Height of the item, head to tail: a number in the workbook's unit, or text such as 10 3/8 in; of several in one box 300 | 310
 * @param width Width of the item, spine to fore-edge
 * @param depth Depth (thickness) of the item
 * @param enclosure Kind of enclosure, such as tray, lidded box, slipcase or clamshell box
 * @param direction height, width, depth or all
 * @param which least, greatest, likely least, likely greatest or all
 * @param settings Settings range, stock table or text such as fit=loose; as many as you like, later over earlier
 * @returns Length in the workbook's unit; below zero the item does not go in
 */
export function fitRange(
  height: any,
  width: any,
  depth: any,
  enclosure: any,
  direction: any[][],
  which: any[][],
  settings?: any[][][],
): any[][] {
  return itemAnswer({ height, width, depth, enclosure }, settings, (sized) =>
    fitRangeAnswer(sized, selector(direction, "direction", "height"), selector(which, "which", "likely least")),
  );
}

/**
 * Mass of the empty enclosure: boards, cards, covering, lining and adhesive. In kg, or lb when the unit is in.
 * @customfunction MASS MASS
 * @param height Height of the item, head to tail: a number in the workbook's unit, or text such as 10 3/8 in; of several in one box 300 | 310
 * @param width Width of the item, spine to fore-edge
 * @param depth Depth (thickness) of the item
 * @param enclosure Kind of enclosure, such as tray, lidded box, slipcase or clamshell box
 * @param settings Settings range, stock table or text such as wall board=3; as many as you like, later over earlier
 * @returns Mass
 */
export function mass(height: any, width: any, depth: any, enclosure: any, settings?: any[][][]): any {
  return oneValue(itemAnswer({ height, width, depth, enclosure }, settings, massAnswer));
}

/**
 * What to watch with this item and enclosure, in one text, gravest first; empty when there is nothing.
 * @customfunction CAUTIONS CAUTIONS
 * @param height Height of the item, head to tail: a number in the workbook's unit, or text such as 10 3/8 in; of several in one box 300 | 310
 * @param width Width of the item, spine to fore-edge
 * @param depth Depth (thickness) of the item
 * @param weight Weight of the item in kg (lb when the unit is in), or text such as 850 g
 * @param enclosure Kind of enclosure, such as tray, lidded box, slipcase or clamshell box
 * @param settings Settings range, stock table or text such as lift limit=15; as many as you like, later over earlier
 * @returns Text
 */
export function cautions(height: any, width: any, depth: any, weight: any, enclosure: any, settings?: any[][][]): any {
  return oneValue(
    itemAnswer({ height, width, depth, weight, enclosure }, settings, (sized) =>
      cautionsAnswer(sized, { hazard: "", heightAsTyped: typedHeight(height) }),
    ),
  );
}
