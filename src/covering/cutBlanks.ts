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
  const [lengths, widths] = row === undefined ? [1, 1] : piecesOf(blank, along, across, row, settings);
  const pieces = lengths * widths;
  if (pieces === 1) return blankPart(blank, along, across, blank.count, row, blank.note);
  const each = (side: Mm, count: number) => wholeUp((side + (count - 1) * settings.turnIn) / count);
  const note = `${blank.note === "" ? "" : `${blank.note}; `}in ${pieces} pieces, each lapped by the turn-in at the join`;
  return blankPart(blank, each(along, lengths), each(across, widths), blank.count * pieces, row, note);
}

/** A strip round the walls that is cut off a roll is no longer: a longer one is hard to lay straight. Common practice, no source. */
const LONGEST_STRIP_MM: Mm = 1200;

/** How many pieces a blank is cut in along the grain and across it, when it is larger than the sheet or the roll. */
function piecesOf(
  { name }: Blank,
  along: Mm,
  across: Mm,
  { sheetLength, sheetWidth, grain }: StockRow,
  { turnIn, edgeTrim }: Settings,
): readonly [along: number, across: number] {
  // Pieces are cut to whole millimetres, so no more than the whole millimetres of the sheet is of use.
  const usable = (side: Mm | undefined) => (side === undefined ? Infinity : wholeDown(side - 2 * edgeTrim));
  const [longest, widest] = [usable(sheetLength), usable(sheetWidth)];
  const strip = sheetLength === undefined && name.endsWith("wall strip") ? LONGEST_STRIP_MM : Infinity;
  if (grain === "free" && along <= Math.min(widest, strip) && across <= longest) return [1, 1];
  const count = (side: Mm, most: Mm) =>
    side <= most || most <= turnIn ? 1 : Math.ceil((side - turnIn) / (most - turnIn));
  return [count(along, Math.min(longest, strip)), count(across, widest)];
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
