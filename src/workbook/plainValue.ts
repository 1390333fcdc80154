import { damaged } from "./damaged";
import { unescapeText } from "./escape";
import { isTrue } from "./openWorkbook";
import { dateValue, DAYS_1904, type SheetValue } from "./sheetValue";

/** What a value is read with. */
interface ValueContext {
  readonly texts: readonly string[];
  readonly date1904: boolean;
  readonly at: () => string;
}

/**
 * The value of a cell as the file writes it, by its type.
 *
 * @throws InputError when it points to a shared text that is not there
 */
export function plainValue(
  raw: string,
  type: string,
  isDate: boolean,
  { texts, date1904, at }: ValueContext,
): SheetValue {
  switch (type) {
    case "s": {
      const text = texts[Number(raw)];
      if (text === undefined) throw damaged(`cell ${at()}, which points to a text that is not there`);
      return text === "" ? null : text;
    }
    case "str":
    case "inlineStr":
      return raw === "" ? null : unescapeText(raw);
    case "b":
      return isTrue(raw.trim());
    case "e":
      return { error: raw.trim() };
    case "d":
      return isoDate(raw.trim(), date1904);
    default: {
      if (raw.trim() === "") return null;
      const number = Number(raw);
      if (Number.isNaN(number)) return unescapeText(raw);
      return isDate ? dateValue(number, date1904) : number;
    }
  }
}

/** A cell that holds its date as text: rare, written by Strict files. */
function isoDate(raw: string, date1904: boolean): SheetValue {
  const time = Date.parse(/T/.test(raw) ? `${raw.replace(/Z$/, "")}Z` : raw);
  if (Number.isNaN(time)) return raw;
  return {
    date: raw.replace(/T00:00:00(\.0+)?Z?$/, ""),
    serial: time / DAY_MILLISECONDS + UNIX_EPOCH - (date1904 ? DAYS_1904 : 0),
  };
}

const DAY_MILLISECONDS = 86_400_000;

const UNIX_EPOCH = 25_569;
