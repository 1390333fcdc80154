import type { PrintedTable } from "../estimate/printedTable";
import type { Mm } from "../measure/units";
import type { Block } from "./blocks";
import { fitColumns, table } from "./table";
import { TYPE } from "./textBlocks";
import type { Typesetter } from "./typesetter";

/** A table of any columns: figures at the right; the longest words share the room that the others leave. */
export function anyTable([headings = [], ...rows]: PrintedTable, width: Mm, type: Typesetter): readonly Block[] {
  const size = TYPE.small;
  const columns = headings.map((heading, at) => {
    const cells = rows.map((row) => row[at] ?? "");
    const isFigure = cells.some((cell) => cell !== "") && cells.every((cell) => /^[-\d.]*( %)?$/.test(cell));
    const longest = cells.reduce((most, { length }) => Math.max(most, length), 0);
    return { heading, isFigure, longest, letters: Math.max(heading.length, longest) };
  });
  const wraps = wrappingLength(columns, width);
  const fitted = columns.map(({ heading, isFigure, longest, letters }) => ({
    heading,
    ...(isFigure ? { align: "end" as const } : letters > wraps ? { share: Math.min(MOST_SHARE, longest + 1) } : {}),
  }));
  const options = { size, total: rows.at(-1)?.[0] === "total" };
  return table(fitColumns(fitted, rows, width, size, type), rows, options, type);
}

const MOST_SHARE = 40;
/** Words of more letters than one of these are wrapped: the first that leaves room enough for them. */
const WRAPPED = [24, 18, 12, 6] as const;
const FIXED_SHARE = 0.75;
const LETTER_MM: Mm = 1.5;

interface Letters {
  readonly isFigure: boolean;
  readonly letters: number;
}

function wrappingLength(columns: readonly Letters[], width: Mm): number {
  const taken = (limit: number) =>
    columns.reduce((sum, { isFigure, letters }) => sum + (isFigure || letters <= limit ? letters * LETTER_MM : 0), 0);
  return WRAPPED.find((limit) => taken(limit) <= width * FIXED_SHARE) ?? 0;
}
