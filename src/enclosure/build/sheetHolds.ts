import type { Mm } from "../../measure/units";
import type { Settings } from "../../settings/schema";
import type { PlacedPart } from "../placedPart";

/** What can be used of a sheet, along the grain and across it. */
export type Room = readonly [along: Mm, across: Mm];

/** What can be used of the sheets in which a stock is sold; none where no size is given. */
export function roomsOf(name: string, { stock, edgeTrim }: Pick<Settings, "stock" | "edgeTrim">): readonly Room[] {
  return stock.flatMap((row): readonly Room[] =>
    row.stock === name && row.sheetLength !== undefined && row.sheetWidth !== undefined
      ? [[row.sheetLength - 2 * edgeTrim, row.sheetWidth - 2 * edgeTrim]]
      : [],
  );
}

/** Whether a sheet of its board holds a part in one piece; where no sheet size is known, any does. */
export function sheetHolds({ board, length, width, grain }: PlacedPart, settings: Settings): boolean {
  const rooms = roomsOf(board.stock, settings);
  const [along, across] = grain === "along width" ? [width, length] : [length, width];
  const free = board.listed?.grain === "free";
  return (
    rooms.length === 0 || rooms.some(([a, b]) => (along <= a && across <= b) || (free && across <= a && along <= b))
  );
}
