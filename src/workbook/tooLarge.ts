import { InputError } from "../measure/errors";
import { MOST_CELLS, MOST_POSITIONS } from "./cellRef";

/** More cells than any survey has. */
export function tooFull(sheet: string): InputError {
  return new InputError(
    "sheet",
    `"${sheet}", which has more than ${MOST_CELLS / 1_000_000} million cells`,
    "accepts a survey",
    "copy the survey alone into a new workbook",
  );
}

/** Cells so far apart that the sheet as a table would not fit in memory. */
export function tooWide(sheet: string): InputError {
  return new InputError(
    "sheet",
    `"${sheet}", whose used rectangle has more than ${MOST_POSITIONS / 1_000_000} million cells`,
    "accepts a survey",
    "delete the stray cells far right, or copy the survey into a new workbook",
  );
}
