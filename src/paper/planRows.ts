import type { Piece } from "../cutting/types";
import { partText } from "../estimate/sheetAnswers";
import { benchLength, nearestMark } from "../measure/benchLength";
import type { Mm, WorkbookUnit } from "../measure/units";
import { beside, gap, together, type Block } from "./blocks";
import type { CutPanel, CutTree } from "./cutTree";
import { fitColumns, table, type TableCell } from "./table";
import { lineHeight, tickBox, TYPE } from "./textBlocks";
import type { Typesetter } from "./typesetter";
import { NO_BREAK } from "./wrapText";

/** More rows than this are in two columns. */
const MOST_IN_ONE = 14;
const COLUMN_GAP: Mm = 5;
const TICK_COLUMN: Mm = 5.5;

/** Which edge of the panel, as drawn, goes against the fence for a cut. */
const FENCE_EDGE = { across: "left", along: "top" } as const;

/** What is written of a piece of a plan, its size apart: `LK 001`, `small strip: side wall × 2`. */
export function pieceWords(piece: Piece): readonly string[] {
  return [piece.item, partText(piece).replace(/ x (\d)/g, " × $1")].filter((text) => text !== "");
}

/** `735 × 42.5`. */
export function sizeText({ length, width }: { readonly length: Mm; readonly width: Mm }, unit: WorkbookUnit): string {
  return `${benchLength(length, unit)} × ${benchLength(width, unit)}`;
}

/** A size in one line of a table. */
function unbroken(text: string): string {
  return text.replace(/ /g, NO_BREAK);
}

/** What comes off a sheet, in the order of cutting: for each cut its fence, the edge against it, and what it frees. */
function rowsOf(
  { cuts, pieces }: CutTree,
  { unit, figure, tight }: { readonly unit: WorkbookUnit; readonly figure: number; readonly tight: boolean },
): readonly (readonly TableCell[])[] {
  const tick: TableCell = { height: lineHeight(figure), draw: (x, y) => [tickBox(x, y, figure)] };
  const words = (panel: CutPanel) => wordsOf(panel, pieces, unit, tight);
  const [only] = pieces;
  if (cuts.length === 0 && only !== undefined) return [[tick, only.name, "", "", words(only)]];
  return cuts.flatMap(({ cut, off, rest }) => [
    [tick, off.name, benchLength(cut.setting, unit), FENCE_EDGE[cut.way], words(off)],
    ...(rest === undefined || rest.name === "" ? [] : [["", rest.name, "", "", `left: ${words(rest)}`]]),
  ]);
}

function wordsOf(panel: CutPanel, pieces: readonly CutPanel[], unit: WorkbookUnit, tight: boolean): string {
  if (panel.strip) {
    const items = new Set(
      pieces.filter(({ name }) => name.startsWith(panel.name)).map(({ placement }) => placement!.piece.item),
    );
    const size = [panel.length, panel.width].map((side) => nearestMark(side, unit)).join(" × ");
    return `strip, ${unbroken(size)}${items.size === 1 && !tight ? `, of ${unbroken([...items][0]!)}` : ""}`;
  }
  if (panel.placement === undefined) return "left over";
  const { piece, length, width } = panel.placement;
  return `${pieceWords(piece).join(" ")}, ${unbroken(sizeText({ length, width }, unit))}`;
}

export interface PlanRowsStyle {
  readonly unit: WorkbookUnit;
  readonly width: Mm;
  /** Whether rows are closer and their figures smaller, for a page that is full. */
  readonly tight: boolean;
}

/** The rows of a plan, set but not yet on pages. */
export interface PlanTable {
  readonly head: Block;
  readonly body: readonly Block[];
  readonly count: number;
  readonly wide: Mm;
}

/** The rows in one column or two. */
export function planTable(tree: CutTree, { unit, width, tight }: PlanRowsStyle, type: Typesetter): PlanTable {
  const size = TYPE.body;
  const figure = tight ? size : TYPE.heading;
  const rows = rowsOf(tree, { unit, figure, tight });
  const count = rows.length > MOST_IN_ONE ? 2 : 1;
  const wide = (width - (count - 1) * COLUMN_GAP) / count;
  const columns = [
    { heading: "", least: TICK_COLUMN },
    { heading: "", bold: true, size: figure },
    { heading: "fence", align: "end" as const, bold: true, size: figure },
    { heading: "edge" },
    { heading: "comes off", share: 1 },
  ];
  const [rule, headings, ...body] = table(fitColumns(columns, rows, wide, size, type), rows, { size, tight }, type);
  return { head: together([rule!, headings!]), body, count, wide };
}

/**
 * On as many pages as they need.
 *
 * @param first room for rows on the first page; `others`: on each that follows
 */
export function planRows({ head, body, count, wide }: PlanTable, first: Mm, others: Mm): readonly Block[] {
  const heightOf = (some: readonly Block[]) => some.reduce((sum, { height }) => sum + height, head.height);
  const pages: Block[] = [];
  let left = body;
  while (left.length > 0) {
    const room = pages.length === 0 ? first : others;
    const columnsHere: Block[][] = [];
    // As even as the rows allow, within the room of the page.
    const even = (heightOf(left) + (count - 1) * head.height + left[0]!.height) / count;
    const wanted = Math.min(room, Math.max(even, heightOf([left[0]!])));
    for (let column = 0; column < count && left.length > 0; column++) {
      let taken = 0;
      const goal = column === count - 1 ? room : wanted;
      while (taken < left.length && heightOf(left.slice(0, taken + 1)) <= goal + NOISE_MM) taken++;
      columnsHere.push([...left.slice(0, Math.max(1, taken))]);
      left = left.slice(Math.max(1, taken));
    }
    pages.push(
      beside(
        columnsHere.map((own, column) => ({ block: together([head, ...own]), from: column * (wide + COLUMN_GAP) })),
      ),
    );
  }
  return pages.map((block) => ({ ...together([block, gap(0)]), withNext: false }));
}

const NOISE_MM: Mm = 1e-6;
