import type { Plan, SheetPlan } from "./types";

/** The sheets of a plan that are bought or in hand: not the off-cuts of others. */
export function newSheets({ sheets }: Pick<Plan, "sheets">): readonly SheetPlan[] {
  return sheets.filter(({ offCut }) => offCut === undefined);
}

/**
 * What each sheet of a plan is called: its number among the new sheets, and for an off-cut the number of the sheet that it
 * comes from with a letter: `3`, `3a`, `3b`.
 */
export function sheetLabels({ sheets }: Pick<Plan, "sheets">): readonly string[] {
  const numbers: number[] = [];
  const letters = new Map<number, number>();
  let count = 0;
  return sheets.map(({ offCut }, index) => {
    const number = offCut === undefined ? ++count : numbers[offCut.sheet]!;
    numbers[index] = number;
    if (offCut === undefined) return String(number);
    const letter = letters.get(number) ?? 0;
    letters.set(number, letter + 1);
    return `${number}${lettersOf(letter)}`;
  });
}

/** a to z, then aa, ab. */
function lettersOf(index: number): string {
  const rest = Math.floor(index / LETTERS.length);
  return `${rest === 0 ? "" : lettersOf(rest - 1)}${LETTERS[index % LETTERS.length]!}`;
}

const LETTERS = "abcdefghijklmnopqrstuvwxyz";
