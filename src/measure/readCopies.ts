import { isBlank } from "./blank";
import { InputError, shown } from "./errors";

const MOST_COPIES = 10_000;

/** How many there are of a row: a whole number, a blank or 0 is one. What cannot be read is handed back as its error. */
export function readCopies(cell: unknown): number | InputError {
  if (isBlank(cell)) return 1;
  const value = typeof cell === "string" ? Number(cell) : cell;
  if (typeof value === "number" && Number.isInteger(value) && value > 0 && value <= MOST_COPIES) return value;
  return new InputError("quantity", shown(cell), "give a whole number of 1 or more, or leave it blank for 1");
}
