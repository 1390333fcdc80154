/** A date cell: the ISO date (with a time when it has one) and the number that Excel keeps. */
export interface DateValue {
  readonly date: string;
  readonly serial: number;
}

/** An error cell: `#N/A`, `#VALUE!`. */
export interface ErrorValue {
  readonly error: string;
}

/** What a cell holds; blank is null. */
export type SheetValue = string | number | boolean | null | DateValue | ErrorValue;

/** The date that a serial number means. Serial 60 of the 1900 system is the 29 February that never was, kept as Excel shows it. */
export function dateValue(serial: number, date1904: boolean): DateValue {
  const days = date1904 ? serial + DAYS_1904 : serial;
  if (!date1904 && Math.floor(serial) === LEAP_BUG) return { date: "1900-02-29", serial };
  const shifted = !date1904 && serial < LEAP_BUG ? days + 1 : days;
  const milliseconds = Math.round((shifted - UNIX_EPOCH) * DAY_SECONDS) * 1000;
  const time = new Date(milliseconds);
  if (Number.isNaN(time.getTime())) return { date: "", serial };
  const iso = time.toISOString().slice(0, 19);
  return { date: iso.endsWith("T00:00:00") ? iso.slice(0, 10) : iso, serial };
}

/** Whether a number format shows a date or a time. */
export function isDateFormat(code: string): boolean {
  if (code.length > LONGEST_FORMAT) return false;
  const bare = code
    .replace(/"[^"]*"|\\.|_.|\*./g, "")
    .replace(/\[(?!h+\]|m+\]|s+\])[^\]]{0,255}\]/gi, "")
    .replace(/general/gi, "");
  return /[dmyhs]/i.test(bare);
}

/** Whether a format of dates shows hours, minutes or seconds and nothing of a day: such a number has no calendar. */
export function isTimeFormat(format: string): boolean {
  const bare = format.replace(/"[^"]*"|\\.|_.|\*.|\[(?!h+\]|m+\]|s+\])[^\]]{0,255}\]/gi, "");
  return /[hs]|\[m+\]/i.test(bare) && !/[dy]/i.test(bare);
}

/** Limit of Excel, letters. */
const LONGEST_FORMAT = 255;

/** The built-in number formats that show a date or a time (ECMA-376 part 1, 18.8.30; 27 to 36 and 50 to 58 are East Asian). */
export function isDateFormatId(id: number): boolean {
  return (id >= 14 && id <= 22) || (id >= 27 && id <= 36) || (id >= 45 && id <= 47) || (id >= 50 && id <= 58);
}

/** Days from the 1900 epoch to the 1904 epoch. */
export const DAYS_1904 = 1462;
const LEAP_BUG = 60;
/** 1 January 1970 in the 1900 system. */
const UNIX_EPOCH = 25_569;
const DAY_SECONDS = 86_400;
