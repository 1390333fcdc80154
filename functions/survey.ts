/** The code of the functions of a whole survey is loaded at the first call: the functions of one row never load it. */
const tables = () => import(/* webpackChunkName: "survey" */ "./surveyTables");

/** While a formula is typed Excel shows what a part of it gives: a plan would hold up the typing. */
function isPreview(invocation: CustomFunctions.Invocation | undefined): boolean {
  return String(invocation?.isInValuePreview) === "true";
}

const PREVIEW = [["press Enter to calculate"]];

/**
 * A whole survey in one formula: a row of figures beside each row of the survey, under their names.
 * @customfunction SURVEY SURVEY
 * @param items The survey with its heading row, such as Survey[[#Headers],[#Data]] or A3:H212
 * @param columns A range with a figure in each cell, such as outside height or side wall length; or default
 * @param settings Settings range, stock table or text such as fit=loose; as many as you like, later over earlier
 * @returns Table with headings, a row for each row of the survey
 */
export async function survey(items: any[][], columns: any[][], settings?: any[][][]): Promise<any[][]> {
  return (await tables()).surveyCells("survey", items, settings, columns);
}

/**
 * The cut list of a whole survey: every part of every item, a row each, with the item's identifier.
 * @customfunction CUTLIST CUTLIST
 * @param items The survey with its heading row, such as Survey[[#Headers],[#Data]] or A3:H212
 * @param settings Settings range, stock table or text such as fit=loose; as many as you like, later over earlier
 * @returns Table with headings
 */
export async function cutlist(items: any[][], settings?: any[][][]): Promise<any[][]> {
  return (await tables()).surveyCells("cutlist", items, settings);
}

/**
 * Stock sheets to buy for a whole survey: of one stock its number (of a roll its metres), or a table of all.
 * @customfunction SHEETS SHEETS
 * @param items The survey with its heading row, such as Survey[[#Headers],[#Data]] or A3:H212
 * @param board Name of one stock, or all
 * @param settings Settings range, stock table or text such as edge trim=5; as many as you like, later over earlier
 * @returns Number, or table with headings: to buy, least possible, yield
 */
export async function sheets(
  items: any[][],
  board: any[][],
  settings?: any[][][],
  invocation?: CustomFunctions.Invocation,
): Promise<any[][]> {
  return isPreview(invocation) ? PREVIEW : (await tables()).surveyCells("sheets", items, settings, board);
}

/**
 * Where every piece lies on its sheet: stock, sheet, item, part, x, y, length along and width across the sheet's grain.
 * @customfunction LAYOUT LAYOUT
 * @param items The survey with its heading row, such as Survey[[#Headers],[#Data]] or A3:H212
 * @param board Name of one stock, or all
 * @param settings Settings range, stock table or text such as edge trim=5; as many as you like, later over earlier
 * @returns Table with headings
 */
export async function layout(
  items: any[][],
  board: any[][],
  settings?: any[][][],
  invocation?: CustomFunctions.Invocation,
): Promise<any[][]> {
  return isPreview(invocation) ? PREVIEW : (await tables()).surveyCells("layout", items, settings, board);
}

/**
 * Materials budget of a whole survey: area, sheets or metres, least possible, yield, price, cost, contingency, total.
 * @customfunction ESTIMATE ESTIMATE
 * @param items The survey with its heading row, such as Survey[[#Headers],[#Data]] or A3:H212
 * @param settings Settings range, stock table or text such as contingency=15; as many as you like, later over earlier
 * @returns Table with headings, and below it the rows, pieces and prices that are left out
 */
export async function estimate(
  items: any[][],
  settings?: any[][][],
  invocation?: CustomFunctions.Invocation,
): Promise<any[][]> {
  return isPreview(invocation) ? PREVIEW : (await tables()).surveyCells("estimate", items, settings);
}

/**
 * Room in the store, now and when boxed: metres (feet) of shelf for what stands, area for what lies, by shelf and height.
 * @customfunction SHELF SHELF
 * @param items The survey with its heading row, such as Survey[[#Headers],[#Data]] or A3:H212
 * @param settings Settings range, stock table or text such as shelf height=330; as many as you like, later over earlier
 * @returns Table with headings, then what is too tall for every shelf and rows that cannot be sized
 */
export async function shelf(items: any[][], settings?: any[][][]): Promise<any[][]> {
  return (await tables()).surveyCells("shelf", items, settings);
}

/**
 * Standard inside sizes for a whole survey: the sizes that take least board, how many of each, and what is proved.
 * @customfunction SIZES SIZES
 * @param items The survey with its heading row, such as Survey[[#Headers],[#Data]] or A3:H212
 * @param count How many sizes at most
 * @param settings Settings range, stock table or text such as slack=20; as many as you like, later over earlier
 * @returns Table with headings: a row a size, then what is made to measure and the totals
 */
export async function sizes(
  items: any[][],
  count: any[][],
  settings?: any[][][],
  invocation?: CustomFunctions.Invocation,
): Promise<any[][]> {
  return isPreview(invocation) ? PREVIEW : (await tables()).surveyCells("sizes", items, settings, count);
}

/**
 * The standard size that an item goes into, by name.
 * @customfunction SIZE SIZE
 * @param height Height of the item, head to tail: a number in the workbook's unit, or text such as 10 3/8 in; of several in one box 300 | 310
 * @param width Width of the item, spine to fore-edge
 * @param depth Depth (thickness) of the item
 * @param enclosure Kind of enclosure, such as tray, lidded box, slipcase or clamshell box
 * @param sizes Table with the headings size, enclosure, height, width and depth, such as the answer of SIZES
 * @param settings Settings range, stock table or text such as slack=20; as many as you like, later over earlier
 * @returns Name of the size, or made to measure
 */
export async function size(
  height: any,
  width: any,
  depth: any,
  enclosure: any,
  sizes: any[][],
  settings?: any[][][],
): Promise<any> {
  return (await tables()).sizeCell({ height, width, depth, enclosure }, sizes, settings);
}
