import { isBlank } from "../measure/blank";
import { InputError, shown } from "../measure/errors";
import type { LengthUnit } from "../measure/units";
import { refuseErrorCell } from "./errorCell";
import { didYouMean, plainName } from "./names";
import { isBoardOrCard, MATERIALS, refuseBoardCaliper, type StockRow } from "./stock";
import { isLengthField, STOCK_FIELDS, type StockColumn, type StockField } from "./stockFields";
import { tableHeading } from "./tableHeading";
import { NotTaken } from "./valueType";

/**
 * Reads a stock table with its heading row.
 *
 * @param rows the range, headings first; a heading may carry its unit, as in `caliper (pt)`
 * @param shopUnit what plain lengths mean where the heading names no unit
 * @throws InputError naming the row and heading
 */
export function readStockTable(rows: readonly (readonly unknown[])[], shopUnit: LengthUnit): readonly StockRow[] {
  const [headings = [], ...body] = rows;
  const columns = headings.map((heading) => readHeading(heading, shopUnit));
  const stock = body
    .map((cells, index) => ({ cells, at: `stock table row ${index + 2}` }))
    .filter(({ cells }) => cells.some((cell) => !isBlank(cell)))
    .map(({ cells, at }) => readRow(cells, columns, at));
  if (stock.length === 0) throw new InputError("stock table", "headings without rows", "give at least one stock row");
  refuseDisagreement(stock);
  return stock;
}

/** Whether a row of cells is the heading row of a stock table. */
export function isStockHeading(cells: readonly unknown[]): boolean {
  const names = cells.map((cell) => tableHeading(cell).name);
  return names.includes("stock") && (names.includes("material") || names.includes("caliper"));
}

const OTHER_HEADINGS: ReadonlyMap<string, StockField> = new Map([
  ["thickness", "caliper"],
  ["name", "stock"],
]);

/** What the plain name of a heading says that its column holds. */
export function stockField(name: string): StockField | undefined {
  return Object.hasOwn(STOCK_FIELDS, name) ? (name as StockField) : OTHER_HEADINGS.get(name);
}

function readHeading(heading: unknown, shopUnit: LengthUnit): StockColumn | undefined {
  const { name, unit } = tableHeading(heading);
  const key = stockField(name);
  if (key === undefined) return undefined;
  if (!isLengthField(key) || unit === "") return { key, heading: name, unit: shopUnit };
  const known = LENGTH_UNITS.find((each) => each === unit.toLowerCase());
  if (known === undefined || (known === "pt" && key !== "caliper"))
    throw new InputError(`stock table heading ${name}`, shown(unit), "give mm, cm, m, in or ft (pt for a caliper)");
  return { key, heading: name, unit: known };
}

const LENGTH_UNITS = ["mm", "cm", "m", "in", "ft", "pt"] as const;

function readRow(cells: readonly unknown[], columns: readonly (StockColumn | undefined)[], at: string): StockRow {
  const raw: Partial<Record<StockField, unknown>> = {};
  let caliperAsGiven: number | string = 0;
  columns.forEach((column, index) => {
    const cell = cells[index];
    if (column === undefined || isBlank(cell)) return;
    refuseErrorCell(cell, `${at}, ${column.heading}`);
    raw[column.key] = STOCK_FIELDS[column.key].read(cell, column, at);
    if (column.key === "caliper") caliperAsGiven = cell as number | string;
  });
  const row = checkedRow(raw, at);
  if (isBoardOrCard(row))
    refuseBoardCaliper(row.caliper, `${at}, caliper`, cells.length === 0 ? undefined : raw.caliper, row.material);
  return {
    stock: row.stock,
    material: row.material,
    caliper: row.caliper,
    caliperAsGiven,
    sheetLength: row["sheet length"],
    sheetWidth: row["sheet width"],
    grain: row.grain,
    price: row.price,
    pack: row.pack,
    massGm2: row.mass,
    modulusAlongGpa: row["modulus along"],
    modulusAcrossGpa: row["modulus across"],
    sizeLimit: row["size limit"],
    onHand: row["on hand"],
    passesPat: row.pat,
    buffered: row.buffered,
    permanence: row.permanence,
    supplier: row.supplier,
    itemNumber: row["item number"],
    quoteDate: row["quote date"],
    examplePrice: row["example price"],
  };
}

type CheckedRow = { [Key in StockField]: ReturnType<(typeof STOCK_FIELDS)[Key]["check"]> };

function checkedRow(raw: Partial<Record<StockField, unknown>>, at: string): CheckedRow {
  const keys = Object.keys(STOCK_FIELDS) as StockField[];
  return Object.fromEntries(keys.map((key) => [key, checked(key, raw[key], at)] as const)) as CheckedRow;
}

function checked(key: StockField, value: unknown, at: string): unknown {
  const { check, accepts } = STOCK_FIELDS[key];
  try {
    return check(value);
  } catch (error) {
    if (!(error instanceof NotTaken)) throw error;
    const cure = key === "material" && typeof value === "string" ? didYouMean(value, MATERIALS) : "";
    throw new InputError(`${at}, ${key}`, shown(value), `give ${accepts}`, cure);
  }
}

function refuseDisagreement(stock: readonly StockRow[]): void {
  const first = new Map<string, StockRow>();
  for (const row of stock) {
    const key = plainName(row.stock);
    const other = first.get(key);
    if (other === undefined) first.set(key, row);
    else if (other.material !== row.material || other.caliper !== row.caliper)
      throw new InputError(
        `stock ${row.stock}`,
        "rows that differ in material or caliper",
        "give rows of one name one material and one caliper (they are its sheet sizes)",
        "or give each its own name",
      );
  }
}
