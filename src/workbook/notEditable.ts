import { InputError } from "../measure/errors";

/** A workbook that is read and never changed: signed, Strict, or protected. Its figures can be written elsewhere. */
export class NotEditable extends InputError {}

/** A protected sheet that would change. */
export function protectedSheet(sheet: string): NotEditable {
  return new NotEditable(
    `sheet "${sheet}"`,
    "a protected sheet",
    "is kept as it is",
    "unprotect it in Excel (Review), or copy it into a new workbook",
  );
}
