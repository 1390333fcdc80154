import { InputError, shown } from "../measure/errors";
import type { Mm } from "../measure/units";

/** One length in the chain that leaves the free play: the base (+1), the item (-1), a covering (-1), a wall (-1). */
export interface FitTerm {
  /** what it is, in the trade's words; names it in an error */
  readonly label: string;
  readonly nominal: Mm;
  /** +1: the longer, the looser; -1: the longer, the tighter */
  readonly sign: 1 | -1;
  /** growth per %RH as a share of the length, in the direction that it lies (0.0001: 0.1 mm in a metre) */
  readonly hygroexpansion: number;
  /** error of measuring, of cutting, or of caliper, either way: two standard deviations */
  readonly tolerance: Mm;
}

/** How far the air strays from that in which the item was measured and the board cut, %RH. */
export interface HumidityRange {
  /** at the driest; below zero, or zero */
  readonly drier: number;
  /** at the dampest; above zero, or zero */
  readonly damper: number;
}

/** Free play over the year, mm; below zero, the item does not go in. */
export interface FitRange {
  /** as designed: no error, no change of humidity */
  readonly nominal: Mm;
  readonly least: Mm;
  readonly greatest: Mm;
  readonly likelyLeast: Mm;
  readonly likelyGreatest: Mm;
}

/**
 * How much free play a chain of lengths leaves over the year.
 *
 * `least` and `greatest` are bounds: every error at its worst at once, and every part at whatever humidity in the
 * range hurts most, because in a change of season a closed box lags behind the room and the item behind its box.
 *
 * `likelyLeast` and `likelyGreatest` let independent errors offset one another (root of the sum of their squares)
 * and all parts follow the air together, to both ends of the range: the seasons are not chance. Where each error is
 * normal with the tolerance at two standard deviations, 95 % of builds stay between the two all year; where errors
 * are uniform to the tolerance, at least 91 % (two alike are the worst).
 *
 * @throws InputError when a length or tolerance is below zero, or the humidity range does not include zero
 * Source: derived; the root of the sum of squares is common practice in tolerance chains.
 */
export function fitRange(terms: readonly FitTerm[], humidity: HumidityRange): FitRange {
  refuseBad(terms, humidity);
  const air = [humidity.drier, humidity.damper];
  const settled = air.map((change) => sum(terms.map((term) => term.sign * atHumidity(term, change).length)));
  const chance = air.map((change) => Math.hypot(...terms.map((term) => atHumidity(term, change).tolerance)));
  const extremes = terms.map((term) =>
    air.flatMap((change) => {
      const { length, tolerance } = atHumidity(term, change);
      return [term.sign * length - tolerance, term.sign * length + tolerance];
    }),
  );
  return {
    nominal: sum(terms.map((term) => term.sign * term.nominal)),
    least: sum(extremes.map((ends) => Math.min(...ends))),
    greatest: sum(extremes.map((ends) => Math.max(...ends))),
    likelyLeast: Math.min(...settled.map((play, end) => play - (chance[end] ?? 0))),
    likelyGreatest: Math.max(...settled.map((play, end) => play + (chance[end] ?? 0))),
  };
}

/** A length and its tolerance once the part has taken up `change` %RH; an error in the length moves with it. */
function atHumidity({ nominal, tolerance, hygroexpansion }: FitTerm, change: number): { length: Mm; tolerance: Mm } {
  const growth = 1 + hygroexpansion * change;
  return { length: nominal * growth, tolerance: tolerance * growth };
}

function sum(lengths: readonly Mm[]): Mm {
  return lengths.reduce((total, length) => total + length, 0);
}

function refuseBad(terms: readonly FitTerm[], { drier, damper }: HumidityRange): void {
  if (!(drier <= 0 && drier >= -WHOLE_RANGE)) throw new InputError("driest", shown(drier), "give %RH below, 0 to -100");
  if (!(damper >= 0 && damper <= WHOLE_RANGE))
    throw new InputError("dampest", shown(damper), "give %RH above, 0 to 100");
  for (const { label, nominal, tolerance, hygroexpansion } of terms) {
    if (!(nominal >= 0 && nominal < Infinity)) throw new InputError(label, shown(nominal), "give a length in mm");
    if (!(tolerance >= 0 && tolerance < Infinity)) {
      throw new InputError(`${label} tolerance`, shown(tolerance), "give a length in mm, zero or above");
    }
    if (!(Math.abs(hygroexpansion) < GREATEST_HYGROEXPANSION)) {
      throw new InputError(`${label} hygroexpansion`, shown(hygroexpansion), "give the growth per %RH, such as 0.0001");
    }
  }
}

const WHOLE_RANGE = 100;

/** A part that grew by more than a hundredth for each %RH would be no board: a percentage typed as a share. */
const GREATEST_HYGROEXPANSION = 0.01;
