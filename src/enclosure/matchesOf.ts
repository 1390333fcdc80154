import type { Mm } from "../measure/units";
import type { Assembly, Tray } from "./assembly";
import type { PlacedPart } from "./placedPart";
import { extent, type Axis, type Cuboid } from "./space";

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
export const MOST_AT_ONE_END = 2;

export const NOISE_MM: Mm = 1e-6;

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
export function thicknessesOf(part: PlacedPart, assembly: Assembly): readonly Thickness[] {
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

export function countedEnds(
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
