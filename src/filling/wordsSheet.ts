import { isEmpty } from "../measure/blank";
import type { Book } from "../workbook/book";
import type { CellEdit, NewSheet } from "../workbook/edits";
import { plainName } from "../settings/names";
import type { Word } from "../headings/questions";

/** The sheet on which a workbook remembers what its headings and values mean. No range of a formula holds it. */
export const WORDS_SHEET = "words";

const HEADINGS = ["heading or value", "meaning", "unit", "sheet"] as const;

/** A row of the sheet: for one sheet of the workbook, or for all where `sheet` is empty. */
interface RememberedWord extends Word {
  readonly sheet: string;
}

/** What the workbook remembers for a sheet. */
export function rememberedWords(book: Book, sheet: string): readonly Word[] {
  return wordsOn(book)?.rows.filter((row) => row.sheet === "" || plainName(row.sheet) === plainName(sheet)) ?? [];
}

/** What writes new answers down: rows below those that are there, or the sheet. */
export function rememberWords(
  book: Book,
  words: readonly Word[],
  sheet: string,
): { readonly sheets: readonly NewSheet[]; readonly cells: readonly CellEdit[]; readonly said: readonly string[] } {
  const found = wordsOn(book);
  const fresh = words.filter(
    ({ word, meaning = "", unit = "" }) =>
      !found?.rows.some(
        (row) =>
          plainName(row.word) === plainName(word) &&
          (row.sheet === "" || plainName(row.sheet) === plainName(sheet)) &&
          (row.meaning ?? "") === meaning &&
          (row.unit ?? "") === unit,
      ),
  );
  if (fresh.length === 0) return { sheets: [], cells: [], said: [] };
  const rows = fresh.map(({ word, meaning = "", unit = "" }) => [word, meaning, unit, sheet]);
  const said = [`remembered on the sheet "${WORDS_SHEET}": ${fresh.map(wordText).join("; ")}`];
  if (found !== undefined)
    return {
      sheets: [],
      said,
      cells: rows.flatMap((row, i) =>
        row.map((content, c) => ({
          sheet: found.sheet,
          row: found.lastRow + 1 + i,
          column: found.columns[c]!,
          content: content === "" ? null : content,
        })),
      ),
    };
  if (sheetOf(book) !== undefined)
    return {
      sheets: [],
      cells: [],
      said: [`not remembered: the workbook has a sheet "${WORDS_SHEET}" of another kind`],
    };
  return { sheets: [{ name: WORDS_SHEET, rows: [[...HEADINGS], ...rows], widths: WIDTHS }], cells: [], said };
}

const WIDTHS = [28, 22, 8, 20];

function wordText({ word, meaning, unit }: Word): string {
  return [word, meaning, unit].filter((text) => text !== undefined && text !== "").join(" = ");
}

function sheetOf(book: Book) {
  return book.sheets.find(({ name, cells }) => cells && plainName(name) === WORDS_SHEET);
}

function wordsOn(book: Book) {
  const sheet = sheetOf(book);
  if (sheet === undefined) return undefined;
  const { rows } = book.grid(sheet.name);
  const headings = (rows[0] ?? []).map((cell) => (typeof cell === "string" ? plainName(cell) : ""));
  const columns = HEADINGS.map((name) => headings.indexOf(name) + 1);
  if (columns.some((column) => column === 0)) return undefined;
  const text = (row: readonly unknown[], which: number) => {
    const cell = row[columns[which]! - 1];
    return isEmpty(cell) ? "" : String(cell).trim();
  };
  const words = rows.slice(1).flatMap((row): readonly RememberedWord[] => {
    const [word, meaning, unit] = [text(row, 0), text(row, 1), text(row, 2)];
    if (word === "") return [];
    return [
      {
        word,
        ...(meaning === "" ? {} : { meaning }),
        ...(unit === "" ? {} : { unit }),
        sheet: text(row, 3),
      },
    ];
  });
  return { sheet: sheet.name, columns, rows: words, lastRow: rows.length };
}
