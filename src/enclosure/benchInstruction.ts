import { benchLength } from "../measure/benchLength";
import type { Mm, WorkbookUnit } from "../measure/units";
import type { Assembly, Tray } from "./assembly";
import type { Part } from "./part";
import type { Folds, PlacedPart } from "./placedPart";
import { extent, X, Y, Z, type Axis, type Cuboid } from "./space";

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

/** A direction of a part as it is matched: a reference, and thicknesses added or taken away. */
export interface MatchedPart {
  /** A part's name; `inside` for the tray's clear space; undefined where nothing cut before helps. */
  readonly reference: string | undefined;
  /** None where it is cut to match. */
  readonly terms: readonly MatchTerm[];
  /** Size of the reference. */
  readonly measure: Mm;
  readonly axis: Axis;
}

export interface MatchTerm {
  /** Below zero where thicknesses are taken away. */
  readonly count: number;
  readonly thickness: Thickness;
}

/** How both directions of a flat part are matched; undefined for one that is folded up. */
export function matchesOf(
  placed: PlacedPart,
  assembly: Assembly,
): readonly [along: MatchedPart, across: MatchedPart] | undefined {
  if (placed.lengthAxis === undefined || placed.widthAxis === undefined) return undefined;
  const tray = assembly.trays.find((each) => each.name === placed.tray);
  const cut = assembly.parts.slice(0, assembly.parts.indexOf(placed)).filter((each) => each.tray === placed.tray);
  return [
    against(placed, placed.lengthAxis, cut, tray, assembly),
    against(placed, placed.widthAxis, cut, tray, assembly),
  ];
}

/** At one end of a part, at most this many thicknesses beyond its reference. */
const MOST_AT_ONE_END = 2;
const NOISE_MM: Mm = 1e-6;

function against(
  part: PlacedPart,
  axis: Axis,
  cut: readonly PlacedPart[],
  tray: Tray | undefined,
  assembly: Assembly,
): MatchedPart {
  const body = part.panels[0]!;
  const thicknesses = thicknessesOf(part, assembly);
  const references: { readonly name: string; readonly body: Cuboid }[] = cut
    .filter((each) => each.lengthAxis === axis || each.widthAxis === axis)
    .map((each) => ({ name: each.name, body: each.panels[0]! }));
  if (tray !== undefined) references.unshift({ name: "inside", body: tray.inside });
  let best: MatchedPart = { reference: undefined, terms: [], measure: 0, axis };
  let least = Infinity;
  for (const { name, body: other } of references) {
    const ends: readonly [End, End] = [
      [other.min[axis], body.min[axis]],
      [body.max[axis], other.max[axis]],
    ];
    const over =
      ends.every(isLevel) || ends.some((end) => !isLevel(end) && isBuilt(end, axis, assembly))
        ? countedEnds([ends[0][0] - ends[0][1], ends[1][0] - ends[1][1]], thicknesses)
        : undefined;
    if (over === undefined) continue;
    // A part cut before is better to match than a measure, and fewer thicknesses than more.
    const cost = over.thicknesses + (name === "inside" ? 0.5 : 0);
    if (cost >= least) continue;
    least = cost;
    best = { reference: name, terms: over.terms, measure: extent(other, axis), axis };
  }
  return best;
}

type End = readonly [one: Mm, other: Mm];

function isLevel([one, other]: End): boolean {
  return Math.abs(one - other) < NOISE_MM;
}

/** Whether boards stand from one place to another: a relief of the same size as a board is not spoken of as a board. */
function isBuilt(end: End, axis: Axis, { parts }: Assembly): boolean {
  const [from, to] = [Math.min(...end) - NOISE_MM, Math.max(...end) + NOISE_MM];
  const within = parts.flatMap(({ panels }) => panels).filter(({ min, max }) => min[axis] >= from && max[axis] <= to);
  return (
    within.some(({ min }) => min[axis] < from + 2 * NOISE_MM) && within.some(({ max }) => max[axis] > to - 2 * NOISE_MM)
  );
}

/** A board or card as it is spoken of at the bench. */
export interface Thickness {
  readonly word: string;
  readonly stock: string;
  readonly caliper: Mm;
}

/** What may be added or taken away when a part is matched: the boards and cards of an assembly. */
function thicknessesOf(part: PlacedPart, assembly: Assembly): readonly Thickness[] {
  const found = new Map<string, Thickness>();
  const put = (word: string, { stock, caliper }: PlacedPart["board"]) => found.set(word, { word, stock, caliper });
  const wall = assembly.parts.find((each) => each.role === "wall")?.board;
  if (wall !== undefined) put("board", wall);
  for (const { role, board } of assembly.parts) {
    if (role === "base" && board.caliper !== wall?.caliper) put("base board", board);
    if (role === "card") put("card", board);
  }
  if (part.role === "case") put("case board", part.board);
  return [...found.values()];
}

function countedEnds(
  ends: readonly [Mm, Mm],
  thicknesses: readonly Thickness[],
): { readonly terms: readonly MatchTerm[]; readonly thicknesses: number } | undefined {
  const totals = new Map<Thickness, number>();
  for (const end of ends) {
    if (Math.abs(end) < NOISE_MM) continue;
    const counted = countedEnd(end, thicknesses);
    if (counted === undefined) return undefined;
    totals.set(counted.thickness, (totals.get(counted.thickness) ?? 0) + counted.count);
  }
  const terms = [...totals].filter(([, count]) => count !== 0).map(([thickness, count]) => ({ thickness, count }));
  return { terms, thicknesses: terms.reduce((sum, { count }) => sum + Math.abs(count), 0) };
}

function countedEnd(end: Mm, thicknesses: readonly Thickness[]): MatchTerm | undefined {
  for (const thickness of thicknesses) {
    const count = Math.round(end / thickness.caliper);
    if (count !== 0 && Math.abs(count) <= MOST_AT_ONE_END && Math.abs(end - count * thickness.caliper) < NOISE_MM)
      return { thickness, count };
  }
  return undefined;
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
