import Papa from "papaparse";
import { InputError } from "../measure/errors";
import { MOST_CELLS, MOST_COLUMNS, MOST_POSITIONS } from "./cellRef";
import { decodeText, type CsvEncoding } from "./csvEncoding";

/** A text table, with all that is needed to write its untouched cells back as they were. */
export interface Csv {
  readonly rows: readonly (readonly string[])[];
  /** Each cell as the file writes it, quotes and all. */
  readonly raw: readonly (readonly string[])[];
  readonly delimiter: string;
  readonly newline: "\n" | "\r\n" | "\r";
  /** The file ends with a line break. */
  readonly lastNewline: boolean;
  readonly encoding: CsvEncoding;
  readonly bom: boolean;
  /** The first line `sep=;`, with its line break, which Excel reads as a notice and not as a row; else empty. */
  readonly notice: string;
  /** Numbers are written `12,5`. */
  readonly decimalComma: boolean;
}

/**
 * Reads a table of text: delimiter comma, semicolon, tab or bar; quotes, line breaks inside quotes; any usual encoding.
 *
 * @throws InputError when the bytes are no text, or a quote is never closed
 */
export function readCsv(bytes: Uint8Array): Csv {
  const { text: whole, encoding, bom } = decodeText(bytes);
  const notice = /^sep=(.)(\r\n|\n|\r)/i.exec(whole);
  const text = notice ? whole.slice(notice[0].length) : whole;
  const newline = newlineOf(text);
  const delimiter = notice?.[1] ?? delimiterOf(text, newline);
  const rows: string[][] = [];
  const raw: string[][] = [];
  let from = 0;
  let cells = 0;
  let widest = 0;
  Papa.parse<string[]>(text, {
    delimiter,
    newline,
    step: ({ data, errors, meta }) => {
      if (errors.some((error) => error.type === "Quotes")) throw brokenQuote(rows.length + 1 + (notice ? 1 : 0));
      const line = withoutEnd(text.slice(from, meta.cursor), newline);
      from = meta.cursor;
      cells += data.length;
      widest = Math.max(widest, data.length);
      refuseTooMuch(rows.length + 1, data.length, cells, widest);
      rows.push(data);
      raw.push(rawCells(line, data, delimiter));
    },
  });
  const lastNewline = text.endsWith(newline);
  // Papa Parse gives the nothing after the last line break as a row of one empty cell.
  if (lastNewline && rows.at(-1)?.length === 1 && rows.at(-1)![0] === "") {
    rows.pop();
    raw.pop();
  }
  return {
    rows,
    raw,
    delimiter,
    newline,
    lastNewline,
    encoding,
    bom,
    notice: notice?.[0] ?? "",
    decimalComma: delimiter !== "," && usesDecimalComma(rows),
  };
}

/** Tabs, semicolons and bars are rare in texts, commas are not: with equal counts the comma loses. */
const DELIMITERS = ["\t", ";", "|", ","] as const;
const PREVIEW_ROWS = 60;
const LINE_BREAK = /\r\n|\n|\r/;

function newlineOf(text: string): Csv["newline"] {
  const outside = text.replace(/"[^"]*"/g, "");
  return (LINE_BREAK.exec(outside)?.[0] ?? LINE_BREAK.exec(text)?.[0] ?? "\n") as Csv["newline"];
}

/** The delimiter by which the most of the first rows have the same number of cells, more than one. */
function delimiterOf(text: string, newline: Csv["newline"]): string {
  let best = { delimiter: ",", share: 0 };
  for (const delimiter of DELIMITERS) {
    const { data } = Papa.parse<string[]>(text, { delimiter, newline, preview: PREVIEW_ROWS });
    const filled = data.filter((row) => row.some((cell) => cell !== ""));
    const counts = new Map<number, number>();
    for (const row of filled) if (row.length > 1) counts.set(row.length, (counts.get(row.length) ?? 0) + 1);
    const share = Math.max(0, ...counts.values()) / Math.max(1, filled.length);
    if (share > best.share) best = { delimiter, share };
  }
  return best.delimiter;
}

function withoutEnd(line: string, newline: string): string {
  return line.endsWith(newline) ? line.slice(0, -newline.length) : line;
}

/** The cells of a line with their quotes; where they do not read back as the parser read them, the parser is right and quotes are written again. */
function rawCells(line: string, cells: readonly string[], delimiter: string): string[] {
  if (!line.includes('"')) return [...cells];
  const raw: string[] = [];
  let start = 0;
  let quoted = false;
  for (let i = 0; i < line.length; i++) {
    if (line[i] === '"') quoted = quoted ? false : i === start || line[i - 1] === '"';
    else if (line[i] === delimiter && !quoted) {
      raw.push(line.slice(start, i));
      start = i + 1;
    }
  }
  raw.push(line.slice(start));
  const faithful = raw.length === cells.length && raw.every((cell, i) => unquoted(cell) === cells[i]);
  return faithful ? raw : cells.map((cell) => quotedIfNeeded(cell, delimiter));
}

/** A text in quotes when it has a delimiter, a quote, a line break, or a space at an end. */
export function quotedIfNeeded(text: string, delimiter: string): string {
  return text.includes(delimiter) || /["\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

function unquoted(raw: string): string {
  return /^".*"$/s.test(raw) ? raw.slice(1, -1).replaceAll('""', '"') : raw;
}

function usesDecimalComma(rows: readonly (readonly string[])[]): boolean {
  let commas = 0;
  let points = 0;
  for (const row of rows) {
    for (const cell of row) {
      if (/^\s*-?\d+,\d+\s*$/.test(cell)) commas++;
      else if (/^\s*-?\d+\.\d+\s*$/.test(cell)) points++;
    }
  }
  return commas > 0 && points === 0;
}

function refuseTooMuch(row: number, width: number, cells: number, widest: number): void {
  if (width > MOST_COLUMNS)
    throw new InputError(
      "csv",
      `a row ${row} of ${width} cells`,
      `a row has up to ${MOST_COLUMNS}`,
      "check the delimiter and the quotes of that row",
    );
  if (cells > MOST_CELLS || row * widest > MOST_POSITIONS)
    throw new InputError(
      "csv",
      `more than ${(cells > MOST_CELLS ? MOST_CELLS : MOST_POSITIONS) / 1_000_000} million cells`,
      "accepts a survey",
      "divide it, or leave out columns that are not needed",
    );
}

function brokenQuote(row: number): InputError {
  return new InputError(
    "csv",
    `a quote in row ${row} that never closes, or closes before the end of its cell`,
    'needs every " closed, and a " inside a quoted text doubled',
    "open the file in a text editor at that row",
  );
}
