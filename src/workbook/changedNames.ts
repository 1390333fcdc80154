import { areaName, sheetArea, type Area } from "./cellRef";
import { isGrowing, type WorkbookEdits } from "./edits";
import type { DefinedName, Workbook } from "./openWorkbook";
import { columnMark, isMark, SHEET_MARK } from "./ownMarks";
import type { ColumnPlan } from "./planColumns";
import { sheetNamed } from "./sheetNamed";

/** The names to delete, add and move: ours are written again, the user's stay, those asked for are added when missing. */
export function changedNames(
  workbook: Workbook,
  { columns, names = [] }: WorkbookEdits,
  plan: ColumnPlan | undefined,
  removed: readonly number[],
  sheetMarks: readonly { readonly wantedName: string; readonly sheet: string; readonly stale: string | undefined }[],
) {
  const stale = new Set([
    ...(plan?.places.staleMarks ?? []),
    ...removed,
    ...sheetMarks.flatMap(({ stale: mark }) => mark ?? []),
  ]);
  const namesRemoved = new Set(
    workbook.names.flatMap((name, i) =>
      removed.includes(i) || stale.has(name.name) || (isMark(name.name) && name.refersTo.includes("#REF!")) ? [i] : [],
    ),
  );
  const known = new Set(
    workbook.names
      .filter((name, i) => !namesRemoved.has(i) && name.sheet === undefined)
      .map((name) => name.name.toLowerCase()),
  );
  const added: Omit<DefinedName, "sheet">[] = [];
  const mark = (start: string, wantedName: string, sheet: string, area: Area): void => {
    let number = 1;
    while (known.has(`${start}${number}`)) number++;
    known.add(`${start}${number}`);
    added.push({ name: `${start}${number}`, refersTo: sheetArea(sheet, area), hidden: true, comment: wantedName });
  };
  const sheet = columns && sheetNamed(workbook, columns.sheet).name;
  for (const { wantedName, area } of plan?.places.marks ?? [])
    mark(columnMark(columns?.holds), wantedName, sheet!, area);
  for (const { wantedName, sheet: own } of sheetMarks)
    mark(SHEET_MARK, wantedName, own, { top: 1, left: 1, bottom: 1, right: 1 });
  const notes: string[] = [];
  const moved = movedFilter(workbook, sheet, plan);
  for (const wanted of names) {
    const { name, refersTo } = wanted;
    const grows = workbook.names.findIndex((each) => each.sheet === undefined && isGrowing(each, wanted));
    if (grows >= 0) moved.set(grows, refersTo);
    else if (known.has(name.toLowerCase()))
      notes.push(`the name ${name} is in the workbook already and stays as it is`);
    else added.push({ name, refersTo, hidden: false, comment: "" });
    known.add(name.toLowerCase());
  }
  return { namesRemoved, namesAdded: added, namesMoved: moved, notes };
}

/** A sheet's own filter is also in a hidden name, which must agree. */
function movedFilter(workbook: Workbook, sheet: string | undefined, plan: ColumnPlan | undefined): Map<number, string> {
  const moved = new Map<number, string>();
  const filter = plan?.places.filter;
  if (!filter || sheet === undefined) return moved;
  workbook.names.forEach((name, i) => {
    const same = name.refersTo.slice(name.refersTo.lastIndexOf("!") + 1).replaceAll("$", "") === areaName(filter.from);
    if (name.name === "_xlnm._FilterDatabase" && name.sheet === sheet && same)
      moved.set(i, sheetArea(sheet, filter.to));
  });
  return moved;
}
