import { listed, plainName } from "./names";
import type { Material, StockRow } from "./stock";

/** One thing that a setting takes. The words of help and messages are made from it, and so are suggestions. */
export type Choice =
  | { readonly is: "word"; readonly word: string }
  /** `none`, of which nothing is a slip. */
  | { readonly is: "none" }
  /** A name of the stock table: of these materials, or of any. */
  | { readonly is: "stock"; readonly materials: readonly Material[] | undefined }
  | Measure;

/** A length, a number or another value that is written out. */
export interface Measure {
  readonly is: "measure";
  /** Such as `a length`. */
  readonly what: string;
  readonly aboveZero?: boolean;
  /** The bounds that a message names, in `unit`. */
  readonly from?: number;
  readonly to?: number;
  readonly unit?: string;
  /** As a person types them. */
  readonly examples?: readonly string[];
  /** A comma stands before `such as`. */
  readonly apart?: boolean;
}

export const NONE: Choice = { is: "none" };

export function words(all: readonly string[]): readonly Choice[] {
  return all.map((word) => ({ is: "word", word }));
}

/** What ends the sentence "give ...": `snug, standard, loose, a length such as 2 or 1/16 in, or none`. */
export function choicesText(choices: readonly Choice[]): string {
  return choices.map((choice, index) => phrase(choice) + joinAfter(choices, index)).join("");
}

export function takesNone(choices: readonly Choice[]): boolean {
  return choices.some(({ is }) => is === "none");
}

/** The names that a value may be a slip of: words, and the stock that the setting can use. */
export function namesIn(choices: readonly Choice[], stock: readonly StockRow[]): readonly string[] {
  return choices.flatMap((choice) => {
    if (choice.is === "word") return [choice.word];
    return choice.is === "stock" ? stock.filter((row) => isOf(row, choice)).map((row) => row.stock) : [];
  });
}

/** The row of the stock table that a value names, of whatever material. */
export function stockNamed(value: unknown, stock: readonly StockRow[]): StockRow | undefined {
  if (typeof value !== "string") return undefined;
  const wanted = plainName(value);
  return stock.find((row) => plainName(row.stock) === wanted);
}

function isOf({ material }: StockRow, { materials }: Choice & { readonly is: "stock" }): boolean {
  return materials === undefined || materials.includes(material);
}

function phrase(choice: Choice): string {
  if (choice.is === "word") return choice.word;
  if (choice.is === "none") return "none";
  if (choice.is === "stock")
    return `a ${choice.materials === undefined ? "name" : listed(choice.materials, "or")} of the stock table`;
  const { what, aboveZero = false, from, to, unit, examples = [], apart = to !== undefined } = choice;
  const bounds = [from === undefined ? "" : ` from ${from}`, to === undefined ? "" : ` to ${to}`].join("");
  const range = `${aboveZero ? " above zero" : ""}${bounds}${unit === undefined ? "" : ` ${unit}`}`;
  return `${what}${range}${examples.length === 0 ? "" : `${apart ? "," : ""} such as ${listed(examples, "or")}`}`;
}

/** A phrase may hold an `or` of its own, so that a comma stands before the next. */
function joinAfter(choices: readonly Choice[], index: number): string {
  const last = choices.length - 1;
  if (index === last) return "";
  if (!isWord(choices[index]!)) return ", or ";
  if (index + 1 < last) return ", ";
  return last === 1 || isWord(choices[last]!) ? " or " : ", or ";
}

function isWord({ is }: Choice): boolean {
  return is === "word" || is === "none";
}
