import type { ValueType } from "./valueType";

/** Numbers that a spreadsheet shows as dates of our time: 2000-01-01 to 2099-12-31. */
const FIRST_SERIAL = 36526;
const LAST_SERIAL = 73050;
/** The serial number of 1970-01-01. */
const UNIX_SERIAL = 25569;
const MS_PER_DAY = 86_400_000;

/** A day as it was typed; a date of a spreadsheet, which arrives as a number, as 2026-05-31. */
export function dayText(cell: unknown): string {
  if (typeof cell !== "number" || !(cell >= FIRST_SERIAL && cell <= LAST_SERIAL)) return String(cell).trim();
  return new Date((Math.floor(cell) - UNIX_SERIAL) * MS_PER_DAY).toISOString().slice(0, 10);
}

export const day: ValueType<string> = {
  choices: [{ is: "measure", what: "a day", examples: ["2026-05-31"] }],
  unit: "",
  read: dayText,
  written: (value) => value,
};
