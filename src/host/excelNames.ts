import { sheetArea, type Area } from "../workbook/cellRef";
import type { ColumnPlaces } from "../workbook/columnPlaces";
import { isGrowing, type ColumnsEdit, type NewName } from "../workbook/edits";
import type { DefinedName } from "../workbook/openWorkbook";
import { columnMark, isMark, SHEET_MARK } from "../workbook/ownMarks";
import type { Sender } from "./excelCells";
import type { HostView } from "./excelRead";
import type { SheetPlan } from "./excelSheets";

/** Names of the whole workbook to delete and to add: our marks are written again, the user's own names stay. */
export interface NamePlan {
  readonly removed: readonly DefinedName[];
  readonly added: readonly DefinedName[];
  readonly notes: readonly string[];
}

export function planNames(
  look: HostView,
  wanted: readonly NewName[],
  columns: { readonly sheet: string; readonly edit: ColumnsEdit; readonly places: ColumnPlaces } | undefined,
  { made, removed: gone }: SheetPlan,
): NamePlan {
  const names = look.names.filter(({ sheet }) => sheet === undefined);
  const stale = new Set([...(columns?.places.staleMarks ?? []), ...made.flatMap(({ staleMark }) => staleMark ?? [])]);
  const removed = names.filter(
    ({ name, refersTo }) =>
      stale.has(name) ||
      wanted.some((each) => isGrowing({ name, refersTo }, each)) ||
      (isMark(name) && (refersTo.includes("#REF!") || gone.some((sheet) => isOn(refersTo, sheet)))),
  );
  const known = new Set(names.filter((name) => !removed.includes(name)).map(({ name }) => name.toLowerCase()));
  const added: DefinedName[] = [];
  const add = (name: string, refersTo: string, comment: string, hidden: boolean): void => {
    known.add(name.toLowerCase());
    added.push({ name, refersTo, comment, hidden, sheet: undefined });
  };
  const mark = (start: string, wantedName: string, sheet: string, area: Area): void => {
    let number = 1;
    while (known.has(`${start}${number}`)) number++;
    add(`${start}${number}`, sheetArea(sheet, area), wantedName, true);
  };
  for (const { wantedName, area } of columns?.places.marks ?? [])
    mark(columnMark(columns!.edit.holds), wantedName, columns!.sheet, area);
  for (const { sheet, name } of made.filter((each) => each.sheet.replaceable))
    mark(SHEET_MARK, sheet.name, name, { top: 1, left: 1, bottom: 1, right: 1 });
  const notes: string[] = [];
  for (const { name, refersTo } of wanted) {
    if (known.has(name.toLowerCase())) notes.push(`the name ${name} is in the workbook already and stays as it is`);
    else add(name, refersTo, "", false);
  }
  return { removed, added, notes };
}

export async function writeNames(
  { context, put }: Sender,
  removed: readonly string[],
  added: readonly DefinedName[],
): Promise<void> {
  const { names } = context.workbook;
  for (const name of removed) await put(SMALL, () => names.getItem(name).delete());
  for (const { name, refersTo, comment, hidden } of added)
    await put(SMALL, () => {
      const item = names.add(name, `=${refersTo}`, comment);
      if (hidden) item.visible = false;
    });
}

const SMALL = 200;

function isOn(refersTo: string, sheet: string): boolean {
  const written = sheet.replaceAll("'", "''");
  return refersTo.startsWith(`'${written}'!`) || refersTo.startsWith(`${written}!`);
}
