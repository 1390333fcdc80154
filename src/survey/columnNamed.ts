import { plainName } from "../settings/names";
import type { Survey } from "./surveyItems";

/** The column, counted from 0, of a field that was recognised or of a heading of the user's own; undefined when none. */
export function columnNamed(
  name: string,
  { recognition }: Survey,
  cells: readonly (readonly unknown[])[],
): number | undefined {
  const wanted = plainName(name);
  const field = Object.entries(recognition.columns).find(([each]) => each === wanted)?.[1];
  if (field !== undefined) return field.column - 1;
  const headings = cells[recognition.headingRow - 1] ?? [];
  const index = headings.findIndex((cell) => typeof cell === "string" && plainName(cell) === wanted);
  return index < 0 ? undefined : index;
}
