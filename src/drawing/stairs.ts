/** A text under a measuring line, in a row of its own where there is no room under its stretch. */
export interface Step {
  readonly start: number;
  readonly width: number;
  /** 0 for the row next to the line. */
  readonly row: number;
  /** Where a line leads down to it; undefined where it stands centred under its stretch. */
  readonly leader: number | undefined;
}

/**
 * Places for the texts of consecutive stretches. One too wide for its stretch starts at the middle of it, on the first
 * row where neither texts nor the lines leading down to lower ones are in the way: seen from the right a flight of stairs.
 *
 * @param marks ends of the stretches, one more than there are texts
 * @param gap kept free beside a text
 */
export function stairs(marks: readonly number[], widths: readonly number[], gap: number): readonly Step[] {
  const steps: Step[] = [];
  for (let index = widths.length - 1; index >= 0; index--) {
    const [from, to, width] = [marks[index]!, marks[index + 1]!, widths[index]!];
    const middle = (from + to) / 2;
    const fits = width + gap <= to - from;
    const start = fits ? middle - width / 2 : middle - gap / 2;
    let row = 0;
    while (steps.some((step) => inTheWay(step, row, start - gap, start + width + gap))) row += 1;
    steps.unshift({ start, width, row, leader: fits && row === 0 ? undefined : middle });
  }
  return steps;
}

function inTheWay(step: Step, row: number, from: number, to: number): boolean {
  if (step.row === row) return step.start < to && step.start + step.width > from;
  return step.row > row && step.leader !== undefined && step.leader > from && step.leader < to;
}
