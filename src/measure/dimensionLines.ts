import { termAt } from "./dimensionTerm";
import { plainText } from "./plainText";
import { isPlainRemark } from "./scanHeading";
import { scanMeasure } from "./scanMeasure";

/** Where a second label starts on the same line: `image: 20 x 15 cm; sheet: 30 x 24 cm`. */
const NEXT_LABEL = /[;,.] ?(?=(\p{L}[^\d:;,]{0,80}):)/gu;

/** `(30 x 20 x 4) cm`. */
const WHOLLY_BRACKETED = /^\((?=[^()\p{L}\d]*\d)([^()]*)\) ?(\p{L}{0,12}\.?)$/u;

const LINE_JOINT = " ; ";

/**
 * The lines of a dimension text in plain writing, one measure each: a further label starts a line, and a measure written
 * one term a line (`Height: 30 cm`, `Width: 20 cm`) is one line.
 */
export function dimensionLines(text: string): readonly string[] {
  const joined: { readonly parts: string[]; readonly oneTermALine: boolean }[] = [];
  for (const line of text
    .split(/[\r\n\u2028\u2029]+/)
    .map(plainText)
    .map((line) => line.replace(WHOLLY_BRACKETED, "$1 $2").trim())
    .flatMap(splitAtLabels)) {
    if (line === "") continue;
    const last = joined.at(-1);
    if (last?.oneTermALine === true && isOneTerm(line)) last.parts.push(line);
    else joined.push({ parts: [line], oneTermALine: line.split(LINE_JOINT).every(isOneTerm) });
  }
  return joined.map(({ parts }) => parts.join(LINE_JOINT));
}

function splitAtLabels(line: string): readonly string[] {
  return line
    .replace(NEXT_LABEL, (mark, label: string) => (isPlainRemark(label) && !isWeight(label) ? "\n" : mark))
    .split("\n");
}

function isWeight(label: string): boolean {
  return /^(?:weight|mass|wt)\b/i.test(label);
}

function isOneTerm(line: string): boolean {
  const measure = termAt(line, 0) === undefined ? undefined : scanMeasure(line, 0);
  return measure?.figures.length === 1 && /^[ ,;.]*$/.test(line.slice(measure.end));
}
