import type { Cell } from "../../item/answers";
import { neededClear } from "../../item/readyMade";
import type { Sized } from "../../item/sizeItem";
import { enlarged, insideOf } from "../../item/standardSize";
import { areaIn, fromMm, tidy, type Mm } from "../../measure/units";
import { MADE_TO_MEASURE } from "../../settings/definitions/shelfSettings";
import { plainName } from "../../settings/names";
import type { Settings } from "../../settings/schema";
import { readSizesList } from "../../settings/sizesList";
import { problemRows } from "../problemRows";
import type { SizedSurvey } from "../sizeSurvey";
import type { EffortBudget } from "./effort";
import { readyMadeList, readyMadeSizes, type ReadyMadeSizes } from "./readyMadeSizes";
import { fits } from "./sizesProblem";
import { boardM2, surveySizes, toOwnMeasure, type SurveySizes } from "./surveySizes";

export const SIZES_HEADINGS = [
  "size",
  "enclosure",
  "height",
  "width",
  "depth",
  "items",
  "board each",
  "total",
  "fillers",
  "least possible",
  "board",
] as const;

/** The sizes, then rows that cannot be sized. */
export function sizesTable(survey: SizedSurvey, found: SurveySizes): readonly (readonly Cell[])[] {
  return [...sizesRows(survey, found), ...problemRows(survey)];
}

/** A row a size; then what no size holds, the totals with what is proved, and what each made to its own measure takes. */
export function sizesRows({ settings }: SizedSurvey, found: SurveySizes): readonly (readonly Cell[])[] {
  const { answerUnit: unit } = settings;
  const length = (mm: Mm) => tidy(fromMm(mm, unit));
  const area = (m2: number) => tidy(areaIn(m2, unit));
  const blanks = ["", "", "", ""];
  const { sizes, toMeasure, totalM2, leastM2, ownM2 } = found;
  const all = sizes.reduce((sum, { enclosures }) => sum + enclosures, 0) + toMeasure.enclosures;
  const fillers = sizes.reduce((sum, size) => sum + size.fillers, 0);
  return [
    withUnit(SIZES_HEADINGS, settings),
    ...sizes.map((size) => [
      size.name,
      size.enclosure,
      ...[size.height, size.width, size.depth].map(length),
      size.enclosures,
      area(size.boardM2),
      area(size.boardM2 * size.enclosures),
      size.fillers,
      "",
      size.board,
    ]),
    ...(toMeasure.enclosures === 0
      ? []
      : [[MADE_TO_MEASURE, ...blanks, toMeasure.enclosures, "", area(toMeasure.boardM2), "", "", ""]]),
    ["total", ...blanks, all, "", area(totalM2), fillers, area(leastM2), ""],
    ["each to its own measure", ...blanks, all, "", area(ownM2), 0, "", ""],
  ];
}

export const READY_MADE_HEADINGS = [
  ...["size", "enclosure", "height", "width", "depth", "items", "price", "total", "fillers", "least possible"],
] as const;

/** A table of sizes is read again as a list: its lengths carry their unit where it is not that of the survey. */
function withUnit(headings: readonly string[], { surveyUnit, answerUnit }: Settings): readonly string[] {
  if (answerUnit === surveyUnit) return headings;
  return headings.map((heading) => (SIDES.has(heading) ? `${heading} (${answerUnit})` : heading));
}

const SIDES: ReadonlySet<string> = new Set(["height", "width", "depth"]);

/** The sizes of a ready-made list: a row a size, then what goes into none, and the totals with what is proved. */
export function readyMadeRows({ settings }: SizedSurvey, found: ReadyMadeSizes): readonly (readonly Cell[])[] {
  const length = (mm: Mm) => tidy(fromMm(mm, settings.answerUnit));
  const blanks = ["", "", "", ""];
  const { sizes, toMeasure, total, least } = found;
  const all = sizes.reduce((sum, { enclosures }) => sum + enclosures, 0) + toMeasure.enclosures;
  const fillers = sizes.reduce((sum, size) => sum + size.fillers, 0);
  return [
    withUnit(READY_MADE_HEADINGS, settings),
    ...sizes.map(({ listed: { name, enclosure, height, width, depth, price }, enclosures, fillers: own }) => [
      ...[name, enclosure, ...[height, width, depth].map(length)],
      ...[enclosures, price, tidy(price * enclosures), own, ""],
    ]),
    ...(toMeasure.enclosures === 0 ? [] : [[MADE_TO_MEASURE, ...blanks, toMeasure.enclosures, "", "", "", ""]]),
    ["total", ...blanks, all, "", tidy(total), fillers, tidy(least)],
  ];
}

/** The answer of `ENC.SIZES`: of the ready-made list where the settings hold one, else sizes to make. */
export function sizesAnswer(survey: SizedSurvey, count: number, budget: EffortBudget): readonly (readonly Cell[])[] {
  const list = readyMadeList(survey.settings.sizes);
  if (list.length === 0) return sizesTable(survey, surveySizes(survey, count, budget));
  return [...readyMadeRows(survey, readyMadeSizes(survey, list, count, budget)), ...problemRows(survey)];
}

/**
 * The standard size that an item goes into, by name: of those of its kind that hold it, the one that takes least board,
 * or that costs least where the table has a column `price`; of equals the first by name.
 *
 * @param table with the headings size, enclosure, height, width and depth: inside sizes in the workbook's unit
 * @returns the name, or `made to measure` where none holds it
 * @throws InputError when a heading is missing or a size cannot be read
 */
export function sizeNamed(given: Sized, table: unknown): string {
  const sized = toOwnMeasure(given);
  const { settings, kind, assembly } = sized;
  const slack = settings.slack === 0 ? undefined : settings.slack;
  const rows = (Array.isArray(table) ? table : [[table]]) as readonly (readonly unknown[])[];
  const list = readSizesList(rows, settings.surveyUnit);
  // A box that is bought has no covering of ours inside.
  const need = { ...(readyMadeList(list).length > 0 ? neededClear(sized) : insideOf(assembly)), group: 0 };
  const held = list
    .filter(({ enclosure }) => plainName(enclosure) === plainName(kind.name))
    .map((each) => ({ ...each, size: { group: 0, x: each.width, y: each.height, z: each.depth } }))
    .filter(({ size }) => fits(need, size, slack))
    .map(({ name, size, price }) => ({ name, cost: price ?? boardM2(enlarged(sized, size)) }))
    .sort((one, other) => one.cost - other.cost || (one.name < other.name ? -1 : 1));
  return held[0]?.name ?? MADE_TO_MEASURE;
}
