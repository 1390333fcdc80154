import type { Mm } from "../measure/units";
import { NO_FOLDS } from "../enclosure/assembly";
import { wholeDown, wholeUp, type Part } from "../enclosure/part";
import type { Settings } from "../settings/schema";
import type { Material, StockRow } from "../settings/stock";

/** A length of a blank between two of its lines, and what it lies on. */
export interface Stretch {
  readonly name: string;
  readonly length: Mm;
}

/** A rectangle cut out of corners of a blank: of all four, or of the two at one end. */
export interface CornerCut {
  readonly along: Mm;
  readonly across: Mm;
  readonly at: "all" | "far along" | "far across";
}

/** A covering or lining blank before it is rounded and, where the sheet is too short, split. */
export interface Blank {
  readonly name: string;
  readonly tray: string;
  readonly material: "covering" | "lining";
  readonly count: number;
  readonly along: Mm;
  readonly across: Mm;
  /** Pieces that lie within a face are rounded down, all others up. */
  readonly within: boolean;
  readonly note: string;
  /** What `along` and `across` are summed from, where the blank has lines in that direction. */
  readonly runAlong?: readonly Stretch[] | undefined;
  readonly runAcross?: readonly Stretch[] | undefined;
  readonly cutAway?: CornerCut | undefined;
}

/** The length of a run of stretches. */
export function runOf(stretches: readonly Stretch[]): Mm {
  let length = 0;
  for (const stretch of stretches) length += stretch.length;
  return length;
}

/** A run without the stretches that come to nothing. */
export function run(...stretches: readonly (readonly [name: string, length: Mm])[]): readonly Stretch[] {
  const found: Stretch[] = [];
  for (const [name, length] of stretches) if (length > 0) found.push({ name, length });
  return found;
}

/**
 * Turns blanks into parts to cut: whole millimetres, and split with a lap where the sheet is too short along the grain.
 * A blank without area (the turn-ins cover that face) is left out, and so is what `covering=none` or `lining=none` drops.
 */
export function cutBlanks(blanks: readonly Blank[], settings: Settings): readonly Part[] {
  const parts: Part[] = [];
  for (const blank of blanks) {
    const part = cutBlank(blank, settings);
    if (part !== undefined) parts.push(part);
  }
  return parts;
}

function cutBlank(blank: Blank, settings: Settings): Part | undefined {
  const row = stockFor(blank.material, settings);
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

/** The stock row of a covering or lining; undefined where the table has none, `none` where the settings say so. */
export function stockFor(material: "covering" | "lining", settings: Settings): StockRow | "none" | undefined {
  const chosen = settings[material];
  if (chosen === "none") return "none";
  return settings.stock.find((row) => (chosen === undefined ? row.material === material : row.stock === chosen));
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
    length: Math.max(along, across),
    width: Math.min(along, across),
    grain: row?.grain === "free" ? "either" : alongLength ? "along length" : "along width",
    folds: NO_FOLDS,
    corners: undefined,
    placed: undefined,
    note,
  };
}
