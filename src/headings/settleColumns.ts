import { DIMENSION_WORDS } from "../measure/dimensionWords";
import { isEmpty } from "../measure/blank";
import { kindMeaning, yesOrNo } from "./kindWords";
import { wordsOf } from "./lexicon";
import { NO_COLUMN } from "./namedColumns";
import type { Ask } from "./recognition";
import type { Field } from "./vocabulary/vocabulary";
import { type Candidate, type Candidates, DIRECTIONS } from "./candidates";

/** Decides each field that one column surely is, and asks about the others. */
export function settleColumns(
  candidates: Candidates,
  chosen: ReadonlyMap<string, number>,
  cellsOf: (column: number) => readonly unknown[],
) {
  const columns = new Map<Field, number>();
  const ask: Ask[] = [];
  const of = (field: Field) => candidates.get(field) ?? [];
  const put = (field: Field, found: readonly Candidate[], reason: string) => {
    ask.push({
      field,
      candidates: found.map(({ column, heading }) => ({ column, heading })),
      reason,
      needed: NEEDED.has(field),
    });
  };
  const company = DIRECTIONS.filter(
    (field) => chosen.has(field) || of(field).some((c) => c.strength !== "maybe"),
  ).length;
  const decide = (field: Field): void => {
    const said = chosen.get(field);
    if (said !== undefined) {
      if (said !== NO_COLUMN) columns.set(field, said);
      return;
    }
    const sure = of(field).filter((c) => c.strength === "sure");
    const alone = of(field).filter((c) => c.strength === "letter");
    const usable = sure.length > 0 ? sure : letterFits(field, company, of, chosen) ? alone : [];
    const rank = Math.min(...usable.map((c) => c.rank));
    const best = usable.filter((c) => c.rank === rank);
    if (best.length === 1) columns.set(field, best[0]!.column);
    else if (best.length > 1) put(field, best, "several columns may be it");
    else if (of(field).length > 0) put(field, of(field), of(field)[0]!.doubt ?? "its heading alone leaves that open");
  };
  for (const field of ORDER) decide(field);
  settleDiameter(columns, of("depth"));
  settleLength(columns, of("length"), of("depth"), chosen, put);
  const dimensionsSettled = columns.has("dimensions") && !DIRECTIONS.every((field) => columns.has(field));
  // With all three directions known, or one column of dimension texts, a doubtful other measure is no matter.
  const complete = DIRECTIONS.every((field) => columns.has(field)) || dimensionsSettled;
  const moot = (field: string) =>
    complete &&
    (field === "dimensions" || field === "length" || DIRECTIONS.includes(field as Field)) &&
    of(field as Field).every((c) => c.strength === "maybe");
  const taken = new Set(columns.values());
  const open = ask.filter(
    ({ field, candidates: found }) => !moot(field) && !found.every(({ column }) => taken.has(column)),
  );
  return { columns, ask: chosen.has("box") ? open : boxOrEnclosure(open, columns, of("box"), cellsOf) };
}

/** Whether a single letter may stand for its field: it needs company, and D beside H alone may be a diameter. */
function letterFits(
  field: Field,
  company: number,
  of: (field: Field) => readonly Candidate[],
  chosen: ReadonlyMap<string, number>,
): boolean {
  if (company < ENOUGH) return false;
  const isDiameter = field === "depth" && of("depth").some((c) => c.words === "d" && c.strength === "letter");
  const hasWidth = chosen.has("width") || [...of("width"), ...of("length")].some((c) => c.strength !== "maybe");
  return !isDiameter || hasWidth;
}

const DIAMETERS: ReadonlySet<string> = new Set(DIMENSION_WORDS.diameter.map(wordsOf));

/** The diameter of a round object is its height and width beside a thickness, and its width and depth beside a height. */
function settleDiameter(columns: Map<Field, number>, depths: readonly Candidate[]): void {
  const missing = DIRECTIONS.filter((field) => !columns.has(field));
  const round = depths.filter(({ words }) => DIAMETERS.has(words));
  const isClear = round.length === 1 && missing.length === 2 && missing.includes("width");
  if (isClear && ![...columns.values()].includes(round[0]!.column))
    for (const field of missing) columns.set(field, round[0]!.column);
}

/** Length is the one direction that is missing, where that is clear: L x W x thickness, H x L x thickness; else it is asked about. */
function settleLength(
  columns: Map<Field, number>,
  lengths: readonly Candidate[],
  depths: readonly Candidate[],
  chosen: ReadonlyMap<string, number>,
  put: (field: Field, found: readonly Candidate[], reason: string) => void,
): void {
  const said = chosen.get("length");
  const usable = said === undefined ? lengths.filter((c) => c.strength !== "maybe") : [];
  if (usable.length === 0) return;
  const missing = DIRECTIONS.filter((field) => !columns.has(field) && chosen.get(field) !== NO_COLUMN);
  const [only] = missing;
  if (missing.length === 0) {
    const unsaid = DIRECTIONS.some((field) => !chosen.has(field));
    if (unsaid) put("length", usable, "beside a height, a width and a depth a length may be one of them");
    return;
  }
  const depthAsked = depths.length > 0 && !columns.has("depth");
  if (usable.length === 1 && missing.length === 1 && (only === "height" || only === "width") && !depthAsked) {
    columns.set(only, usable[0]!.column);
    return;
  }
  const reason =
    only === "depth" && missing.length === 1
      ? "beside a height and a width a length may be the depth, or the height of an object whose height is its thickness"
      : "a length may be the height or the width";
  put(only ?? "height", usable, reason);
}

/** Whether a word names one kind of enclosure, or none. */
function isKindWord(cell: string): boolean {
  const meaning = kindMeaning(wordsOf(cell));
  return meaning !== undefined && ("kind" in meaning || "none" in meaning) && yesOrNo(cell) === undefined;
}

/** From this share of cells on a column is what they say. */
const MOSTLY = 0.8;

/** A lone column `box` may mean the kind of box as well as the box that items share. */
function boxOrEnclosure(
  ask: readonly Ask[],
  columns: Map<Field, number>,
  boxes: readonly Candidate[],
  cellsOf: (column: number) => readonly unknown[],
): readonly Ask[] {
  const box = columns.get("box");
  if (box === undefined || columns.has("enclosure") || ask.some(({ field }) => field === "enclosure")) return ask;
  columns.delete("box");
  const filled = cellsOf(box).filter((cell) => !isEmpty(cell));
  const kinds = filled.filter((cell) => typeof cell === "string" && isKindWord(cell));
  if (filled.length > 0 && kinds.length >= filled.length * MOSTLY) {
    columns.set("enclosure", box);
    return ask;
  }
  const reason = "it may be the kind of enclosure, or the box that several items share";
  return [
    ...ask,
    { field: "enclosure", candidates: boxes.map(({ column, heading }) => ({ column, heading })), reason, needed: true },
  ];
}

const ORDER: readonly Field[] = [
  ...DIRECTIONS,
  ...([
    "dimensions",
    "weight",
    "unit",
    "enclosure",
    "quantity",
    "box",
    "identifier",
    "title",
    "priority",
    "batch",
    "hazard",
  ] as const),
];

/** As many directions as a single letter needs for company, itself included. */
const ENOUGH = 2;
const NEEDED: ReadonlySet<string> = new Set([
  "height",
  "width",
  "depth",
  "length",
  "dimensions",
  "weight",
  "unit",
  "enclosure",
  "quantity",
  "box",
]);
