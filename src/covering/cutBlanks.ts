import type { Mm } from "../measure/units";
import type { Blank } from "../enclosure/blank";
import { NO_FOLDS } from "../enclosure/placedPart";
import { wholeDown, wholeUp, type Part } from "../enclosure/part";
import { stockFor } from "../settings/coverStock";
import type { Settings } from "../settings/schema";
import type { Material, StockRow } from "../settings/stock";

/**
 * Turns blanks into parts to cut: whole millimetres, and split with a lap where the sheet is too short along the grain.
 * A blank without area (the turn-ins cover that face) is left out, and so is what `covering=none` or `lining=none` drops.
 */
export function cutBlanks(blanks: readonly Blank[], settings: Settings): readonly Part[] {
  const parts: Part[] = [];
  const rows = { covering: stockFor("covering", settings), lining: stockFor("lining", settings) };
  for (const blank of blanks) {
    const part = cutBlank(blank, rows[blank.material], settings);
    if (part !== undefined) parts.push(part);
  }
  return parts;
}

function cutBlank(blank: Blank, row: StockRow | "none" | undefined, settings: Settings): Part | undefined {
  if (row === "none") return undefined;
  const round = blank.within ? wholeDown : wholeUp;
  const along = round(blank.along);
  const across = round(blank.across);
  if (along <= 0 || across <= 0) return undefined;
  const pieces = row === undefined ? 1 : piecesAlong(along, row, settings);
  if (pieces === 1) return blankPart(blank, along, across, blank.count, row, blank.note);
  const each = wholeUp((along + (pieces - 1) * settings.turnIn) / pieces);
  const note = `${blank.note === "" ? "" : `${blank.note}; `}in ${pieces} pieces, each lapped by the turn-in at the join`;
  return blankPart(blank, each, across, blank.count * pieces, row, note);
}

/** How many pieces a blank is cut in when it is longer than the sheet allows along the grain; a roll allows any length. */
function piecesAlong(along: Mm, { sheetLength }: StockRow, { turnIn, edgeTrim }: Settings): number {
  // Pieces are cut to whole millimetres, so no more than the whole millimetres of the sheet is of use.
  const longest = sheetLength === undefined ? Infinity : wholeDown(sheetLength - 2 * edgeTrim);
  if (along <= longest || longest <= turnIn) return 1;
  return Math.ceil((along - turnIn) / (longest - turnIn));
}

export function blankPart(
  { name, tray, material }: { readonly name: string; readonly tray: string; readonly material: Material },
  along: Mm,
  across: Mm,
  count: number,
  row: StockRow | undefined,
  note: string,
): Part {
  const alongLength = along >= across;
  return {
    fullName: tray === "" ? name : `${tray} ${name}`,
    name,
    tray,
    material,
    stock: row?.stock ?? `${material}, not in stock`,
    caliper: row?.caliper ?? 0,
    count,
    plies: 1,
    length: Math.max(along, across),
    width: Math.min(along, across),
    grain: row?.grain === "free" ? "either" : alongLength ? "along length" : "along width",
    folds: NO_FOLDS,
    corners: undefined,
    placed: undefined,
    note,
  };
}
