import type { Area } from "../workbook/cellRef";
import { rangeAt } from "./excelRead";

/** Charts and shapes of a sheet, asked for with the next round. */
export interface Floating {
  readonly sheet: string;
  readonly items: () => readonly Rectangle[];
}

/** In points from the sheet's first cell. */
interface Rectangle {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Asks for the charts, pictures and shapes of a sheet, in the round that is under way. */
export function askFloating(context: Excel.RequestContext, sheet: string): Floating {
  const { charts, shapes } = context.workbook.worksheets.getItem(sheet);
  const sides = ["left", "top", "width", "height"].map((side) => `items/${side}`);
  charts.load(sides);
  shapes.load(sides);
  return { sheet, items: () => [...charts.items, ...shapes.items] };
}

/** Columns right of the survey that are looked at: what floats further right covers none of ours. */
const LOOKED_AT = 120;
const LAST_COLUMN = 16_384;

/** The cells that they cover beside the survey's rows; one round, and none where nothing floats. */
export async function floatingBeside(
  context: Excel.RequestContext,
  { sheet, items }: Floating,
  beside: Area,
): Promise<readonly Area[]> {
  const found = items();
  if (found.length === 0) return [];
  const left = beside.left;
  const right = Math.min(Math.max(beside.right, left) + LOOKED_AT, LAST_COLUMN);
  const columns = Array.from({ length: right - left + 1 }, (_, i) =>
    rangeAt(context, sheet, { top: 1, bottom: 1, left: left + i, right: left + i }).load("left"),
  );
  const rows = rangeAt(context, sheet, { ...beside, right: left }).load(["top", "height"]);
  await context.sync();
  const lefts = columns.map((column) => column.left);
  return found.flatMap((each) => {
    const isBeside = each.top < rows.top + rows.height && each.top + each.height > rows.top;
    const covered = lefts.flatMap((start, i) => {
      const end = lefts[i + 1] ?? Infinity;
      return each.left < end && each.left + each.width > start ? [left + i] : [];
    });
    if (!isBeside || covered.length === 0) return [];
    return [{ top: beside.top, bottom: beside.bottom, left: covered[0]!, right: covered.at(-1)! }];
  });
}
