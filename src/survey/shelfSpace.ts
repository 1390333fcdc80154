import { itemOnShelf, onShelf, type ShelfRoom } from "../item/onShelf";
import type { Cell } from "../item/answers";
import { cellText, isBlank } from "../measure/blank";
import { nearestMark } from "../measure/benchLength";
import { formatLengthWithUnit } from "../measure/formatLength";
import { areaIn, fromMm, MM_PER, type Mm } from "../measure/units";
import type { Settings } from "../settings/schema";
import { columnNamed } from "./columnNamed";
import { problemRows } from "./problemRows";
import type { SizedSurvey } from "./sizeSurvey";
import type { SurveyCells } from "./surveyAnswers";

/** Enclosures of one shelf that are kept the same way and as high as each other. */
export interface ShelfGroup {
  /** What the survey's column `shelf` says; empty where it has none. */
  readonly shelf: string;
  readonly upright: boolean;
  /** The shelf height that takes them; undefined where they are too tall for every one. */
  readonly height: Mm | undefined;
  readonly enclosures: number;
  /** Of what stands, metres (feet) of shelf; of what lies, square metres (feet): without enclosures and with them. */
  readonly now: number;
  readonly boxed: number;
}

export interface ShelfSpace {
  readonly groups: readonly ShelfGroup[];
  readonly tooTall: readonly { readonly identifier: string; readonly high: Mm }[];
}

/** Bands of height where the shop names no shelves. */
const BAND_MM: Mm = 100;
const BAND_IN = 4;

/**
 * The room that a survey takes in the store, now and when boxed: by shelf, by how it is kept, by height.
 *
 * Copies count; objects that share a box lie one on another. A group's sums are rounded to the hundredth, as printed.
 */
export function shelfSpace(survey: SizedSurvey, cells: SurveyCells): ShelfSpace {
  const { settings, outcomes } = survey;
  const heights = [...settings.shelfHeight].sort((one, other) => one - other);
  const column = columnNamed("shelf", survey.survey, cells);
  const groups = new Map<string, ShelfGroup>();
  const tooTall: ShelfSpace["tooTall"][number][] = [];
  survey.survey.items.forEach(({ identifier, row }, index) => {
    const outcome = outcomes[index]!;
    if (outcome.state !== "sized") return;
    const { sized, quantity } = outcome;
    const boxed = onShelf(sized);
    const cell = column === undefined ? "" : cells[row - 1]?.[column];
    const shelf = column === undefined ? "" : isBlank(cell) ? NO_SHELF : cellText(cell);
    const height = heights.length === 0 ? bandOf(boxed.high, settings) : heights.find((each) => each >= boxed.high);
    if (height === undefined) tooTall.push({ identifier, high: boxed.high });
    const key = JSON.stringify([shelf, boxed.upright, height]);
    const known = groups.get(key) ?? { shelf, upright: boxed.upright, height, enclosures: 0, now: 0, boxed: 0 };
    groups.set(key, {
      ...known,
      enclosures: known.enclosures + quantity,
      now: known.now + quantity * taken(itemOnShelf(sized), settings),
      boxed: known.boxed + quantity * taken(boxed, settings),
    });
  });
  return {
    groups: [...groups.values()]
      .map((group) => ({ ...group, now: hundredth(group.now), boxed: hundredth(group.boxed) }))
      .sort(inOrder),
    tooTall,
  };
}

export const SHELF_HEADINGS = ["shelf", "kept", "shelf height", "enclosures", "now", "boxed", "more", "unit"] as const;

/** The same as a table: groups, totals of what stands and of what lies, what is too tall, and rows that have no size. */
export function shelfTable(survey: SizedSurvey, cells: SurveyCells): readonly (readonly Cell[])[] {
  const space = shelfSpace(survey, cells);
  return [...shelfRows(space, survey.settings), ...tooTallRows(space, survey.settings), ...problemRows(survey)];
}

/** Headings, groups and totals. */
export function shelfRows({ groups }: ShelfSpace, settings: Settings): readonly (readonly Cell[])[] {
  const length = (mm: Mm) => formatLengthWithUnit(mm, settings.answerUnit);
  return [
    SHELF_HEADINGS,
    ...groups.map((group) => groupRow(group, group.height === undefined ? TOO_TALL : length(group.height), settings)),
    ...[true, false].flatMap((upright) => {
      const total = shelfTotal({ groups }, upright);
      return total === undefined ? [] : [groupRow({ ...total, shelf: "total", height: undefined }, "", settings)];
    }),
  ];
}

type ShelfTotal = Pick<ShelfGroup, "upright" | "enclosures" | "now" | "boxed"> & { readonly more: number };

/** Sums of what stands upright, or of what lies flat; undefined where nothing does. */
export function shelfTotal({ groups }: Pick<ShelfSpace, "groups">, upright: boolean): ShelfTotal | undefined {
  const own = groups.filter((group) => group.upright === upright);
  if (own.length === 0) return undefined;
  const sum = (of: "enclosures" | "now" | "boxed") => hundredth(own.reduce((total, group) => total + group[of], 0));
  const [now, boxed] = [sum("now"), sum("boxed")];
  return { upright, enclosures: sum("enclosures"), now, boxed, more: hundredth(boxed - now) };
}

/** What stands higher than every shelf, under a heading; none where all fit. */
export function tooTallRows({ tooTall }: ShelfSpace, settings: Settings): readonly (readonly Cell[])[] {
  if (tooTall.length === 0) return [];
  const { answerUnit: unit } = settings;
  const highest = formatLengthWithUnit(Math.max(...settings.shelfHeight), unit);
  return [
    [TOO_TALL, "reason"],
    ...tooTall.map(({ identifier, high }) => [
      identifier,
      `${nearestMark(high, unit)} ${unit} high; the highest shelf is ${highest}`,
    ]),
  ];
}

const NO_SHELF = "not given";
const TOO_TALL = "too tall";

function groupRow(
  { shelf, upright, enclosures, now, boxed }: ShelfGroup,
  height: string,
  { answerUnit: unit }: Settings,
): readonly Cell[] {
  const lengths = unit === "in" ? "ft" : "m";
  return [
    shelf === "" ? "all" : shelf,
    upright ? "upright" : "flat",
    height,
    enclosures,
    now,
    boxed,
    hundredth(boxed - now),
    upright ? lengths : `${lengths}2`,
  ];
}

/** In metres or feet, or their squares. */
function taken({ upright, along, deep }: ShelfRoom, { answerUnit: unit }: Settings): number {
  if (!upright) return areaIn((along / MM_PER.m) * (deep / MM_PER.m), unit);
  return fromMm(along, unit === "in" ? "ft" : "m");
}

function bandOf(high: Mm, { answerUnit: unit }: Settings): Mm {
  const step = unit === "in" ? BAND_IN * MM_PER.in : BAND_MM;
  return Math.ceil(high / step - NOISE) * step;
}

const NOISE = 1e-9;

function hundredth(amount: number): number {
  return Math.round(amount * 100 + NOISE) / 100;
}

function inOrder(one: ShelfGroup, other: ShelfGroup): number {
  return (
    (one.shelf < other.shelf ? -1 : one.shelf > other.shelf ? 1 : 0) ||
    Number(other.upright) - Number(one.upright) ||
    (one.height ?? Infinity) - (other.height ?? Infinity)
  );
}
