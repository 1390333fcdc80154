import { baseAnswer, insideAnswer, outsideAnswer, wallAnswer } from "../src/item/answers";
import { itemAnswer, selector } from "./cells";

/**
 * Inside size of the enclosure, board to board, of the tray that holds the item.
 * @customfunction INSIDE INSIDE
 * @param height Height of the item, head to tail: a number in the workbook's unit, or text such as 10 3/8 in; of several in one box 300 | 310
 * @param width Width of the item, spine to fore-edge
 * @param depth Depth (thickness) of the item
 * @param enclosure Kind of enclosure, such as tray, lidded box, slipcase or clamshell box
 * @param direction height, width, depth or all
 * @param settings Settings range, stock table or text such as fit=loose; as many as you like, later over earlier
 * @returns Length in the workbook's unit; three side by side for all
 */
export function inside(
  height: any,
  width: any,
  depth: any,
  enclosure: any,
  direction: any[][],
  settings?: any[][][],
): any[][] {
  return itemAnswer({ height, width, depth, enclosure }, settings, (sized) =>
    insideAnswer(sized, selector(direction, "direction", "all")),
  );
}

/**
 * Outside size of the enclosure, closed and covered: the room it takes on the shelf.
 * @customfunction OUTSIDE OUTSIDE
 * @param height Height of the item, head to tail: a number in the workbook's unit, or text such as 10 3/8 in; of several in one box 300 | 310
 * @param width Width of the item, spine to fore-edge
 * @param depth Depth (thickness) of the item
 * @param enclosure Kind of enclosure, such as tray, lidded box, slipcase or clamshell box
 * @param direction height, width, depth or all
 * @param settings Settings range, stock table or text such as fit=loose; as many as you like, later over earlier
 * @returns Length in the workbook's unit; three side by side for all
 */
export function outside(
  height: any,
  width: any,
  depth: any,
  enclosure: any,
  direction: any[][],
  settings?: any[][][],
): any[][] {
  return itemAnswer({ height, width, depth, enclosure }, settings, (sized) =>
    outsideAnswer(sized, selector(direction, "direction", "all")),
  );
}

/**
 * Height and width of a base board.
 * @customfunction BASE.SIZE BASE.SIZE
 * @param height Height of the item, head to tail: a number in the workbook's unit, or text such as 10 3/8 in; of several in one box 300 | 310
 * @param width Width of the item, spine to fore-edge
 * @param depth Depth (thickness) of the item
 * @param enclosure Kind of enclosure, such as tray, lidded box, slipcase or clamshell box
 * @param base Name of the base: base, lid base, small base and so on, or all
 * @param direction height, width or all
 * @param settings Settings range, stock table or text such as fit=loose; as many as you like, later over earlier
 * @returns Length in the workbook's unit
 */
export function baseSize(
  height: any,
  width: any,
  depth: any,
  enclosure: any,
  base: any[][],
  direction: any[][],
  settings?: any[][][],
): any[][] {
  return itemAnswer({ height, width, depth, enclosure }, settings, (sized) =>
    baseAnswer(sized, selector(base, "base", "base"), selector(direction, "direction", "all")),
  );
}

/**
 * Length of a wall, along its run.
 * @customfunction WALL.LENGTH WALL.LENGTH
 * @param height Height of the item, head to tail: a number in the workbook's unit, or text such as 10 3/8 in; of several in one box 300 | 310
 * @param width Width of the item, spine to fore-edge
 * @param depth Depth (thickness) of the item
 * @param enclosure Kind of enclosure, such as tray, lidded box, slipcase or clamshell box
 * @param wall Name of the wall: side, head, lid side, fore-edge, back and so on, or all
 * @param settings Settings range, stock table or text such as fit=loose; as many as you like, later over earlier
 * @returns Length in the workbook's unit
 */
export function wallLength(
  height: any,
  width: any,
  depth: any,
  enclosure: any,
  wall: any[][],
  settings?: any[][][],
): any[][] {
  return itemAnswer({ height, width, depth, enclosure }, settings, (sized) =>
    wallAnswer(sized, selector(wall, "wall", "side wall"), "length"),
  );
}

/**
 * Height to which a wall is cut.
 * @customfunction WALL.HEIGHT WALL.HEIGHT
 * @param height Height of the item, head to tail: a number in the workbook's unit, or text such as 10 3/8 in; of several in one box 300 | 310
 * @param width Width of the item, spine to fore-edge
 * @param depth Depth (thickness) of the item
 * @param enclosure Kind of enclosure, such as tray, lidded box, slipcase or clamshell box
 * @param wall Name of the wall: side, head, lid side, fore-edge, back and so on, or all
 * @param settings Settings range, stock table or text such as fit=loose; as many as you like, later over earlier
 * @returns Length in the workbook's unit
 */
export function wallHeight(
  height: any,
  width: any,
  depth: any,
  enclosure: any,
  wall: any[][],
  settings?: any[][][],
): any[][] {
  return itemAnswer({ height, width, depth, enclosure }, settings, (sized) =>
    wallAnswer(sized, selector(wall, "wall", "side wall"), "height"),
  );
}
