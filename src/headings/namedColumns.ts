import { InputError, shown } from "../measure/errors";
import type { Headings } from "./findHeadings";
import { headingReadings, readHeading, wordsOf } from "./headings";
import type { Ask, RecogniseOptions, RecognisedSetting } from "./recognition";

/** The user said that the survey has no such column. */
export const NO_COLUMN = 0;

/** The columns that the user named, by heading or letter. @throws InputError when one is not there, or there twice */
export function overrides(headings: Headings, { columns = {} }: RecogniseOptions): Map<string, number> {
  const chosen = new Map<string, number>();
  for (const [field, text] of Object.entries(columns)) {
    if (text === null) continue;
    const wanted = wordsOf(text);
    const same = [...headings].filter(([, heading]) => heading.text.toLowerCase() === text.trim().toLowerCase());
    const found =
      same.length > 0
        ? same
        : [...headings].filter(
            ([, heading]) => wanted !== "" && (wordsOf(heading.text) === wanted || heading.words === wanted),
          );
    const letter = found.length === 0 ? columnOf(text) : undefined;
    if (found.length > 1) {
      const places = found.map(([column]) => columnLetters(column)).join(" and ");
      throw new InputError(
        field,
        shown(text),
        `columns ${places} both have that heading`,
        `give the column letter, such as ${columnLetters(found[0]![0])}`,
      );
    }
    const column = found[0]?.[0] ?? letter;
    if (column === undefined || (letter !== undefined && !headings.has(letter))) {
      const known = [...headings.values()].map((heading) => shown(heading.text)).join(", ");
      throw new InputError(field, shown(text), `the headings are ${known}`, "name one of these, or a column letter");
    }
    chosen.set(field, column);
  }
  for (const [field, text] of Object.entries(columns)) if (text === null) chosen.set(field, NO_COLUMN);
  return chosen;
}

/** The columns headed with the name of a setting. */
export function settingColumns(
  headings: Headings,
  { settings = [] }: RecogniseOptions,
  chosen: ReadonlyMap<string, number>,
) {
  const found: RecognisedSetting[] = [];
  const ask: Ask[] = [];
  for (const setting of settings) {
    const wanted = wordsOf(setting);
    const said = chosen.get(setting);
    if (said === NO_COLUMN) continue;
    const isField = headingReadings(readHeading(setting)).some(({ strength }) => strength !== "maybe");
    const same = [...headings].filter(([column, heading]) => {
      if (said !== undefined) return column === said;
      return (
        !isField &&
        (heading.words === wanted || wordsOf(heading.text) === wanted) &&
        ![...chosen.values()].includes(column)
      );
    });
    if (same.length > 1) {
      ask.push({
        field: setting,
        candidates: same.map(([column, { text }]) => ({ column, heading: text })),
        reason: "several columns are headed with that setting",
        needed: true,
      });
    } else if (same[0]) {
      const [column, { text, units }] = same[0];
      found.push({ setting, column, heading: text, ...(units[0] === undefined ? {} : { unit: units[0] }) });
    }
  }
  return { found, ask };
}

/** `3` -> `C`: the sheet's own name of a column. */
export function columnLetters(column: number): string {
  let text = "";
  for (let n = column; n > 0; n = Math.floor((n - 1) / 26)) text = String.fromCharCode(65 + ((n - 1) % 26)) + text;
  return text;
}

function columnOf(text: string): number | undefined {
  if (!/^\s*[a-z]{1,3}\s*$/i.test(text)) return undefined;
  return [...text.trim().toUpperCase()].reduce((n, letter) => n * 26 + letter.charCodeAt(0) - 64, 0);
}
