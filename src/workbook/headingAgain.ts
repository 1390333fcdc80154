import type { NewColumn, PlacedColumn } from "./edits";
import type { OwnColumn } from "./ownMarks";

/** The heading of a column that is written again: one of ours in another unit is renamed, one of the user's stays. */
export function headingAgain(
  column: NewColumn,
  standing: string,
  { wantedName }: OwnColumn,
  free: (standing: string) => string,
): Pick<PlacedColumn, "heading" | "wantedName" | "renamedFrom"> {
  const elsewhere = column.headingsElsewhere?.some((each) => each.toLowerCase() === wantedName.toLowerCase());
  const isOurs = standing.replace(/ \d+$/, "").toLowerCase() === wantedName.toLowerCase();
  if (elsewhere !== true || !isOurs) return { heading: standing, wantedName: column.heading };
  return { heading: free(standing), wantedName: column.heading, renamedFrom: standing };
}

/** A column whose unit changes under a heading of the user's own. */
export function isNamedOtherwise(column: NewColumn, at: PlacedColumn, before: OwnColumn | undefined): boolean {
  if (before === undefined || at.renamedFrom !== undefined) return false;
  return column.headingsElsewhere?.some((each) => each.toLowerCase() === before.wantedName.toLowerCase()) === true;
}
