import { loadExcelRuntime } from "../runtime/excelRuntime";
import type { Argument } from "../runtime/marshal";

/** The built functions inside Microsoft's runtime; one for all tests of a file. */
export const excel = loadExcelRuntime();

/** What the cell shows: a number or text, or the table that spills. An error cell fails the test with its message. */
export async function cell(id: string, ...args: readonly Argument[]): Promise<unknown> {
  const answer = await excel.callCell(id, args);
  if ("error" in answer) throw new Error(`${answer.error} ${answer.message ?? "without a message"}`);
  const table = answer.value as readonly (readonly unknown[])[];
  return table.length === 1 && table[0]?.length === 1 ? table[0][0] : table;
}

/** The error that the cell shows, `#VALUE! depth: got ...`. An answer fails the test. */
export async function refusal(id: string, ...args: readonly Argument[]): Promise<string> {
  const answer = await excel.callCell(id, args);
  if ("error" in answer) return `${answer.error} ${answer.message ?? "without a message"}`;
  throw new Error(`answered ${JSON.stringify(answer.value)}`);
}

/** The item of the worked example of the design: height, width, depth in mm. */
export const ITEM = [300, 210, 40] as const;

/** Every function of one item, with selectors that any tray can answer. */
export const ITEM_FUNCTIONS: readonly (readonly [id: string, ...selectors: readonly string[]])[] = [
  ["INSIDE", "all"],
  ["OUTSIDE", "all"],
  ["BASE.SIZE", "base", "all"],
  ["WALL.LENGTH", "side wall"],
  ["WALL.HEIGHT", "side wall"],
  ["COVER.BLANK", "wall strip", "all"],
  ["PART", "base", "length"],
  ["PARTS"],
  ["BOARD.AREA", "all"],
];
