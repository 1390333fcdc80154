import { InputError, shown } from "../measure/errors";

/** @throws InputError naming `argument` when `value` is not a finite number above zero */
export function requireAboveZero(argument: string, value: number): void {
  if (!(value > 0 && value < Infinity)) throw new InputError(argument, shown(value), "give a number above zero");
}
