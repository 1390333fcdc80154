import { InputError } from "../measure/errors";

/** The workbook file cannot be used as it is: one wording for every reason. */
export function damaged(got: string, cure = "open it in Excel or LibreOffice and save it again as .xlsx"): InputError {
  return new InputError("workbook", got, "accepts a whole, undamaged .xlsx or .xlsm", cure);
}

/** The workbook asks for more work than any survey does: it is not read to its end. */
export function tooMuch(got: string): InputError {
  return new InputError(
    "workbook",
    got,
    "accepts a workbook as spreadsheets write it",
    "check where the file came from, or copy the survey into a new workbook",
  );
}
