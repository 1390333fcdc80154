import type { Cell } from "../../item/answers";
import type { Sized } from "../../item/sizeItem";
import { isBlank } from "../../measure/blank";
import { InputError, shown } from "../../measure/errors";
import { readLength } from "../../measure/readLength";
import { areaIn, fromMm, tidy, type Mm } from "../../measure/units";
import { listed, plainName } from "../../settings/names";
import type { Settings } from "../../settings/schema";
import { problemRows } from "../problemRows";
import type { SizedSurvey } from "../sizeSurvey";
import { fits, type InsideSize } from "./sizesProblem";
import { boardM2, enlarged, insideOf, type SurveySizes } from "./surveySizes";

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

/** What a row says that goes into no size. */
export const MADE_TO_MEASURE = "made to measure";

/** The sizes, then rows that cannot be sized. */
export function sizesTable(survey: SizedSurvey, found: SurveySizes): readonly (readonly Cell[])[] {
  return [...sizesRows(survey, found), ...problemRows(survey)];
}

/** A row a size; then what no size holds, the totals with what is proved, and what each made to its own measure takes. */
export function sizesRows({ settings }: SizedSurvey, found: SurveySizes): readonly (readonly Cell[])[] {
  const { unit } = settings;
  const length = (mm: Mm) => tidy(fromMm(mm, unit));
  const area = (m2: number) => tidy(areaIn(m2, unit));
  const blanks = ["", "", "", ""];
  const { sizes, toMeasure, totalM2, leastM2, ownM2 } = found;
  const all = sizes.reduce((sum, { enclosures }) => sum + enclosures, 0) + toMeasure.enclosures;
  const fillers = sizes.reduce((sum, size) => sum + size.fillers, 0);
  return [
    SIZES_HEADINGS,
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

/**
 * The standard size that an item goes into, by name: of those of its kind that hold it, the one that takes least board,
 * or that costs least where the table has a column `price`; of equals the first by name.
 *
 * @param table with the headings size, enclosure, height, width and depth: inside sizes in the workbook's unit
 * @returns the name, or `made to measure` where none holds it
 * @throws InputError when a heading is missing or a size cannot be read
 */
export function sizeNamed(sized: Sized, table: unknown): string {
  const { settings, kind, assembly } = sized;
  const need = insideOf(assembly);
  const slack = settings.slack === 0 ? undefined : settings.slack;
  const held = readSizes(table, settings)
    .filter(({ enclosure, size }) => plainName(enclosure) === plainName(kind.name) && fits(need, size, slack))
    .map(({ name, size, price }) => ({ name, cost: price ?? boardM2(enlarged(sized, size)) }))
    .sort((one, other) => one.cost - other.cost || (one.name < other.name ? -1 : 1));
  return held[0]?.name ?? MADE_TO_MEASURE;
}

interface TableSize {
  readonly name: string;
  readonly enclosure: string;
  readonly size: InsideSize;
  readonly price: number | undefined;
}

const NEEDED = ["size", "enclosure", "height", "width", "depth"] as const;

function readSizes(table: unknown, { unit }: Settings): readonly TableSize[] {
  const rows = (Array.isArray(table) ? table : [[table]]) as readonly (readonly unknown[])[];
  const headings = (rows[0] ?? []).map((cell) => (typeof cell === "string" ? plainName(cell) : ""));
  const missing = NEEDED.filter((heading) => !headings.includes(heading));
  if (missing.length > 0)
    throw new InputError(
      "sizes",
      `a range without ${listed(missing, "and")}`,
      `give a table with the headings ${listed(NEEDED, "and")}`,
      "such as the answer of ENC.SIZES, its headings included",
    );
  const at = (row: readonly unknown[], heading: string): unknown => row[headings.indexOf(heading)];
  return rows.slice(1).flatMap((row): TableSize[] => {
    // Totals, what is made to measure and what is left out stand below the sizes.
    if (["height", "width", "depth"].every((side) => isBlank(at(row, side)))) return [];
    const name = String(at(row, "size"));
    const side = (heading: "height" | "width" | "depth") =>
      readLength(at(row, heading), { argument: `sizes, ${heading} of ${name}`, unit });
    const size = { group: 0, x: side("width"), y: side("height"), z: side("depth") };
    return [{ name, enclosure: String(at(row, "enclosure")), size, price: priceOf(at(row, "price"), name) }];
  });
}

function priceOf(cell: unknown, name: string): number | undefined {
  if (isBlank(cell)) return undefined;
  if (typeof cell === "number" && cell >= 0) return cell;
  throw new InputError("sizes", `${shown(cell)} as the price of ${name}`, "give a number, or leave it blank");
}
