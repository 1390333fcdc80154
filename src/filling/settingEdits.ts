import { cellText, isBlank } from "../measure/blank";
import { InputError } from "../measure/errors";
import { readBoardGuide } from "../settings/boardGuide";
import { isNotGiven, settingKey } from "../settings/given";
import { plainName } from "../settings/names";
import { DEFINITIONS, type SettingKey } from "../settings/schema";
import { settingsOf } from "../settings/settingsOf";
import { settingsTable } from "../settings/settingsTable";
import { tableHeading } from "../settings/tableHeading";
import type { Book } from "../workbook/book";
import { sheetArea } from "../workbook/cellRef";
import type { CellContent, CellEdit, WorkbookEdits } from "../workbook/edits";
import { definedName, GUIDE_NAME, namedArea, SETTINGS_NAME } from "./keptRanges";
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

/** Settings that the sheet sets to something else than what they are without it. */
export function changedSettings({ found, sized }: Pick<KeptBook, "found" | "sized">): ReadonlySet<SettingKey> {
  // What is in the survey's own unit is usual there.
  const usual = settingsTable(settingsOf([found.stock, found.guide, `unit=${sized.settings.surveyUnit}`]));
  const changed = usual.slice(1).flatMap(([name, value]): SettingKey[] => {
    const key = settingKey(String(name))!;
    const says = settingSays({ found }, key);
    const own = key === "surveyUnit" ? DEFINITIONS.surveyUnit.fallback : cellText(value);
    return says === "" || says === own || says === DEFINITIONS[key].defaultText ? [] : [key];
  });
  return new Set(changed);
}

/** What settings are to say, by their keys; empty text for the usual value. */
export type SettingTexts = Readonly<Partial<Record<SettingKey, string>>>;

/**
 * Writes values into the settings sheet, which the workbook must have. A setting without a row there gets one below the
 * last.
 *
 * @throws InputError when a setting does not take its value, or there is no room for another row
 */
export function settingEdits(kept: KeptBook, texts: SettingTexts): Required<Pick<WorkbookEdits, "cells" | "names">> {
  const { book, found } = kept;
  const wanted = (Object.entries(texts) as [SettingKey, string][]).map(([key, text]) => ({
    key,
    content: text.trim() === "" ? USUAL : typedContent(text),
  }));
  const others = [found.stock, found.guide].filter((range) => range !== undefined);
  settingsOf([
    ...others,
    [["setting", "value"], ...wanted.map(({ key, content }) => [DEFINITIONS[key].name, content])],
  ]);
  const rows = found.settings ?? [];
  const absent = wanted.filter(({ key, content }) => settingPlace(rows, key) === undefined && content !== USUAL);
  const present = wanted.flatMap(({ key, content }) => {
    const place = settingPlace(rows, key);
    return place === undefined ? [] : [cellAt(book, SETTINGS_NAME, place, content)];
  });
  const added = addedRows(kept, absent);
  return { cells: [...present, ...added.cells], names: added.names };
}

/** Rows below the last one of the settings; the name of the range grows where it ends with that. */
function addedRows(
  { book, found }: KeptBook,
  absent: readonly { readonly key: SettingKey; readonly content: CellContent }[],
): ReturnType<typeof settingEdits> {
  if (absent.length === 0) return { cells: [], names: [] };
  const rows = found.settings ?? [];
  const { setting, value } = settingColumns(rows);
  const { sheet, area } = namedArea(book, SETTINGS_NAME);
  const defined = definedName(book, SETTINGS_NAME);
  const first = rows.findLastIndex((cells) => !cells.every(isBlank)) + 1;
  const bottom = Math.max(area.bottom, area.top + first + absent.length - 1);
  const below = book.grid(sheet).rows.slice(area.bottom, bottom);
  if (below.some((cells) => cells.slice(area.left - 1, area.right).some((cell) => !isBlank(cell))))
    throw new InputError(
      DEFINITIONS[absent[0]!.key].name,
      "no row of the settings sheet",
      "cells below the last setting are in use, so that none can be added there",
      `insert a row between two others there, and write ${DEFINITIONS[absent[0]!.key].name} and its value`,
    );
  return {
    cells: absent.flatMap(({ key, content }, index) => {
      const at = (column: number, cell: CellContent): CellEdit => ({
        sheet,
        row: area.top + first + index,
        column: area.left + column,
        content: cell,
      });
      return [at(setting, DEFINITIONS[key].name), at(value, content)];
    }),
    names:
      bottom === area.bottom
        ? []
        : [
            {
              name: defined!.name,
              refersTo: sheetArea(sheet, { ...area, bottom }),
              grownFrom: defined!.refersTo,
            },
          ],
  };
}

/** The word for a setting that is left to its usual value, as the settings sheet has it. */
const USUAL = "default";

interface Place {
  readonly row: number;
  readonly column: number;
}

/** The last row of a setting counts, as it does where settings are read. */
function settingPlace(rows: readonly (readonly unknown[])[], key: SettingKey): Place | undefined {
  const { setting, value } = settingColumns(rows);
  const row = rows.findLastIndex((cells) => settingKey(cellText(cells[setting])) === key);
  return row < 0 ? undefined : { row, column: value };
}

/** By the headings, else the first two. */
function settingColumns(rows: readonly (readonly unknown[])[]): { readonly setting: number; readonly value: number } {
  const headings = rows
    .map((cells) => cells.map((cell) => plainName(cellText(cell))))
    .find((names) => names.includes("setting") && names.includes("value"));
  if (headings === undefined) return { setting: 0, value: 1 };
  return { setting: headings.indexOf("setting"), value: headings.indexOf("value") };
}

/** A cell of a range that the workbook names; rows and columns of the range count from 0. */
function cellAt(book: Book, name: string, { row, column }: Place, content: CellContent): CellEdit {
  const { sheet, area } = namedArea(book, name);
  return { sheet, row: area.top + row, column: area.left + column, content };
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
