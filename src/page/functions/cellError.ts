import { errorTexts } from "../../workbook/errorText";

/** An error that a cell function throws or puts into a cell, as Excel's runtime knows it. */
export class CellError extends Error {
  constructor(
    /** `#VALUE!`, `#N/A` */
    readonly code: string,
    message = "",
  ) {
    super(message);
  }
}

/** The names of errors in Excel's runtime for custom functions. */
export const ERROR_CODES = {
  invalidValue: "#VALUE!",
  notAvailable: "#N/A",
  divisionByZero: "#DIV/0!",
  invalidNumber: "#NUM!",
  nullReference: "#NULL!",
  invalidName: "#NAME?",
  invalidReference: "#REF!",
} as const;

/** Whether a text is what a cell in error shows. */
export const isErrorText = errorTexts("#SPILL!", "#CALC!", "#CYCLE!", "#ERROR!", "#CONNECT!");
