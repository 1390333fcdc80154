import { readHeading } from "./headings";
import { unitWord } from "./lexicon";
import { isEmpty } from "../measure/blank";
import { type Headings, vocabularyOf, isGroup } from "./findHeadings";

/** Columns below one heading that names their unit. */
export interface Group {
  readonly from: number;
  readonly to: number;
  readonly unit: string;
}

/** A row of units right below the headings: `cm`, `cm`, `kg`, and no measure. */
export function unitsBelow(rows: readonly (readonly unknown[])[], headingRow: number, headings: Headings) {
  const below = rows[headingRow] ?? [];
  const units = new Map<number, string>();
  let others = 0;
  for (const column of headings.keys()) {
    const cell = below[column - 1];
    if (isEmpty(cell)) continue;
    const unit = typeof cell === "string" ? unitWord(cell.replace(/^[([（]|[)\]）]$/g, "")) : undefined;
    if (unit === undefined) others++;
    else if (headings.get(column)!.readings.some(({ field }) => field !== "unit")) units.set(column, unit);
  }
  const isUnitsRow = headingRow > 0 && units.size > 0 && others === 0;
  return { units: isUnitsRow ? units : new Map<number, string>(), firstRow: headingRow + (isUnitsRow ? 2 : 1) };
}

/** The unit that a heading above says for the columns below it. */
export function groupsAbove(
  rows: readonly (readonly unknown[])[],
  headingRow: number,
  headings: Headings,
): readonly Group[] {
  const above = rows[headingRow - 2] ?? [];
  const last = [...headings.keys()].reduce((most, column) => Math.max(most, column), 0);
  return above.flatMap((cell, c) => {
    if (!isGroup(cell, above)) return [];
    const [unit, ...more] = readHeading(cell, vocabularyOf(above)).units;
    const next = above.findIndex((other, i) => i > c && !isEmpty(other));
    return unit === undefined || more.length > 0 ? [] : [{ from: c + 1, to: next < 0 ? last : next, unit }];
  });
}

/** Units that a title above the headings gives for all: `all measurements in inches`. Two of a kind say nothing. */
export function unitsOfTitle(rows: readonly (readonly unknown[])[], headingRow: number): ReadonlySet<string> {
  const found = new Set<string>();
  for (const row of rows.slice(0, Math.max(0, headingRow - 1)))
    for (const cell of row) {
      if (typeof cell !== "string" || cell.length > LONGEST_TITLE) continue;
      for (const [, word] of cell.normalize("NFKC").matchAll(TITLE_UNIT)) {
        const unit = unitWord(word!);
        if (unit !== undefined) found.add(unit);
      }
    }
  return found;
}

const LONGEST_TITLE = 200;

/** A unit behind a word such as `in`, or alone in brackets. */
const TITLE_UNIT =
  /(?:(?<!\p{L})(?:in|en|em|i|w|в|units?:?|unit =|بـ?|单位[:：]?)\s{0,3}(?=[\s(]|\p{Script=Han})\s{0,3}\(?|[（(])(\p{L}{1,14}|")\.?(?!\p{L})/giu;
