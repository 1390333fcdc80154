import type { Mm } from "../measure/units";
import { together, type Block } from "./blocks";
import { line, rectangle, type Placed, type PlacedText } from "./page";
import { lineHeight, textLine } from "./textBlocks";
import type { Typesetter } from "./typesetter";
import { readsFromRight } from "./visualRuns";
import { wrapText } from "./wrapText";

export interface Column {
  readonly heading: string;
  readonly width: Mm;
  readonly align?: PlacedText["align"];
  readonly bold?: boolean;
}

/** A cell: words, or what is drawn at the upper left corner of its room. */
export type TableCell = string | { readonly draw: (x: Mm, y: Mm, width: Mm) => readonly Placed[]; readonly height: Mm };

export interface TableOptions {
  readonly size: number;
  /** The last row stands out: a total. */
  readonly total?: boolean;
}

const PAD: Mm = 0.9;
const PAD_Y: Mm = 0.5;
const HEAD_SHADE = 0.1;
/** A row of more lines than this may go on overleaf. */
const MOST_LINES = 8;

/** Rows of a table, one block each; a row of many lines is several blocks. The heading row stays with the first, and comes again overleaf. */
export function table(
  columns: readonly Column[],
  rows: readonly (readonly TableCell[])[],
  { size, total = false }: TableOptions,
  type: Typesetter,
): readonly Block[] {
  const width = columns.reduce((sum, column) => sum + column.width, 0);
  const headings = rowBlocks(
    columns,
    columns.map(({ heading }) => heading),
    { size, bold: true, shade: HEAD_SHADE },
    type,
  );
  const body = rows.flatMap((row, index) =>
    rowBlocks(columns, row, { size, bold: total && index === rows.length - 1, shade: 0 }, type),
  );
  const top: Block = { height: 0, withNext: true, at: (x, y) => [line([x, y], [x + width, y], { weight: RULE })] };
  const again = together([top, ...headings]);
  return [
    top,
    ...headings.map((block) => ({ ...block, withNext: true })),
    ...body.map((block) => ({ ...block, again })),
  ];
}

const RULE: Mm = 0.3;

function rowBlocks(
  columns: readonly Column[],
  cells: readonly TableCell[],
  { size, bold, shade }: { readonly size: number; readonly bold: boolean; readonly shade: number },
  type: Typesetter,
): readonly Block[] {
  const width = columns.reduce((sum, column) => sum + column.width, 0);
  const lines = columns.map((column, index) => {
    const cell = cells[index] ?? "";
    if (typeof cell !== "string") return [];
    return wrapText(cell, column.width - 2 * PAD, { size, bold: bold || column.bold === true }, type);
  });
  const drawn = Math.max(0, ...cells.map((cell) => (typeof cell === "string" ? 0 : cell.height)));
  const rows = Math.max(1, ...lines.map((each) => each.length));
  const step = lineHeight(size);
  const parts = Math.ceil(rows / MOST_LINES);
  return Array.from({ length: parts }, (_, part): Block => {
    const [from, to] = [part * MOST_LINES, Math.min(rows, (part + 1) * MOST_LINES)];
    const last = part === parts - 1;
    const height = Math.max((to - from) * step, part === 0 ? drawn : 0) + 2 * PAD_Y;
    return {
      height,
      withNext: false,
      at: (x, y) => {
        let left = x;
        const placed = columns.flatMap((column, index) => {
          const own = left;
          left += column.width;
          const cell = cells[index] ?? "";
          const room = column.width - 2 * PAD;
          if (typeof cell !== "string") return part === 0 ? cell.draw(own + PAD, y + PAD_Y, room) : [];
          return (lines[index] as readonly string[])
            .slice(from, to)
            .map((text, row) =>
              textLine(
                text,
                { x: own + PAD, y: y + PAD_Y + row * step, width: room },
                { size, bold: bold || column.bold === true, align: column.align ?? "start" },
                readsFromRight(cell),
              ),
            );
        });
        return [
          ...(shade > 0 ? [rectangle({ x, y, width, height }, { weight: 0, shade })] : []),
          ...placed,
          ...(last ? [line([x, y + height], [x + width, y + height], { weight: bold ? RULE : undefined })] : []),
        ];
      },
    };
  });
}

/** Columns that together fill a width: each as wide as its longest word or line needs, the flexible ones sharing the rest. */
export function fitColumns(
  columns: readonly (Omit<Column, "width"> & { readonly share?: number; readonly least?: Mm })[],
  rows: readonly (readonly TableCell[])[],
  width: Mm,
  size: number,
  type: Typesetter,
): readonly Column[] {
  const needs = columns.map(({ heading, least = 0, share, bold }, index) => {
    const cells = [...rows.map((row) => row[index] ?? ""), heading].filter((cell) => typeof cell === "string");
    // A flexible column needs its longest word, the others their longest cell.
    const texts = share === undefined ? cells : cells.flatMap((cell) => cell.split(" "));
    const widest = texts.reduce(
      (most, text) => Math.max(most, type.width(text, size, bold === true || text === heading)),
      0,
    );
    return Math.max(least, widest + 2 * PAD + ROUNDING);
  });
  const fixed = needs.reduce((sum, need, index) => sum + (columns[index]!.share === undefined ? need : 0), 0);
  const shares = columns.reduce((sum, { share = 0 }) => sum + share, 0);
  const rest = Math.max(0, width - fixed);
  return columns.map((column, index) => ({
    ...column,
    width: column.share === undefined ? needs[index]! : (rest * column.share) / shares,
  }));
}

/** So that a cell of exactly its column's width is not broken by noise. */
const ROUNDING: Mm = 0.05;
