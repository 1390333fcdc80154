import { kindNames, kindsTable } from "../src/item/kindsAnswer";
import { chosen } from "../src/item/answers";
import { GUIDE_CELLS } from "../src/settings/starterGuide";
import { STARTER_STOCK, stockCells } from "../src/settings/starterStock";
import { settingsTable } from "../src/settings/settingsTable";
import { plainAnswer, selector } from "./cells";

/**
 * Every setting: the value in force, where it came from, its default, unit, meaning and standing.
 * @customfunction SETTINGS SETTINGS
 * @param settings Settings range, stock table or text such as fit=loose; as many as you like, later over earlier
 * @returns Table with headings
 */
export function settings(settings?: any[][][]): any[][] {
  return plainAnswer(settings, settingsTable);
}

/**
 * A starter stock table to copy and edit: names, sheet sizes and prices are invented.
 * @customfunction STOCK STOCK
 * @returns Table with headings
 */
export function stock(): any[][] {
  return plainAnswer(undefined, () => stockCells(STARTER_STOCK));
}

/**
 * A starter board guide to copy and edit: the first row that covers an item names its board. No published table exists.
 * @customfunction BOARD.GUIDE BOARD.GUIDE
 * @returns Table with headings
 */
export function boardGuide(): any[][] {
  return plainAnswer(undefined, () => GUIDE_CELLS);
}

/**
 * The kinds of enclosure: their names for a drop-down list, or all that is known of them.
 * @customfunction KINDS KINDS
 * @param column names for one column of names, or all for trays, parts and constructions too
 * @returns Column of names, or table with headings
 */
export function kinds(column: any[][]): any[][] {
  return plainAnswer(undefined, () => {
    const words = ["names", "all"] as const;
    const wanted = chosen(selector(column, "column", "names"), "column", words, words);
    return wanted === "names" ? kindNames() : kindsTable();
  });
}
