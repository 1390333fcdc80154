import type { IObjectMatrixPrimitiveType, Nullable } from "@univerjs/core";

/** What the grid keeps by row and column, place by place; rows and columns count from 0. */
export function* gridCells<Content>(
  rows: IObjectMatrixPrimitiveType<Content>,
): Generator<readonly [row: number, column: number, content: Content]> {
  // Not by lists of entries, which would double the time.
  for (const row in rows) {
    const cells = rows[row] as Nullable<Readonly<Record<string, Content>>>;
    for (const column in cells) yield [Number(row), Number(column), cells[column]!];
  }
}
