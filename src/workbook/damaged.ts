import { InputError } from "../measure/errors";

/** The workbook file cannot be used as it is: one wording for every reason. */
export function damaged(got: string, cure = "open it in Excel or LibreOffice and save it again as .xlsx"): InputError {
  return new InputError("workbook", got, "accepts a whole, undamaged .xlsx or .xlsm", cure);
}
