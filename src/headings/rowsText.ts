/** `rows 3, 8, 12, ...`. */
export function rowsText(rows: readonly number[]): string {
  const named = rows.slice(0, MOST_NAMED).join(", ");
  return `row${rows.length === 1 ? "" : "s"} ${named}${rows.length > MOST_NAMED ? ", ..." : ""}`;
}

const MOST_NAMED = 6;
