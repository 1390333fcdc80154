import { columnLetters } from "../../src/workbook/cellRef";
import type { Recognition } from "../../src/headings/recognition";

/** `height C cm` for each recognised column, `?depth D/E` for each question. */
export function summary({ columns, settings, ask }: Recognition): string {
  const one = (name: string, at: { column: number; unit?: string; order?: string }) =>
    [name, columnLetters(at.column), at.unit, at.order].filter((word) => word !== undefined).join(" ");
  const found = [
    ...Object.entries(columns).map(([field, at]) => ({ column: at.column, text: one(field, at) })),
    ...settings.map((at) => ({ column: at.column, text: one(`setting ${at.setting}`, at) })),
  ].sort((a, b) => a.column - b.column);
  const asked = ask.map(
    ({ field, candidates }) => `?${field} ${candidates.map(({ column }) => columnLetters(column)).join("/")}`,
  );
  return [...found.map(({ text }) => text), ...asked.sort()].join(", ");
}
