import { InputError } from "../measure/errors";

/** A workbook that is read and never changed: signed, Strict, or protected. Its figures can be written elsewhere. */
export class NotEditable extends InputError {}
