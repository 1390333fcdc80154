/**
 * Rows of cells as text in columns: numbers to the right, texts to the left.
 *
 * @param rows the heading row first
 * @param decimals of numbers, at most
 */
export function textTable(rows: readonly (readonly (number | string)[])[], decimals = DECIMALS): string {
  const columns = rows.reduce((widest, { length }) => Math.max(widest, length), 0);
  const shownRows = rows.map((row) => Array.from({ length: columns }, (_, i) => cellText(row[i] ?? "", decimals)));
  const widths = Array.from({ length: columns }, (_, i) =>
    shownRows.reduce((widest, row) => Math.max(widest, width(row[i] as string)), 0),
  );
  const numeric = widths.map((_, i) => {
    const body = rows.slice(1).map((row) => row[i] ?? "");
    return (
      body.length > 0 &&
      body.every((cell) => typeof cell === "number" || cell === "") &&
      body.some((cell) => cell !== "")
    );
  });
  return shownRows
    .map((row) =>
      row
        .map((cell, i) => {
          const space = " ".repeat((widths[i] as number) - width(cell));
          return numeric[i] === true ? space + cell : cell + space;
        })
        .join("  ")
        .trimEnd(),
    )
    .join("\n");
}

const DECIMALS = 2;

function cellText(cell: number | string, decimals: number): string {
  if (typeof cell === "string") return cell.replace(/\s+/g, " ");
  return String(Number(cell.toFixed(decimals)));
}

function width(text: string): number {
  return [...text].length;
}
