import { termAt } from "./dimensionTerm";
import { plainText } from "./plainText";
import { isPlainRemark } from "./scanHeading";
import { scanMeasure } from "./scanMeasure";

/** Where a second label starts on the same line: `image: 20 x 15 cm; sheet: 30 x 24 cm`. */
const NEXT_LABEL = /[;,.] ?(?=(\p{L}[^\d:;,]*):)/gu;

const LINE_JOINT = " ; ";

/**
 * The lines of a dimension text in plain writing, one measure each: a further label starts a line, and a measure written
 * one term a line (`Height: 30 cm`, `Width: 20 cm`) is one line.
 */
export function dimensionLines(text: string): readonly string[] {
  return text
    .split(/[\r\n\u2028\u2029]+/)
    .map(plainText)
    .flatMap(splitAtLabels)
    .filter((line) => line !== "")
    .reduce<readonly string[]>(joinTermLine, []);
}

function splitAtLabels(line: string): readonly string[] {
  return line
    .replace(NEXT_LABEL, (mark, label: string) => (isPlainRemark(label) && !isWeight(label) ? "\n" : mark))
    .split("\n");
}

function isWeight(label: string): boolean {
  return /^(?:weight|mass|wt)\b/i.test(label);
}

function joinTermLine(lines: readonly string[], line: string): readonly string[] {
  const last = lines.at(-1);
  return last !== undefined && isOneTermALine(last) && isOneTerm(line)
    ? [...lines.slice(0, -1), `${last}${LINE_JOINT}${line}`]
    : [...lines, line];
}

function isOneTermALine(line: string): boolean {
  return line.split(LINE_JOINT).every(isOneTerm);
}

function isOneTerm(line: string): boolean {
  const measure = termAt(line, 0) === undefined ? undefined : scanMeasure(line, 0);
  return measure?.figures.length === 1 && /^[ ,;.]*$/.test(line.slice(measure.end));
}
