import { MATERIALS, PERMANENCES } from "../settings/stock";
import type { StockField } from "../settings/stockFields";

interface Meaning {
  readonly meaning: string;
  /** Words to choose from, and what an empty cell says where that is a choice too. */
  readonly choices?: { readonly words: readonly string[]; readonly blank?: string };
}

const YES_NO = { words: ["yes", "no"], blank: "not known" } as const;

/** What each column of the stock table says of a stock, in the order of the form. */
export const STOCK_MEANINGS: Readonly<Record<StockField, Meaning>> = {
  stock: { meaning: "its name, as settings and plans use it; one name may have several sheet sizes, a row each" },
  material: { meaning: "what it is used for", choices: { words: MATERIALS } },
  caliper: {
    meaning: "thickness, such as 2, 2 mm or 80 pt; a board that is thicker than you think makes a box too small",
  },
  "sheet length": { meaning: "of a sheet, along the grain; leave it empty for a roll" },
  "sheet width": { meaning: "of a sheet, across the grain; of a roll, its width" },
  grain: {
    meaning: "fixed: every piece keeps its grain; free: pieces of this stock may lie either way",
    choices: { words: ["fixed", "free"], blank: "fixed" },
  },
  price: { meaning: "of one sheet, or of one metre of a roll" },
  pack: { meaning: "sheets or metres that are sold together" },
  mass: { meaning: "grams a square metre; without it a box's own mass is not known" },
  "modulus along": { meaning: "stiffness along the grain, GPa, where you have measured it" },
  "modulus across": { meaning: "stiffness across the grain, GPa, where you have measured it" },
  "size limit": { meaning: "the longest side of an item that you make from this board" },
  "on hand": {
    meaning: "sheets in the shop: they are used first; a row without a price is an off-cut, so many and no more",
  },
  pat: { meaning: "it passes the photographic activity test, ISO 18916", choices: YES_NO },
  buffered: { meaning: "it holds an alkaline reserve", choices: YES_NO },
  permanence: {
    meaning: "class after ISO 16245; none for a board that is not permanent",
    choices: { words: PERMANENCES.map((each) => (each === "none" ? each : each.toUpperCase())), blank: "not known" },
  },
  supplier: { meaning: "where it is bought" },
  "item number": { meaning: "by which number" },
  "quote date": { meaning: "the day of the price, such as 2026-05-31" },
  "example price": {
    meaning: "yes while the price is an example: a budget that uses it says so",
    choices: { words: ["yes"], blank: "no" },
  },
};

/** What few shops fill in, folded away in the form. */
export const FURTHER: ReadonlySet<StockField> = new Set<StockField>([
  ...(["mass", "modulus along", "modulus across", "size limit", "pat", "buffered", "permanence"] as const),
  ...(["supplier", "item number", "quote date", "example price"] as const),
]);
