import { InputError, shown } from "../../measure/errors";
import { plainNumber } from "../../settings/plainNumber";

/** More sizes than a store keeps apart. */
const MOST = 200;

/**
 * How many standard sizes there may be.
 *
 * @throws InputError unless it is a whole number from 1 to 200
 */
export function sizeCount(given: unknown): number {
  const count = plainNumber(given);
  if (Number.isInteger(count) && count >= 1 && count <= MOST) return count;
  throw new InputError("count", shown(given), `give how many sizes there may be, a whole number from 1 to ${MOST}`);
}
