import type { IObjectMatrixPrimitiveType, Nullable } from "@univerjs/core";

/** What the grid keeps by row and column, place by place; rows and columns count from 0. */
export function* gridCells<Content>(
  rows: IObjectMatrixPrimitiveType<Content>,
): Generator<readonly [row: number, column: number, content: Content]> {
  for (const [row, cells] of Object.entries<Nullable<Record<string, Content>>>(rows as Record<string, never>))
    for (const [column, content] of Object.entries(cells ?? {})) yield [Number(row), Number(column), content];
}
