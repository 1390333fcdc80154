import type { Cell } from "../item/answers";
import { areaIn, tidy } from "../measure/units";
import { plainName } from "../settings/names";
import type { Settings } from "../settings/schema";
import type { CostShare } from "./costShares";
import type { Estimate } from "./estimate";
import type { HoursLine } from "./labour";

type Rows = readonly (readonly Cell[])[];

/** What a line costs, and what is proved of its quantity. */
export const COST_HEADINGS = [
  "material",
  "stock",
  "net area",
  "to buy",
  "unit",
  "least possible",
  "yield",
  "unit price",
  "cost",
  "contingency",
  "total",
] as const;

const PAYING_HEADINGS = ["match", "in kind", "requested"] as const;
const BUYING_HEADINGS = ["spoilage", "pack", "supplier", "item number", "quote date"] as const;

/** Headings under which money stands. */
export const MONEY_HEADINGS: ReadonlySet<string> = new Set([
  ...["unit price", "cost", "contingency", "total", ...PAYING_HEADINGS],
  ...["materials", "labour", "other", "for each"],
]);

/** Lines and totals as they are printed, in all columns; totals are sums of the printed lines. */
export function estimateTable(estimate: Estimate, settings: Settings): Rows {
  const { lines } = estimate;
  const grouped = isGrouped(estimate);
  const first = grouped ? [groupHeading(settings)] : [];
  const blanks = Array.from({ length: 7 + first.length }, () => "");
  return [
    [...first, ...COST_HEADINGS, ...PAYING_HEADINGS, ...BUYING_HEADINGS],
    ...lines.map((line) => {
      const sum = (amount: number) => (amount === 0 && line.notInCost !== undefined ? "" : amount);
      return [
        ...(grouped ? [line.group === "" ? "all" : line.group] : []),
        line.material,
        line.stock,
        tidy(areaIn(line.netAreaM2, settings.answerUnit)),
        tidy(line.unit === "m2" ? areaIn(line.quantity, settings.answerUnit) : line.quantity),
        line.unit === "m2" && settings.answerUnit === "in" ? "ft2" : line.unit,
        line.leastPossible ?? "",
        line.yield === undefined ? "" : Number(line.yield.toFixed(3)),
        line.unitPrice ?? "",
        ...[line.cost, line.contingency, line.total, line.match, line.inKind, line.requested].map(sum),
        ...(line.pack === undefined
          ? ["", "", "", "", ""]
          : [line.spoilage, line.pack, line.supplier, line.itemNumber, line.quoteDate]),
      ];
    }),
    [
      ...["total", ...blanks, estimate.cost, estimate.contingency, estimate.total],
      ...[estimate.match, estimate.inKind, estimate.requested, "", "", "", "", ""],
    ],
  ];
}

/** The same in the columns of cost alone, where a page or a screen is narrow. */
export function costTable(estimate: Estimate, settings: Settings): Rows {
  const width = COST_HEADINGS.length + (isGrouped(estimate) ? 1 : 0);
  return estimateTable(estimate, settings).map((row) => row.slice(0, width));
}

/** Who pays each line; none where all of it is requested. */
function payingRows(estimate: Estimate, settings: Settings): Rows {
  if (estimate.requested === estimate.total) return [];
  const group = isGrouped(estimate) ? [groupHeading(settings)] : [];
  return withColumns(estimateTable(estimate, settings), [...group, "material", "stock", "total", ...PAYING_HEADINGS]);
}

/** Where each stock is bought; of groups that buy the same, one line. */
function buyingRows(estimate: Estimate, settings: Settings): Rows {
  const bought = estimate.lines.filter(({ pack }) => pack !== undefined);
  // Without a supplier, a number, a date or a pack there is nothing that the budget does not say.
  if (
    bought.every(({ supplier, itemNumber, quoteDate, pack }) => supplier + itemNumber + quoteDate === "" && pack === 1)
  )
    return [];
  const columns = ["stock", ...BUYING_HEADINGS.slice(1), "unit price"];
  const [headings = [], ...rows] = withColumns(estimateTable({ ...estimate, lines: bought }, settings), columns);
  const own = rows.slice(0, -1);
  return [headings, ...new Map(own.map((row) => [JSON.stringify(row), row])).values()];
}

/** What each enclosure costs, by kind or by batch; none where there is nothing to share. */
function shareRows(name: string, shares: readonly CostShare[]): Rows {
  if (shares.length === 0) return [];
  return [
    [name, "enclosures", "hours", "materials", "labour", "other", "total", "for each"],
    ...shares.map((share) => [
      ...[share.of, share.enclosures, share.hours, share.materials],
      ...[share.labour, share.other, share.total, share.each],
    ]),
  ];
}

/** Hours by kind with where each number comes from. */
function hoursRows(hours: readonly HoursLine[]): Rows {
  if (hours.length === 0) return [];
  return [
    ["labour", "number", "hours each", "hours", "standing"],
    ...hours.map(({ work, number, each, hours: all, standing }) => [work, number, each ?? "", all, standing]),
  ];
}

export const HOURS_TABLE = "Hours";

type Titled = readonly [title: string, rows: Rows];

/** What each enclosure costs, and the hours: each table under its name; those with nothing to say are left out. */
export function shareTables({ byKind, byBatch, hours }: Estimate): readonly Titled[] {
  const tables: readonly Titled[] = [
    ["What each enclosure costs, by kind", shareRows("enclosure", byKind)],
    ["What each enclosure costs, by batch", shareRows("batch", byBatch)],
    [HOURS_TABLE, hoursRows(hours)],
  ];
  return tables.filter(([, rows]) => rows.length > 0);
}

/** The same with the columns that `costTable` leaves out. */
export function moreTables(estimate: Estimate, settings: Settings): readonly Titled[] {
  const tables: readonly Titled[] = [
    ["Who pays", payingRows(estimate, settings)],
    ...shareTables(estimate),
    ["Where it is bought", buyingRows(estimate, settings)],
  ];
  return tables.filter(([, rows]) => rows.length > 0);
}

export function isGrouped({ lines }: Pick<Estimate, "lines">): boolean {
  return lines.some(({ group }) => group !== "");
}

export function groupHeading({ estimateBy }: Settings): string {
  return plainName(estimateBy) === "kind" ? "enclosure" : estimateBy;
}

function withColumns([headings = [], ...rows]: Rows, wanted: readonly string[]): Rows {
  const places = wanted.map((name) => headings.indexOf(name));
  return [headings, ...rows].map((row) => places.map((place) => row[place]!));
}
