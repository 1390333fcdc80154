import { benchLength } from "../measure/benchLength";
import type { Mm, WorkbookUnit } from "../measure/units";
import type { Assembly } from "./assembly";
import type { Part } from "./part";
import type { Folds, PlacedPart } from "./placedPart";
import { X, Y, Z, type Axis } from "./space";
import { type MatchedPart, type MatchTerm, matchesOf } from "./matchesOf";

/**
 * How a part is cut at the bench by matching it to what is cut already: `match the base; add 2 boards`.
 *
 * Read off the assembly: each direction of the part is laid against the inside of its tray and against the parts cut
 * before it, and what extends past either end is given in boards and cards.
 */
export function benchInstruction(part: Part, assembly: Assembly, unit: WorkbookUnit): string {
  const { placed } = part;
  if (part.joined !== undefined) return joinWords(part, part.joined, unit);
  if (placed === undefined) return part.note;
  const matches = matchesOf(placed, assembly);
  const matched = matches === undefined ? [] : matchWords(...matches, placed, unit);
  return [...plyWords(part), ...cornerWords(part, unit), ...matched, ...trimWords(placed, unit)].join("; ");
}

/** How a board is joined from pieces. Common practice, no source. */
export function joinWords(
  { plies }: Part,
  { length, width }: Pick<Part, "length" | "width">,
  unit: WorkbookUnit,
): string {
  const how =
    plies === 1
      ? "butt, bridge the joint with a strip of card"
      : "turn every other ply end for end, so that joints lie apart";
  return `join to ${benchLength(length, unit)} x ${benchLength(width, unit)}: ${how}; trim to size`;
}

/** What is done to a part after it is cut to size: folds, corners, trimming. */
export function workWords(part: Part, unit: WorkbookUnit): readonly string[] {
  return part.placed === undefined
    ? [part.note].filter((note) => note !== "")
    : [...plyWords(part), ...cornerWords(part, unit), ...trimWords(part.placed, unit)];
}

function trimWords({ role, length, width }: PlacedPart, unit: WorkbookUnit): readonly string[] {
  const size = `${benchLength(length, unit)} x ${benchLength(width, unit)}`;
  return role === "card" ? [`cut over on every edge, glue on, trim flush to ${size}`] : [];
}

/** `add 2 boards`; empty where it is cut to match. */
function differenceWords(terms: readonly MatchTerm[]): string {
  return terms
    .map(
      ({ count, thickness: { word } }) =>
        `${count > 0 ? "add" : "take away"} ${Math.abs(count)} ${word}${Math.abs(count) === 1 ? "" : "s"}`,
    )
    .join(", ");
}

const AXIS_WORDS: Readonly<Record<Axis, string>> = { [X]: "width", [Y]: "height", [Z]: "depth" };

/** The two directions of a part in words: the run of a wall and its height, or the two sides of a flat part. */
function matchWords(along: MatchedPart, across: MatchedPart, part: PlacedPart, unit: WorkbookUnit): readonly string[] {
  if (along.reference === undefined && across.reference === undefined) return ["cut to size"];
  const difference = differenceWords(along.terms);
  if (along.reference === across.reference && difference === differenceWords(across.terms)) {
    const both = difference === "" ? "" : `; ${difference} each way`;
    if (along.reference !== "inside") return [`match the ${along.reference}${both}`];
    return [`inside ${benchLength(along.measure, unit)} x ${benchLength(across.measure, unit)}${both}`];
  }
  const [first, second] = part.role === "wall" ? ["", "height: "] : ["length: ", "width: "];
  return [`${first}${matchText(along, unit)}`, `${second}${matchText(across, unit)}`];
}

function matchText({ reference, terms, measure, axis }: MatchedPart, unit: WorkbookUnit): string {
  const difference = differenceWords(terms);
  if (reference === undefined) return "cut to size";
  const start =
    reference === "inside" ? `inside ${AXIS_WORDS[axis]} ${benchLength(measure, unit)}` : `match the ${reference}`;
  return difference === "" ? start : `${start}; ${difference}`;
}

/** How a laminated board is made. */
export function plyWords({ plies }: Pick<Part, "plies">): readonly string[] {
  return plies === 1 ? [] : [`laminate first: ${plies} plies, same grain, press flat; then trim to size`];
}

function cornerWords({ corners, folds }: Part, unit: WorkbookUnit): readonly string[] {
  const shown = (size: Mm) => benchLength(size, unit);
  const words: string[] = [];
  if (folds.alongLength.length + folds.alongWidth.length > 0) words.push(FOLDING[folds.by]);
  if (corners?.form === "notch")
    words.push(`cut away the corners, ${shown(corners.alongLength)} along the length by ${shown(corners.alongWidth)}`);
  if (corners?.form === "tab")
    words.push(
      `leave tabs ${shown(corners.long)} long and ${shown(corners.high)} high on the head walls, creased ${shown(corners.creasesApart)} apart`,
    );
  if (corners?.form === "end tab")
    words.push(
      `leave tabs ${shown(corners.long)} long and ${shown(corners.high)} high on the head walls, creased ${shown(corners.crease)} from the open end`,
    );
  if (corners?.form === "edge cuts")
    words.push(
      "cut away both edges in steps, as drawn",
      ...corners.tabs.map(({ name, long, high }) => `${name} tabs ${shown(long)} long and ${shown(high)} high`),
    );
  return words;
}

const FOLDING: Readonly<Record<Folds["by"], string>> = {
  cut: "cut part-way through at the folds, on the outside",
  crease: "crease at the folds",
};
