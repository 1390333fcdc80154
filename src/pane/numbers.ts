/*
 * Numbers as people read them: money with its hundredths, hours to a tenth, other figures to digits that count.
 */
import { roughFigure } from "../measure/roughFigure";

/** `12.40 EUR`; the number alone where no currency is set. */
export function moneyText(amount: number, currency: string): string {
  return currency === "" ? amount.toFixed(2) : `${amount.toFixed(2)} ${currency}`;
}

/** `25 min` to the next five, `1 hour`, `2.5 hours`. */
export function hoursText(hours: number): string {
  const minutes = Math.ceil((hours * MINUTES_PER_HOUR - NOISE) / STEP_MIN) * STEP_MIN;
  return minutes < MINUTES_PER_HOUR ? `${minutes} min` : counted(Number(hours.toFixed(1)), "hour");
}

const MINUTES_PER_HOUR = 60;
const STEP_MIN = 5;
const NOISE = 1e-9;

/** A figure with its unit: `0.46 m2`. A text stays as it is. */
export function figureText(figure: number | string, unit: string): string {
  return typeof figure === "number" ? `${roughFigure(figure)} ${unit}` : figure;
}

/** `1 row`, `2 rows`. @param several left out, with an s */
export function counted(count: number, one: string, several = `${one}s`): string {
  return `${count} ${count === 1 ? one : several}`;
}
