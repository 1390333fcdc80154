/**
 * A figure to as many digits as anyone uses: three that count, two where it is less than 1. Whole numbers stay whole.
 *
 *     roughFigure(14.324) // 14.3
 *     roughFigure(0.0487) // 0.049
 */
export function roughFigure(figure: number): number {
  const size = Math.abs(figure);
  if (size >= WHOLE_FROM || Number.isInteger(figure)) return Math.round(figure);
  return Number(figure.toPrecision(size < 1 ? DIGITS_BELOW_ONE : DIGITS));
}

const WHOLE_FROM = 100;
const DIGITS = 3;
const DIGITS_BELOW_ONE = 2;
