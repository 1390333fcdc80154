import type { Mm } from "../measure/units";
import { lettering, textWidth } from "./lettering";
import { measuringLine } from "./marks";
import { straight, type Shape } from "./picture";
import type { Point } from "./projection";
import { spreadOut } from "./spreadOut";
import { stairs } from "./stairs";

/** A stretch with what is written at it. */
export interface NamedStretch {
  readonly text: string;
  readonly length: Mm;
}

export const FLAT_TEXT = 11;
export const FLAT_LINE = 15;
export const FLAT_GAP = 6;
/** Between a piece and the lines that measure it. */
export const STAND_OFF = 12;

const LEADER = { width: 0.6 } as const;
const TEXT_DROP = 0.35;

/**
 * Stretches one below the other, measured along an upright line, their names at its left.
 *
 * @param from the upper end of the line
 * @param between where the names may stand
 */
export function runBeside(
  stretches: readonly NamedStretch[],
  [x, y]: Point,
  scale: number,
  between: { readonly top: number; readonly bottom: number },
): readonly Shape[] {
  const marks = marksAt(stretches, y, scale);
  const middles = stretches.map((_, index) => (marks[index]! + marks[index + 1]!) / 2);
  const names = spreadOut(
    middles.map((wanted) => ({ wanted, size: FLAT_LINE })),
    between.top - FLAT_LINE / 2,
    between.bottom + FLAT_LINE / 2,
  );
  return stretches.flatMap(({ text }, index) => {
    const [middle, name] = [middles[index]!, names[index]!];
    const leader = Math.abs(name - middle) > 1 ? [straight([x, middle], [x - FLAT_GAP + 1, name], LEADER)] : [];
    return [
      ...measuringLine([x, marks[index]!], [x, marks[index + 1]!]),
      ...leader,
      lettering(text, x - FLAT_GAP, name + FLAT_TEXT * TEXT_DROP, { size: FLAT_TEXT, anchor: "end" }),
    ];
  });
}

export interface RunBelow {
  /** The right end of what is written furthest right. */
  readonly reach: number;
  /** Of the names, all their rows. */
  readonly height: number;
  /** Draws the line at `y`, the names from `from` down. */
  readonly draw: (y: number, from: number) => readonly Shape[];
}

/** Stretches one after the other, measured along a level line, their names below it. */
export function runBelow(stretches: readonly NamedStretch[], [x]: Point, scale: number): RunBelow {
  const marks = marksAt(stretches, x, scale);
  const steps = stairs(
    marks,
    stretches.map(({ text }) => textWidth(text, FLAT_TEXT)),
    FLAT_GAP,
  );
  return {
    reach: Math.max(0, ...steps.map(({ start, width }) => start + width)),
    height: FLAT_GAP + FLAT_LINE * Math.max(0, ...steps.map(({ row }) => row + 1)),
    draw: (y, from) =>
      steps.flatMap(({ start, row, leader }, index) => {
        const foot = from + FLAT_GAP + FLAT_LINE * (row + 0.5);
        return [
          ...measuringLine([marks[index]!, y], [marks[index + 1]!, y]),
          ...(leader === undefined ? [] : [straight([leader, y], [leader, foot - FLAT_TEXT / 2], LEADER)]),
          lettering(stretches[index]!.text, start, foot + FLAT_TEXT * TEXT_DROP, { size: FLAT_TEXT }),
        ];
      }),
  };
}

function marksAt(stretches: readonly NamedStretch[], from: number, scale: number): readonly number[] {
  const marks = [from];
  for (const { length } of stretches) marks.push(marks[marks.length - 1]! + length * scale);
  return marks;
}
