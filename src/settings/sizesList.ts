import { isBlank } from "../measure/blank";
import { InputError, shown } from "../measure/errors";
import { readLength } from "../measure/readLength";
import type { LengthUnit, Mm, WorkbookUnit } from "../measure/units";
import { listed } from "./names";
import { tableHeading } from "./tableHeading";

/** An inside size of one kind that a shop makes or buys. */
export interface ListedSize {
  readonly name: string;
  readonly enclosure: string;
  readonly height: Mm;
  readonly width: Mm;
  readonly depth: Mm;
  readonly price: number | undefined;
}

const NEEDED = ["size", "enclosure", "height", "width", "depth"] as const;

type Rows = readonly (readonly unknown[])[];

/** Whether a row of cells is the heading row of a table of sizes. */
export function isSizesHeading(cells: readonly unknown[]): boolean {
  const names = cells.map((cell) => tableHeading(cell).name);
  return NEEDED.every((heading) => names.includes(heading));
}

/**
 * Reads a table of sizes with its headings: lengths in the unit of its headings, else of the survey. What stands below the sizes (totals, what is
 * made to measure) has no lengths, and is passed over.
 *
 * @throws InputError when a heading is missing or a size cannot be read
 */
export function readSizesList(rows: Rows, unit: WorkbookUnit): readonly ListedSize[] {
  const columns = (rows[0] ?? []).map(tableHeading);
  const headings = columns.map(({ name }) => name);
  const missing = NEEDED.filter((heading) => !headings.includes(heading));
  if (missing.length > 0)
    throw new InputError(
      "sizes",
      `a range without ${listed(missing, "and")}`,
      `give a table with the headings ${listed(NEEDED, "and")}`,
      "such as the answer of ENC.SIZES, its headings included",
    );
  const at = (row: readonly unknown[], heading: string): unknown => row[headings.indexOf(heading)];
  return rows.slice(1).flatMap((row): ListedSize[] => {
    if (["height", "width", "depth"].every((side) => isBlank(at(row, side)))) return [];
    const name = String(at(row, "size"));
    const side = (heading: "height" | "width" | "depth") =>
      readLength(at(row, heading), {
        argument: `sizes, ${heading} of ${name}`,
        unit: unitNamed(columns[headings.indexOf(heading)]!.unit) ?? unit,
      });
    const size = { height: side("height"), width: side("width"), depth: side("depth") };
    return [{ name, enclosure: String(at(row, "enclosure")), ...size, price: priceOf(at(row, "price"), name) }];
  });
}

function unitNamed(written: string): LengthUnit | undefined {
  if (written === "") return undefined;
  const known = LENGTH_UNITS.find((each) => each === written.toLowerCase());
  if (known !== undefined) return known;
  throw new InputError("sizes", shown(written), "give mm, cm, m, in or ft as the unit of a heading");
}

const LENGTH_UNITS = ["mm", "cm", "m", "in", "ft"] as const;

function priceOf(cell: unknown, name: string): number | undefined {
  if (isBlank(cell)) return undefined;
  if (typeof cell === "number" && cell >= 0) return cell;
  throw new InputError("sizes", `${shown(cell)} as the price of ${name}`, "give a number, or leave it blank");
}
