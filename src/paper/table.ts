import type { Mm } from "../measure/units";
import { together, type Block } from "./blocks";
import { line, rectangle, withTag, type Placed, type PlacedText } from "./page";
import { BASELINE_SHARE, lineHeight, textLine } from "./textBlocks";
import type { Typesetter } from "./typesetter";
import { readsFromRight } from "./visualRuns";
import { wrapText } from "./wrapText";

export interface Column {
  readonly heading: string;
  readonly width: Mm;
  readonly align?: PlacedText["align"];
  readonly bold?: boolean;
  /** Points; the size of the table where it is missing. */
  readonly size?: number;
}

/** A cell: words, or what is drawn at the upper left corner of its room. */
export type TableCell = string | DrawnCell;

export interface DrawnCell {
  readonly draw: (x: Mm, y: Mm, width: Mm) => readonly Placed[];
  readonly height: Mm;
  /** What a screen reader says of it, where its words do not. */
  readonly alt?: string;
}

export interface TableOptions {
  readonly size: number;
  /** The last row stands out: a total. */
  readonly total?: boolean;
  /** Whether the heading row is printed; on the pages that follow it always is. Default true. */
  readonly headed?: boolean;
  /** Whether rows are closer to each other, for a page that is full. Default false. */
  readonly tight?: boolean;
  /** What is printed below a row, as wide as the table. */
  readonly under?: readonly DrawnCell[];
}

const PAD: Mm = 0.9;
const PAD_Y: Mm = 0.5;
const TIGHT_PAD_Y: Mm = 0.2;
const HEAD_SHADE = 0.1;
/** A row of more lines than this may go on on the next page. */
const MOST_LINES = 8;

/** Rows of a table, one block each; a row of many lines is several blocks. The heading row stays with the first, and comes again on the next page. */
export function table(
  columns: readonly Column[],
  rows: readonly (readonly TableCell[])[],
  { size, total = false, headed = true, tight = false, under }: TableOptions,
  type: Typesetter,
): readonly Block[] {
  const width = columns.reduce((sum, column) => sum + column.width, 0);
  const whole = {};
  const padY = tight ? TIGHT_PAD_Y : PAD_Y;
  const headings = rowBlocks(
    columns.map((column) => ({ ...column, size })),
    columns.map(({ heading }) => heading),
    { size, bold: true, shade: HEAD_SHADE, padY, table: whole },
    type,
  );
  const body = rows.flatMap((row, index) =>
    rowBlocks(
      columns,
      row,
      { size, bold: total && index === rows.length - 1, shade: 0, padY, under: under?.[index], table: whole },
      type,
    ),
  );
  const top: Block = { height: 0, withNext: true, at: (x, y) => [line([x, y], [x + width, y], { weight: RULE })] };
  const above = together([top, ...headings]);
  // Said once to a screen reader, on the page where the table begins.
  const again: Block = { ...above, at: (x, y) => withTag(above.at(x, y), { role: "Artifact", of: whole }) };
  return [
    top,
    ...(headed ? headings.map((block) => ({ ...block, withNext: true })) : []),
    ...body.map((block) => ({ ...block, again })),
  ];
}

const RULE: Mm = 0.3;

function rowBlocks(
  columns: readonly Column[],
  cells: readonly TableCell[],
  {
    size,
    bold,
    shade,
    padY,
    under,
    table,
  }: {
    readonly size: number;
    readonly bold: boolean;
    readonly shade: number;
    readonly padY: Mm;
    readonly under?: DrawnCell | undefined;
    readonly table: object;
  },
  type: Typesetter,
): readonly Block[] {
  const width = columns.reduce((sum, column) => sum + column.width, 0);
  const sizeOf = (column: Column) => column.size ?? size;
  const lines = columns.map((column, index) => {
    const cell = cells[index] ?? "";
    if (typeof cell !== "string") return [];
    return wrapText(cell, column.width - 2 * PAD, { size: sizeOf(column), bold: bold || column.bold === true }, type);
  });
  const drawn = Math.max(0, ...cells.map((cell) => (typeof cell === "string" ? 0 : cell.height)));
  const rows = Math.max(1, ...lines.map((each) => each.length));
  const steps = columns.map((column) => lineHeight(sizeOf(column)));
  // Letters of all sizes stand on one line.
  const baseline = Math.max(...steps) * BASELINE_SHARE;
  const drops = steps.map((step) => baseline - step * BASELINE_SHARE);
  const highest = (from: number, to: number) =>
    Math.max(
      lineHeight(size),
      ...lines.map((each, index) => {
        const shown = Math.max(0, Math.min(each.length, to) - from);
        return shown === 0 ? 0 : shown * steps[index]! + drops[index]!;
      }),
    );
  const row = {};
  const role = shade > 0 ? ("TH" as const) : ("TD" as const);
  const tags = [...columns, "under"].map(() => ({ role, of: {}, row, table }));
  const parts = Math.ceil(rows / MOST_LINES);
  return Array.from({ length: parts }, (_, part): Block => {
    const [from, to] = [part * MOST_LINES, Math.min(rows, (part + 1) * MOST_LINES)];
    const last = part === parts - 1;
    const above = Math.max(highest(from, to), part === 0 ? drawn : 0) + padY;
    const height = above + padY + (last && under !== undefined ? under.height : 0);
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
          const tag = tags[index]!;
          // A cell without words is a cell to a screen reader too, so that the others stand under their headings.
          const silent = { ...textLine("", { x: own + PAD, y: y + padY, width: room }, { size }), tag };
          if (cell === "") return part === 0 ? [silent] : [];
          if (typeof cell !== "string") {
            if (part > 0) return [];
            const drawn = withTag(cell.draw(own + PAD, y + padY, room), tag);
            if (cell.alt === undefined) return drawn.some(({ kind }) => kind === "text") ? drawn : [silent, ...drawn];
            return [{ ...silent, tag: { ...tag, alt: cell.alt } }, ...drawn];
          }
          return (lines[index] as readonly string[]).slice(from, to).map((text, at) => ({
            ...textLine(
              text,
              { x: own + PAD, y: y + padY + drops[index]! + at * steps[index]!, width: room },
              { size: sizeOf(column), bold: bold || column.bold === true, align: column.align ?? "start" },
              readsFromRight(cell),
            ),
            tag,
          }));
        });
        return [
          ...(shade > 0 ? [rectangle({ x, y, width, height }, { weight: 0, shade })] : []),
          ...placed,
          ...(last && under !== undefined
            ? withTag(under.draw(x + PAD, y + above, width - 2 * PAD), tags.at(-1)!)
            : []),
          ...(last ? [line([x, y + height], [x + width, y + height], { weight: bold ? RULE : undefined })] : []),
        ];
      },
    };
  });
}

/** Columns that together fill a width: each as wide as its longest word or line needs, the flexible ones sharing the rest. */
export function fitColumns(
  columns: readonly (Omit<Column, "width"> & {
    readonly share?: number;
    readonly least?: Mm;
    /** Its cells are wrapped, so that it is as wide as `least` alone. */
    readonly wraps?: boolean;
  })[],
  rows: readonly (readonly TableCell[])[],
  width: Mm,
  size: number,
  type: Typesetter,
): readonly Column[] {
  const needs = columns.map(({ heading, least = 0, share, wraps = false, bold, size: own = size }, index) => {
    const cells = rows.map((row) => row[index] ?? "").filter((cell) => typeof cell === "string");
    // A flexible column needs its longest word, the others their longest cell.
    const widest = cells.reduce((most, text) => Math.max(most, type.width(text, own, bold === true)), 0);
    const need = share === undefined && !wraps ? widest : 0;
    return Math.max(least, Math.max(need, type.width(heading, size, true)) + 2 * PAD + ROUNDING);
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
