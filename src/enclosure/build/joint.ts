import { InputError } from "../../measure/errors";
import { formatLengthWithUnit } from "../../measure/formatLength";
import type { Mm } from "../../measure/units";
import type { Settings } from "../../settings/schema";

/** A hinged board stands off the edge by what the covering spans: a joint, a board higher. */
export function standOffOf(joint: Mm, q: Mm): Mm {
  return Math.sqrt(joint * joint - q * q);
}

/** A joint from which the hinged board stands clear of what is covered beside it. */
export function leastJoint(q: Mm, c: Mm, hinged: Mm = q): Mm {
  return Math.hypot(q, hinged + 2 * c);
}

/**
 * The gap between a case board and a board that is hinged to it.
 *
 * The covering spans it from the outer edge of the board to the outer edge of the hinged board, a joint apart and a board
 * higher, so that the hinged board stands off by sqrt(j^2 - q^2) when closed. Its inner, lined face must clear the covered
 * boards inside: sqrt(j^2 - q^2) is at least its own caliper + 2c.
 *
 * @param q caliper of the case board
 * @param c covering on one face
 * @param strikes what a narrower joint does
 * @param hinged caliper of the thickest board that is hinged; q unless given
 * @throws InputError naming `joint`
 */
export function jointOf(q: Mm, c: Mm, { joint, answerUnit: unit }: Settings, strikes: string, hinged: Mm = q): Mm {
  const least = leastJoint(q, c, hinged);
  const chosen = joint === "auto" ? Math.max(2 * q + 2 * c, least) : joint;
  if (chosen >= least) return chosen;
  const shown = (size: Mm) => formatLengthWithUnit(size, unit);
  throw new InputError(
    "joint",
    shown(chosen),
    `give auto, or ${shown(least)} or more`,
    `a narrower joint lets ${strikes}`,
  );
}
