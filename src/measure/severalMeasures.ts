import { InputError } from "./errors";
import { readCopies } from "./readCopies";

/** One of several measures in a text. */
export interface CountedMeasure {
  readonly text: string;
  /** How many items have it. */
  readonly copies: number;
}

const BAR = "|";
const TIMES = "*";

/**
 * The measures of several items in one text, in their order: `300 | 310 * 2 | 290`, or the same with a bar after each.
 *
 * @returns undefined for what has no bar: the measure of one item
 * @throws InputError where copies are no whole number; a blank or 0 is one
 */
export function severalMeasures(cell: unknown): readonly CountedMeasure[] | undefined {
  if (!isSeveral(cell)) return undefined;
  const texts = cell.split(BAR);
  return (texts.at(-1)!.trim() === "" ? texts.slice(0, -1) : texts).map((each) => {
    const [text = "", copies = ""] = each.split(TIMES);
    // Of a blank cell that is joined to its copies some spreadsheets make a 0.
    const read = readCopies(copies.trim() === "0" ? "" : copies.trim());
    if (read instanceof InputError) throw read;
    return { text: text.trim(), copies: read };
  });
}

/** Whether a cell has measures of several items. */
export function isSeveral(cell: unknown): cell is string {
  return typeof cell === "string" && cell.includes(BAR);
}
