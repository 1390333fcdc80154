import { cellText, isBlank } from "../measure/blank";
import { InputError, shown } from "../measure/errors";
import { PREFERRED_BOARD } from "../settings/definitions/materialSettings";
import { settingKey } from "../settings/given";
import { plainName } from "../settings/names";
import { DEFINITIONS, type SettingKey } from "../settings/schema";
import { settingsOf } from "../settings/settingsOf";
import type { CellEdit, NewColumn, WorkbookEdits } from "../workbook/edits";
import { choicesSheet, preferenceColumn } from "./boardColumns";
import type { BookSurvey } from "./readBookSurvey";

/** What the row says of a setting itself; empty where it leaves it to the settings and the kind. */
export function rowSays({ sized }: Pick<BookSurvey, "sized">, index: number, key: SettingKey): string {
  return cellText(sized.survey.items[index]!.own.find((each) => each.key === key)?.value);
}

/** A number typed as text becomes one, as a spreadsheet would do. */
export function typedContent(text: string): string | number | null {
  const trimmed = text.trim();
  if (trimmed === "") return null;
  return /^\d+(?:\.\d+)?$/.test(trimmed) ? Number(trimmed) : trimmed;
}

/**
 * Writes a decision on a setting into a row: into the column that the survey has for it, else into a new one, which is
 * the user's from then on. Of rows that share a box, those that name another value too.
 *
 * @param text empty to take the decision back
 * @throws InputError when the setting does not take the value, or a column of that name holds something else
 */
export function rowDecision(survey: BookSurvey, index: number, key: SettingKey, text: string): WorkbookEdits {
  const { sized, chosen, found } = survey;
  const { items, recognition } = sized.survey;
  const { name } = DEFINITIONS[key];
  const heading = key === "wallBoard" ? PREFERRED_BOARD : name;
  const content = typedContent(text);
  const stored = [found.stock, found.guide].filter((range) => range !== undefined);
  if (content !== null)
    settingsOf([
      ...stored,
      [
        ["setting", "value"],
        [name, content],
      ],
    ]);
  const item = items[index]!;
  const rows = items.filter(
    (each) =>
      each === item ||
      (item.box !== "" && each.box === item.box && each.leftOut === "" && each.own.some((own) => own.key === key)),
  );
  const columns = recognition.settings.filter(({ setting }) => settingKey(setting) === key);
  const own = columns.find(({ setting }) => setting === PREFERRED_BOARD) ?? columns[0];
  const column = own?.column ?? blankColumn(survey, heading);
  const { sheet } = chosen;
  if (column !== undefined)
    return { cells: rows.map(({ row }): CellEdit => ({ sheet: sheet.name, row, column, content })) };
  const { headingRow, firstRow, lastRow, lastColumn } = recognition;
  const isBoard = key === "wallBoard";
  const cells = items.map((each) => (each === item ? content : null));
  const added: NewColumn = isBoard
    ? { ...preferenceColumn(sized), cells }
    : { heading, cells, ofUser: true, ...offered(key) };
  return {
    columns: {
      sheet: sheet.name,
      ...(chosen.table === undefined ? {} : { table: chosen.table.name }),
      headingRow,
      firstRow,
      lastRow,
      lastColumn,
      columns: [added],
    },
    ...(isBoard ? { sheets: [choicesSheet(sized)] } : {}),
  };
}

/** A column of that name without a value yet. */
function blankColumn({ sized, cells }: BookSurvey, heading: string): number | undefined {
  const { others, firstRow, lastRow } = sized.survey.recognition;
  const other = others.find((each) => plainName(each.heading) === plainName(heading));
  if (other === undefined) return undefined;
  const holds = cells.slice(firstRow - 1, lastRow).map((row) => row[other.column - 1]);
  const value = holds.find((cell) => !isBlank(cell));
  if (value === undefined) return other.column;
  throw new InputError(
    heading,
    `a column of that name that holds other things, such as ${shown(value)}`,
    "a decision needs a column of its own",
    "give that column another heading, or say under Columns what it is",
  );
}

/** Words in the cells to choose from. */
function offered(key: SettingKey): { readonly choices?: string } {
  const words = DEFINITIONS[key].takes.choices.flatMap((choice) =>
    choice.is === "word" ? [choice.word] : choice.is === "none" ? ["none"] : [],
  );
  return words.length === 0 ? {} : { choices: `"${words.join(",")}"` };
}
