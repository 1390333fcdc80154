import type { Headings } from "./findHeadings";
import { isEmpty } from "../measure/blank";
import { yesOrNo } from "./kindWords";
import { unitWord } from "./lexicon";
import type { Field } from "./vocabulary/vocabulary";

/** A column that may be a field. */
export interface Candidate {
  readonly column: number;
  readonly heading: string;
  readonly words: string;
  readonly strength: "sure" | "letter" | "maybe";
  readonly rank: number;
  readonly doubt?: string;
}

export type Candidates = ReadonlyMap<Field, readonly Candidate[]>;

export const DIRECTIONS: readonly Field[] = ["height", "width", "depth"];

/** What each column may be, by its heading and by what its cells say against it. */
export function candidatesOf(
  headings: Headings,
  cellsOf: (column: number) => readonly unknown[],
  claimed: ReadonlySet<number>,
): Candidates {
  const candidates = new Map<Field, Candidate[]>();
  for (const [column, heading] of headings) {
    if (claimed.has(column)) continue;
    for (const { field, strength, rank } of heading.readings) {
      const doubt = doubtOf(field, cellsOf(column));
      const candidate = { column, heading: heading.text, words: heading.words, rank };
      const whole: Candidate =
        doubt === undefined ? { ...candidate, strength } : { ...candidate, strength: "maybe", doubt };
      candidates.set(field, [...(candidates.get(field) ?? []), whole]);
    }
  }
  return candidates;
}

/** What the cells of a column say against its heading. */
function doubtOf(field: Field, cells: readonly unknown[]): string | undefined {
  const filled = cells.filter((cell) => !isEmpty(cell));
  const share = (fits: (cell: unknown) => boolean) =>
    filled.length === 0 ? 1 : filled.filter(fits).length / filled.length;
  const startsAsMeasure = (cell: unknown) =>
    typeof cell === "number" || (typeof cell === "string" && MEASURE_START.test(cell)) || isDate(cell);
  if (DIRECTIONS.includes(field) || field === "length" || field === "weight" || field === "quantity") {
    if (share(startsAsMeasure) < HALF) return "its cells are no measures";
  }
  if (field === "dimensions" && share((cell) => typeof cell === "string" && /\d\D+\d/.test(cell)) < HALF)
    return "its cells are no dimensions";
  if (field === "unit" && share((cell) => typeof cell === "string" && unitWord(cell) !== undefined) < HALF)
    return "its cells are no units";
  if (
    field === "enclosure" &&
    share((cell) => typeof cell === "string" && yesOrNo(cell) === undefined && !/^\d+$/.test(cell.trim())) < HALF
  ) {
    return "its cells are no kinds of enclosure";
  }
  return undefined;
}

const HALF = 0.5;

const MEASURE_START = /^\s{0,9}(?:c(?:a|irca)?\.?|~|<|>|≈|approx\.?)?\s{0,9}[\d¼½¾⅛⅜⅝⅞⅓⅔]/i;

function isDate(cell: unknown): boolean {
  return typeof cell === "object" && cell !== null && "date" in cell;
}
