import { cellText, isBlank } from "../measure/blank";
import { InputError } from "../measure/errors";
import { readBoardGuide } from "../settings/boardGuide";
import { isNotGiven, settingKey } from "../settings/given";
import { plainName } from "../settings/names";
import { DEFINITIONS, type SettingKey } from "../settings/schema";
import { settingsOf } from "../settings/settingsOf";
import { tableHeading } from "../settings/tableHeading";
import type { Book } from "../workbook/book";
import { parseSheetArea } from "../workbook/cellRef";
import type { CellContent, CellEdit } from "../workbook/edits";
import { GUIDE_NAME, SETTINGS_NAME } from "./keptRanges";
import type { BookSurvey } from "./readBookSurvey";
import { typedContent } from "./rowDecision";

/** A workbook with what it keeps for its survey. */
export type KeptBook = Pick<BookSurvey, "found" | "sized"> & { readonly book: Book };

/** What the settings sheet says of a setting; empty where it leaves it to the usual value. */
export function settingSays({ found }: Pick<KeptBook, "found">, key: SettingKey): string {
  const place = settingPlace(found.settings ?? [], key);
  if (place === undefined) return "";
  const cell = found.settings![place.row]![place.column];
  return isNotGiven(cell) ? "" : cellText(cell);
}

/**
 * Writes a value into the settings sheet, which the workbook must have.
 *
 * @param text empty for the usual value
 * @throws InputError when the setting does not take the value, or the sheet has no row for it
 */
export function settingEdit({ book, found }: KeptBook, key: SettingKey, text: string): CellEdit {
  const { name } = DEFINITIONS[key];
  const content = text.trim() === "" ? USUAL : typedContent(text);
  const others = [found.stock, found.guide].filter((range) => range !== undefined);
  settingsOf([
    ...others,
    [
      ["setting", "value"],
      [name, content],
    ],
  ]);
  const place = settingPlace(found.settings ?? [], key);
  if (place === undefined)
    throw new InputError(
      name,
      "no row of the settings sheet",
      "each setting has a row of its own",
      `insert a row between two others there, and write ${name} and its value`,
    );
  return cellAt(book, SETTINGS_NAME, place, content);
}

/** The word for a setting that is left to its usual value, as the settings sheet has it. */
const USUAL = "default";

interface Place {
  readonly row: number;
  readonly column: number;
}

/** The last row of a setting counts, as it does where settings are read. */
function settingPlace(rows: readonly (readonly unknown[])[], key: SettingKey): Place | undefined {
  const heads = rows.findIndex((cells) => {
    const names = cells.map((cell) => plainName(cellText(cell)));
    return names.includes("setting") && names.includes("value");
  });
  const names = heads < 0 ? [] : rows[heads]!.map((cell) => plainName(cellText(cell)));
  const [setting, value] = heads < 0 ? [0, 1] : [names.indexOf("setting"), names.indexOf("value")];
  const row = rows.findLastIndex((cells) => settingKey(cellText(cells[setting])) === key);
  return row < 0 ? undefined : { row, column: value };
}

/** A cell of a range that the workbook names; rows and columns of the range count from 0. */
function cellAt(book: Book, name: string, { row, column }: Place, content: CellContent): CellEdit {
  const { sheet, area } = namedArea(book, name);
  return { sheet, row: area.top + row, column: area.left + column, content };
}

function namedArea({ names }: Book, wanted: string): NonNullable<ReturnType<typeof parseSheetArea>> {
  const defined = names.find(({ name, sheet }) => name.toLowerCase() === wanted && sheet === undefined);
  const found = defined === undefined ? undefined : parseSheetArea(defined.refersTo);
  if (found === undefined) throw new InputError(wanted, "no range of that name", "make its sheet first");
  return found;
}

/** A change to the board guide; rows count from 1, without the heading. */
export type GuideChange =
  | { readonly does: "replace" | "insert"; readonly row: number; readonly cells: Readonly<Record<string, string>> }
  | { readonly does: "delete"; readonly row: number };

/** The rows of a board guide that hold something, by the plain names of their headings. */
export function guideRows(range: readonly (readonly unknown[])[]): readonly Readonly<Record<string, string>>[] {
  const [headings = [], ...body] = range;
  const names = headings.map((heading) => tableHeading(heading).name);
  return body
    .slice(0, body.findLastIndex((cells) => !cells.every(isBlank)) + 1)
    .map((cells) => Object.fromEntries(names.map((name, column) => [name, cellText(cells[column])])));
}

/**
 * Changes a row of the board guide on its sheet, which the workbook must have. What is changed no longer has the
 * standing of the starter guide.
 *
 * @throws InputError when the guide could not be read then, or its range has no room for another row
 */
export function guideEdits({ book, found, sized }: KeptBook, change: GuideChange): readonly CellEdit[] {
  const [headings = [], ...body] = found.guide ?? [];
  const names = headings.map((heading) => tableHeading(heading).name);
  const rows = body.slice(0, body.findLastIndex((cells) => !cells.every(isBlank)) + 1).map((cells) => [...cells]);
  const before = rows.length;
  const at = change.row - 1;
  if (change.does === "delete") rows.splice(at, 1);
  else {
    const own = { ...change.cells, standing: OWN_STANDING };
    const old = change.does === "replace" ? (rows[at] ?? []) : [];
    const next = names.map((name, column) => {
      const text = (own as Readonly<Record<string, string>>)[name];
      return text === undefined ? old[column] : typedContent(text);
    });
    rows.splice(at, change.does === "replace" ? 1 : 0, next);
  }
  readBoardGuide([headings, ...rows], { ...sized.settings, unit: sized.settings.surveyUnit });
  const { area } = namedArea(book, GUIDE_NAME);
  if (rows.length > area.bottom - area.top)
    throw new InputError(
      "board guide",
      `${rows.length} rows`,
      "its range has no room for another",
      "insert rows on its sheet",
    );
  const last = change.does === "replace" ? change.row : Math.max(before, rows.length);
  return Array.from({ length: last - at }, (_, index) => at + index).flatMap((row) =>
    names.map((_name, column) => cellAt(book, GUIDE_NAME, { row: row + 1, column }, plain(rows[row]?.[column]))),
  );
}

const OWN_STANDING = "shop";

function plain(cell: unknown): string | number | null {
  if (typeof cell === "number") return cell;
  return isBlank(cell) ? null : String(cell);
}
