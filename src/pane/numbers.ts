/*
 * Numbers as people read them: money with its hundredths, hours to a tenth, other figures to three digits.
 */

/** `12.40 EUR`; the number alone where no currency is set. */
export function moneyText(amount: number, currency: string): string {
  return currency === "" ? amount.toFixed(2) : `${amount.toFixed(2)} ${currency}`;
}

/** `1 hour`, `2.5 hours`. */
export function hoursText(hours: number): string {
  return counted(Number(hours.toFixed(1)), "hour");
}

/** Three digits that count, with the unit: `0.462 m2`. A text stays as it is. */
export function figureText(figure: number | string, unit: string): string {
  return typeof figure === "number" ? `${threeDigits(figure)} ${unit}` : figure;
}

/** To three digits that count; whole numbers stay whole. */
export function threeDigits(figure: number): number {
  return Math.abs(figure) >= THREE_DIGITS ? Math.round(figure) : Number(figure.toPrecision(3));
}

const THREE_DIGITS = 100;

/** `1 row`, `2 rows`. @param several left out, with an s */
export function counted(count: number, one: string, several = `${one}s`): string {
  return `${count} ${count === 1 ? one : several}`;
}
