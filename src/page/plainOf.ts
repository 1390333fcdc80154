import type { ICellData, Nullable } from "@univerjs/core";
import type { PlainContent } from "../workbook/edits";
import { STORED_ERRORS } from "../workbook/errorText";
import { isErrorText } from "./functions/cellError";

/** The number or text that a cell shows; null for a blank. */
export function plainOf(cell: Nullable<ICellData>): PlainContent {
  const value = cell?.v ?? textOfDocument(cell);
  const type: Nullable<number> = cell?.t;
  if (value === null || value === undefined || value === "") return null;
  if (type === BOOLEAN || typeof value === "boolean") return Number(value) === 1;
  if (isErrorText(value)) return { error: STORABLE.has(value) ? value : "#VALUE!" };
  if (type === TEXT || type === SURE_TEXT) return String(value);
  return value;
}

const TEXT = 1;

const BOOLEAN = 3;

const SURE_TEXT = 4;

/** What a file can hold of the errors that the page shows. */
const STORABLE: ReadonlySet<string> = new Set(STORED_ERRORS);

/** The text of a cell that has several lines or parts with different looks. */
function textOfDocument(cell: Nullable<ICellData>): string | undefined {
  const text = cell?.p?.body?.dataStream;
  return text?.replace(/\r\n$/, "").replaceAll("\r", "\n");
}
