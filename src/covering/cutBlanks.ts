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
  // Written out, without lists between: this runs for every blank of every row.
  const whole = row === undefined || turns(blank, along, across, row, settings);
  const lengths = whole
    ? 1
    : pieces(along, Math.min(usable(row.sheetLength, settings), longestStrip(blank, row)), settings);
  const widths = whole ? 1 : pieces(across, usable(row.sheetWidth, settings), settings);
  const count = lengths * widths;
  if (count === 1) return blankPart(blank, along, across, blank.count, row, blank.note);
  const each = (side: Mm, parts: number) => wholeUp((side + (parts - 1) * settings.turnIn) / parts);
  const note = `${blank.note === "" ? "" : `${blank.note}; `}in ${count} pieces, each lapped by the turn-in at the join`;
  return blankPart(blank, each(along, lengths), each(across, widths), blank.count * count, row, note);
}

/** A strip round the walls that is cut off a roll is no longer: a longer one is hard to lay straight. Common practice, no source. */
const LONGEST_STRIP_MM: Mm = 1200;

/** How many pieces a side is cut in, when it is longer than what a stock gives. */
function pieces(side: Mm, most: Mm, { turnIn }: Settings): number {
  return side <= most || most <= turnIn ? 1 : Math.ceil((side - turnIn) / (most - turnIn));
}

/** Of a stock without grain a blank that fits the other way is cut that way. */
function turns(blank: Blank, along: Mm, across: Mm, row: StockRow, settings: Settings): boolean {
  if (row.grain !== "free" || across > usable(row.sheetLength, settings)) return false;
  return along <= Math.min(usable(row.sheetWidth, settings), longestStrip(blank, row));
}

function longestStrip({ name }: Blank, { sheetLength }: StockRow): Mm {
  return sheetLength === undefined && name.endsWith("wall strip") ? LONGEST_STRIP_MM : Infinity;
}

/** Pieces are cut to whole millimetres, so no more than the whole millimetres of the sheet is of use. */
function usable(side: Mm | undefined, { edgeTrim }: Settings): Mm {
  return side === undefined ? Infinity : wholeDown(side - 2 * edgeTrim);
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
