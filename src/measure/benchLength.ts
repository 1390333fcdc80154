import { benchFraction } from "./benchFraction";
import { fromMm, MM_PER, type Mm, type WorkbookUnit } from "./units";

/** Marks of an inch rule that a board is cut to. */
const BENCH_DENOMINATOR = 32;
/** What a size is read to: half a millimetre, 1/32 in. Finer than that no board is cut by hand. Common practice, no source. */
const STEP_MM: Readonly<Record<WorkbookUnit, Mm>> = { mm: 0.5, cm: 0.5, in: MM_PER.in / BENCH_DENOMINATOR };
/** Nearer than this to a mark, a size is on it. Common practice, no source. */
const ON_MARK_MM: Mm = 0.1;
const CM_DECIMALS = 2;

/**
 * A size to cut as it is read off a rule at the bench: the nearest half millimetre or 1/32 in, with `+` where the size
 * is a little more than its mark and `−` where it is a little less, since a wall that follows from calipers is matched.
 *
 *     benchLength(44.9, "mm") // "45 −"
 *     benchLength(524.4, "in") // "20 21/32 −"
 *
 * @param mm length, mm
 */
export function benchLength(mm: Mm, unit: WorkbookUnit): string {
  const off = mm - markOf(mm, unit);
  const sign = Math.abs(off) <= ON_MARK_MM + NOISE_MM ? "" : off > 0 ? " +" : " −";
  return `${nearestMark(mm, unit)}${sign}`;
}

/** The nearest mark alone, for a clearance that is added to a measure. */
export function nearestMark(mm: Mm, unit: WorkbookUnit): string {
  const mark = markOf(mm, unit);
  // The marks of a millimetre rule are exact numbers: this runs for every tray of every row.
  if (unit === "mm") return String(mark);
  return unit === "in"
    ? benchFraction(mark, BENCH_DENOMINATOR)
    : String(Number(fromMm(mark, unit).toFixed(CM_DECIMALS)));
}

/** The next mark above, for a small amount that is only estimated: never less than one step. */
export function markAbove(mm: Mm, unit: WorkbookUnit): string {
  return nearestMark(Math.ceil(mm / STEP_MM[unit] - ON_MARK_MM / STEP_MM[unit]) * STEP_MM[unit] || STEP_MM[unit], unit);
}

function markOf(mm: Mm, unit: WorkbookUnit): Mm {
  return Math.round(mm / STEP_MM[unit] + HALF_UP) * STEP_MM[unit];
}

const NOISE_MM: Mm = 1e-6;
/** A size half way between two marks is read as the upper one, whatever binary noise it has. */
const HALF_UP = 1e-9;
