import { format } from "numfmt";
import { unitWord } from "../headings/lexicon";
import type { SheetGrid } from "../workbook/readSheet";
import { isDateFormat, isTimeFormat } from "../workbook/sheetValue";

/** What a cell shows; undefined where that is its value. */
type Displayed = (row: number, column: number) => string | undefined;

/** What a cell shows where its number format makes something else of its value: `000042`, or a date. */
export function displayedCells({ rows, formats = [], shown = [], calendarShift = 0 }: SheetGrid): Displayed {
  const dated = (code: string, serial: number) =>
    shownAs(code, isDateFormat(code) && !isTimeFormat(code) ? serial + calendarShift : serial);
  return (row, column) => {
    const said = shown[row - 1]?.[column - 1];
    if (said !== undefined) return said;
    const value = rows[row - 1]?.[column - 1];
    const code = formats[row - 1]?.[column - 1];
    if (typeof value === "object" && value !== null)
      return "serial" in value ? dated(code ?? "yyyy-mm-dd", value.serial) : undefined;
    return typeof value === "number" && code !== undefined ? dated(code, value) : undefined;
  };
}

/** Units that the number formats of columns show: `0.0 "cm"`. */
export function unitsOfFormats({ formats = [] }: SheetGrid): ReadonlyMap<number, string> {
  const units = new Map<number, string>();
  const seen = new Map<string, string | undefined>();
  for (const row of formats.slice(0, LOOKED_AT))
    row.forEach((code, i) => {
      if (code === undefined || units.has(i + 1)) return;
      if (!seen.has(code)) seen.set(code, unitIn(code));
      const unit = seen.get(code);
      if (unit !== undefined) units.set(i + 1, unit);
    });
  return units;
}

/** Rows whose formats are looked at. */
const LOOKED_AT = 300;

function unitIn(code: string): string | undefined {
  const texts = [...code.matchAll(/"([^"]*)"/g)].map(([, text]) => text!);
  const escaped = [...code.matchAll(/\\(.)/g)].map(([, letter]) => letter!).join("");
  return [...texts, escaped].map((text) => unitWord(text.trim())).find((unit) => unit !== undefined);
}

function shownAs(code: string, value: number): string {
  return format(code, value, { throws: false, locale: "en" });
}
