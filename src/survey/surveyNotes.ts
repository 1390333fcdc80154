import type { Recognition } from "../headings/recognition";
import type { SurveyRow } from "../headings/recognise";
import { rowsText } from "../headings/rowsText";
import { shown } from "../measure/errors";
import { PREFERRED_BOARD } from "../settings/definitions/materialSettings";
import { isNotGiven, settingKey } from "../settings/given";
import { plainName } from "../settings/names";
import { cellText, isBlank } from "../measure/blank";
import { HEADINGS, TOTALS } from "./whyLeftOut";

/** What of a row counts here. */
interface NotedRow {
  readonly row: number;
  readonly identifier: string;
  readonly leftOut: string;
}

/** What the user should be told of the rows, in plain words. */
export function surveyNotes(
  items: readonly NotedRow[],
  rows: readonly SurveyRow[],
  recognition: Recognition,
): readonly string[] {
  return [...leftOutNotes(items), ...doubledNotes(items), ...twoBoardsNotes(rows, recognition)];
}

/** Two columns name the board of a row: which of them counts is said, and where they differ. */
function twoBoardsNotes(rows: readonly SurveyRow[], { settings }: Recognition): readonly string[] {
  const columns = settings.filter(({ setting }) => settingKey(setting) === "wallBoard");
  const other = columns.find(({ setting }) => setting !== PREFERRED_BOARD);
  const preferred = columns.find(({ setting }) => setting === PREFERRED_BOARD);
  if (other === undefined || preferred === undefined) return [];
  const differing = rows.filter(({ settings: own }) => {
    const [one, two] = [own[other.setting], own[PREFERRED_BOARD]];
    return isGiven(one) && isGiven(two) && plainName(cellText(one)) !== plainName(cellText(two));
  });
  const where = differing.length === 0 ? "" : `; they differ in ${rowsText(differing.map(({ row }) => row))}`;
  return [
    `columns "${other.heading}" and "${preferred.heading}" both name the board of a row: "${preferred.heading}" counts where both are filled${where}`,
  ];
}

function leftOutNotes(items: readonly NotedRow[]): readonly string[] {
  return [TOTALS, HEADINGS].flatMap((why) => {
    const rows = items.filter((item) => item.leftOut === why).map(({ row }) => row);
    return rows.length === 0 ? [] : [`${rowsText(rows)}: ${why}`];
  });
}

const MOST_DOUBLED = 5;

/** Identifiers of more than one row: their pieces could not be told apart. */
function doubledNotes(items: readonly NotedRow[]): readonly string[] {
  const first = new Map<string, number>();
  const rows = new Map<string, number[]>();
  for (const { identifier, row, leftOut } of items) {
    if (leftOut !== "") continue;
    const before = first.get(identifier);
    if (before === undefined) {
      first.set(identifier, row);
      continue;
    }
    const doubles = rows.get(identifier);
    if (doubles === undefined) rows.set(identifier, [before, row]);
    else doubles.push(row);
  }
  const doubled = [...rows].sort(([, [one = 0]], [, [other = 0]]) => one - other);
  const more = doubled.length > MOST_DOUBLED ? [`${doubled.length - MOST_DOUBLED} more identifiers are doubled`] : [];
  return [
    ...doubled
      .slice(0, MOST_DOUBLED)
      .map(
        ([identifier, at]) =>
          `identifier ${shown(identifier)} is in ${rowsText(at)}: pieces of these objects cannot be told apart`,
      ),
    ...more,
  ];
}

/** Whether a cell of a setting says something. */
export function isGiven(cell: unknown): boolean {
  return !isBlank(cell) && !isNotGiven(cell);
}
