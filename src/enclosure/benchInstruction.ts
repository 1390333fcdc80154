import { formatLength } from "../measure/formatLength";
import type { Mm, WorkbookUnit } from "../measure/units";
import type { Assembly, Tray } from "./assembly";
import type { Part } from "./part";
import type { Folds, PlacedPart } from "./placedPart";
import { extent, X, Y, Z, type Axis, type Cuboid } from "./space";

/**
 * How a part is cut at the bench by matching it to what is cut already: `match the base; add 2 boards`.
 *
 * Read off the assembly: each direction of the part is laid against the inside of its tray and against the parts cut
 * before it, and what is over at either end is told in boards and cards.
 */
export function benchInstruction(part: Part, assembly: Assembly, unit: WorkbookUnit): string {
  const { placed } = part;
  if (placed === undefined) return part.note;
  const instructions = [...plyWords(part), ...cornerWords(part, unit)];
  if (placed.lengthAxis !== undefined && placed.widthAxis !== undefined) {
    const tray = assembly.trays.find((each) => each.name === placed.tray);
    const cut = assembly.parts.slice(0, assembly.parts.indexOf(placed)).filter((each) => each.tray === placed.tray);
    const along = against(placed, placed.lengthAxis, cut, tray, assembly);
    const across = against(placed, placed.widthAxis, cut, tray, assembly);
    instructions.push(...matchWords(along, across, placed, unit));
  }
  if (placed.role === "card") {
    const size = `${formatLength(placed.length, unit)} x ${formatLength(placed.width, unit)}`;
    instructions.push(`cut over on every edge, glue on, trim flush to ${size}`);
  }
  return instructions.join("; ");
}

interface MatchedPart {
  /** A part's full name; `inside` for the tray's clear space; undefined where nothing cut before helps. */
  readonly reference: string | undefined;
  /** `add 2 boards`; empty where it is cut to match. */
  readonly difference: string;
  /** Size of the reference. */
  readonly measure: Mm;
  readonly axis: Axis;
}

/** At one end of a part, at the most this many thicknesses beyond its reference. */
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
  let best: MatchedPart = { reference: undefined, difference: "", measure: 0, axis };
  let least = Infinity;
  for (const { name, body: other } of references) {
    const ends = [other.min[axis] - body.min[axis], body.max[axis] - other.max[axis]] as const;
    const over = tellEnds(ends, thicknesses);
    if (over === undefined) continue;
    // A part cut before is better to match than a measure, and fewer thicknesses than more.
    const cost = over.thicknesses + (name === "inside" ? 0.5 : 0);
    if (cost >= least) continue;
    least = cost;
    best = { reference: name, difference: over.words, measure: extent(other, axis), axis };
  }
  return best;
}

interface Thickness {
  readonly word: string;
  readonly caliper: Mm;
}

function thicknessesOf(part: PlacedPart, assembly: Assembly): readonly Thickness[] {
  const words = new Map<string, Mm>();
  const wall = assembly.parts.find((each) => each.role === "wall")?.board.caliper;
  if (wall !== undefined) words.set("board", wall);
  for (const { role, board } of assembly.parts) {
    if (role === "base" && board.caliper !== wall) words.set("base board", board.caliper);
    if (role === "card") words.set("card", board.caliper);
  }
  if (part.role === "case") words.set("case board", part.board.caliper);
  return [...words].map(([word, caliper]) => ({ word, caliper }));
}

function tellEnds(
  ends: readonly [Mm, Mm],
  thicknesses: readonly Thickness[],
): { readonly words: string; readonly thicknesses: number } | undefined {
  const totals = new Map<string, number>();
  for (const end of ends) {
    const told = tellEnd(end, thicknesses);
    if (told === undefined) return undefined;
    if (told.count !== 0) totals.set(told.word, (totals.get(told.word) ?? 0) + told.count);
  }
  const words = [...totals]
    .filter(([, count]) => count !== 0)
    .map(
      ([word, count]) =>
        `${count > 0 ? "add" : "take away"} ${Math.abs(count)} ${word}${Math.abs(count) === 1 ? "" : "s"}`,
    );
  return {
    words: words.join(", "),
    thicknesses: [...totals.values()].reduce((sum, count) => sum + Math.abs(count), 0),
  };
}

function tellEnd(end: Mm, thicknesses: readonly Thickness[]): { word: string; count: number } | undefined {
  if (Math.abs(end) < NOISE_MM) return { word: "", count: 0 };
  for (const { word, caliper } of thicknesses) {
    const count = Math.round(end / caliper);
    if (count !== 0 && Math.abs(count) <= MOST_AT_ONE_END && Math.abs(end - count * caliper) < NOISE_MM)
      return { word, count };
  }
  return undefined;
}

const AXIS_WORDS: Readonly<Record<Axis, string>> = { [X]: "width", [Y]: "height", [Z]: "depth" };

/** The two directions of a part in words: the run of a wall and its height, or the two sides of a flat part. */
function matchWords(along: MatchedPart, across: MatchedPart, part: PlacedPart, unit: WorkbookUnit): readonly string[] {
  if (along.reference === undefined && across.reference === undefined) return ["cut to size"];
  if (along.reference === across.reference && along.difference === across.difference) {
    const both = along.difference === "" ? "" : `; ${along.difference} each way`;
    if (along.reference !== "inside") return [`match the ${along.reference}${both}`];
    return [`inside ${formatLength(along.measure, unit)} x ${formatLength(across.measure, unit)}${both}`];
  }
  const [first, second] = part.role === "wall" ? ["", "height: "] : ["length: ", "width: "];
  return [`${first}${told(along, unit)}`, `${second}${told(across, unit)}`];
}

function told({ reference, difference, measure, axis }: MatchedPart, unit: WorkbookUnit): string {
  if (reference === undefined) return "cut to size";
  const start =
    reference === "inside" ? `inside ${AXIS_WORDS[axis]} ${formatLength(measure, unit)}` : `match the ${reference}`;
  return difference === "" ? start : `${start}; ${difference}`;
}

function plyWords({ plies }: Part): readonly string[] {
  return plies === 1 ? [] : [`laminate first: ${plies} plies, same grain, press flat; then trim to size`];
}

function cornerWords({ corners, folds }: Part, unit: WorkbookUnit): readonly string[] {
  const shown = (size: Mm) => formatLength(size, unit);
  const words: string[] = [];
  if (folds.alongLength.length + folds.alongWidth.length > 0) words.push(FOLDING[folds.by]);
  if (corners?.form === "notch")
    words.push(`cut away the corners, ${shown(corners.alongLength)} along the length by ${shown(corners.alongWidth)}`);
  if (corners?.form === "tab")
    words.push(
      `leave tabs ${shown(corners.long)} long and ${shown(corners.high)} high on the head walls, creased ${shown(corners.creasesApart)} apart`,
    );
  return words;
}

const FOLDING: Readonly<Record<Folds["by"], string>> = {
  cut: "cut part-way through at the folds, on the outside",
  crease: "crease at the folds",
};
