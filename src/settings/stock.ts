import * as z from "zod/mini";
import { isBlank } from "../measure/blank";
import { InputError, shown } from "../measure/errors";
import { readLength } from "../measure/readLength";
import type { LengthUnit, Mm } from "../measure/units";
import { refuseErrorCell } from "./errorCell";
import { didYouMean, listed, plainName } from "./names";
import { plainNumber } from "./plainNumber";

export const MATERIALS = ["board", "card", "covering", "lining", "cushion"] as const;
export type Material = (typeof MATERIALS)[number];

/** Whether an enclosure can be built of it. */
export function isBoardOrCard({ material }: Pick<StockRow, "material">): boolean {
  return material === "board" || material === "card";
}

/** One row of the stock table: a sheet size of one stock. */
export interface StockRow {
  readonly stock: string;
  readonly material: Material;
  /** Caliper, mm; 0 where the table gives none (cloth, paper). */
  readonly caliper: Mm;
  /** The caliper as the row itself gives it, so that a filter or SUMIFS on the table matches it. */
  readonly caliperAsGiven: number | string;
  /** Along the grain; undefined on a roll. */
  readonly sheetLength: Mm | undefined;
  /** Across the grain; of a roll, its width. */
  readonly sheetWidth: Mm | undefined;
  /** `free`: the shop lets pieces of this stock lie either way. */
  readonly grain: "fixed" | "free";
  readonly price: number | undefined;
  /** Sheets (or metres of a roll) sold together. */
  readonly pack: number;
  readonly massGm2: number | undefined;
  readonly modulusAlongGpa: number | undefined;
  readonly modulusAcrossGpa: number | undefined;
  /** The longest side of an item that the shop makes from this board. */
  readonly sizeLimit: Mm | undefined;
  readonly onHand: number | undefined;
  /** It passes ISO 18916, the photographic activity test; undefined where that is not known. */
  readonly passesPat: boolean | undefined;
  /** It holds an alkaline reserve; undefined where that is not known. */
  readonly buffered: boolean | undefined;
  /** Permanence after ISO 16245; undefined where that is not known. */
  readonly permanence: Permanence | undefined;
  /** The price is an example, not a quote. */
  readonly examplePrice: boolean;
}

const PERMANENCES = ["a", "b", "none"] as const;
export type Permanence = (typeof PERMANENCES)[number];

/** Boards thinner or thicker than this are refused as a slip of the unit (common practice, no source). */
export const LEAST_BOARD_MM = 0.3;
export const GREATEST_BOARD_MM = 10;
/** Card is folded, so that it may be thinner: 10 pt is 0.254 mm. */
export const LEAST_CARD_MM = 0.15;

/** Wider than any board, glass or steel; beyond, a sag would be no number. */
export const LEAST_MODULUS_GPA = 0.001;
export const GREATEST_MODULUS_GPA = 1000;

/** A price or mass above this is a slip. */
const GREATEST_NUMBER = 1e9;

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
  const names = cells.map((cell) => headingName(cell).name);
  return names.includes("stock") && (names.includes("material") || names.includes("caliper"));
}

interface Column {
  readonly key: keyof typeof FIELDS;
  readonly heading: string;
  readonly unit: LengthUnit | "pt";
}

type CellReader = (cell: unknown, column: Column, at: string) => unknown;

const length: CellReader = (cell, column, at) => readCellLength(cell, column, at);
const number: CellReader = (cell, column, at) => {
  const value = plainNumber(cell);
  const argument = `${at}, ${column.heading}`;
  if (!Number.isFinite(value) || value < 0) throw new InputError(argument, shown(cell), "give a number, zero or more");
  if (value > GREATEST_NUMBER)
    throw new InputError(argument, shown(cell), `give a number of at most ${GREATEST_NUMBER}`);
  return value;
};
/** TRUE and FALSE of a spreadsheet read as yes and no. */
const yesNo: CellReader = (cell) => {
  const said = plainName(String(cell));
  return said === "true" ? "yes" : said === "false" ? "no" : said;
};
const word: CellReader = (cell) => (typeof cell === "string" ? cell.trim() : String(cell));

const FIELDS = {
  stock: word,
  material: word,
  caliper: length,
  "sheet length": length,
  "sheet width": length,
  grain: word,
  price: number,
  pack: number,
  mass: number,
  "modulus along": number,
  "modulus across": number,
  "size limit": length,
  "on hand": number,
  pat: yesNo,
  buffered: yesNo,
  permanence: word,
  "example price": yesNo,
} as const satisfies Record<string, CellReader>;

const OTHER_HEADINGS: ReadonlyMap<string, keyof typeof FIELDS> = new Map([
  ["thickness", "caliper"],
  ["name", "stock"],
]);

const choice = <T extends string>(values: readonly [T, ...T[]]): z.ZodMiniType<T> =>
  z.pipe(
    z.transform((value: unknown): unknown => (typeof value === "string" ? plainName(value) : value)),
    z.enum(values),
  );
const given = z.optional(z.number());
const whole = z.number().check(z.int());
const known = z.optional(choice(["yes", "no"]));
const modulus = z.optional(z.number().check(z.minimum(LEAST_MODULUS_GPA), z.maximum(GREATEST_MODULUS_GPA)));

const ROW = z.object({
  // A settings text joins names with these two signs.
  stock: z.string().check(z.regex(/^[^;=]*$/)),
  material: choice(MATERIALS),
  caliper: z._default(z.number(), 0),
  "sheet length": given,
  "sheet width": given,
  grain: z._default(choice(["fixed", "free"]), "fixed"),
  price: given,
  pack: z._default(whole.check(z.positive()), 1),
  mass: given,
  "modulus along": modulus,
  "modulus across": modulus,
  "size limit": given,
  "on hand": z.optional(whole),
  pat: known,
  buffered: known,
  permanence: z.optional(choice(PERMANENCES)),
  "example price": known,
});

const ACCEPTED: Readonly<Record<string, string>> = {
  stock: "give each stock a name without ; and =",
  material: `give ${listed(MATERIALS, "or")}`,
  grain: "give fixed or free",
  pack: "give a whole number of sheets, 1 or more",
  "on hand": "give a whole number of sheets",
  pat: "give yes or no, or leave it blank where it is not known",
  buffered: "give yes or no, or leave it blank where it is not known",
  permanence: "give A, B or none, or leave it blank where it is not known",
  "example price": "give yes, or leave it blank",
  "modulus along": `give a number of GPa from ${LEAST_MODULUS_GPA} to ${GREATEST_MODULUS_GPA}`,
  "modulus across": `give a number of GPa from ${LEAST_MODULUS_GPA} to ${GREATEST_MODULUS_GPA}`,
};

function headingName(heading: unknown): { readonly name: string; readonly unit: string | undefined } {
  if (typeof heading !== "string") return { name: "", unit: undefined };
  // No two parts of the pattern can share a character, so that no heading takes long.
  const match = /^(.*)[([]([^()[\]]*)[)\]]$/s.exec(heading.trim());
  return { name: plainName(match?.[1] ?? heading), unit: match?.[2]?.trim() };
}

function readHeading(heading: unknown, shopUnit: LengthUnit): Column | undefined {
  const { name, unit } = headingName(heading);
  if (name === "") return undefined;
  const key = Object.hasOwn(FIELDS, name) ? (name as keyof typeof FIELDS) : OTHER_HEADINGS.get(name);
  if (key === undefined) return undefined;
  const isLength = FIELDS[key] === length;
  if (!isLength || unit === undefined || unit === "") return { key, heading: name, unit: shopUnit };
  const known = LENGTH_UNITS.find((each) => each === unit.toLowerCase());
  if (known === undefined || (known === "pt" && key !== "caliper"))
    throw new InputError(`stock table heading ${name}`, shown(unit), "give mm, cm, m, in or ft (pt for a caliper)");
  return { key, heading: name, unit: known };
}

const LENGTH_UNITS = ["mm", "cm", "m", "in", "ft", "pt"] as const;

function readRow(cells: readonly unknown[], columns: readonly (Column | undefined)[], at: string): StockRow {
  const raw: Record<string, unknown> = {};
  let caliperAsGiven: number | string = 0;
  columns.forEach((column, index) => {
    const cell = cells[index];
    if (column === undefined || isBlank(cell)) return;
    refuseErrorCell(cell, `${at}, ${column.heading}`);
    raw[column.key] = FIELDS[column.key](cell, column, at);
    if (column.key === "caliper") caliperAsGiven = cell as number | string;
  });
  const result = ROW.safeParse(raw);
  if (!result.success) {
    const heading = String(result.error.issues[0]?.path[0]);
    const got = raw[heading];
    const cure = heading === "material" && typeof got === "string" ? didYouMean(got, MATERIALS) : "";
    throw new InputError(`${at}, ${heading}`, shown(got), ACCEPTED[heading] ?? "give a number, zero or more", cure);
  }
  const row = result.data;
  if (isBoardOrCard(row))
    refuseBoardCaliper(row.caliper, `${at}, caliper`, cells.length === 0 ? undefined : raw["caliper"], row.material);
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
    passesPat: isYes(row.pat),
    buffered: isYes(row.buffered),
    permanence: row.permanence,
    examplePrice: row["example price"] === "yes",
  };
}

function isYes(word: "yes" | "no" | undefined): boolean | undefined {
  return word === undefined ? undefined : word === "yes";
}

/** @throws InputError when a board is outside 0.3 to 10 mm, or a card outside 0.15 to 10 mm */
export function refuseBoardCaliper(caliper: Mm, argument: string, got: unknown, material: Material = "board"): void {
  const least = material === "card" ? LEAST_CARD_MM : LEAST_BOARD_MM;
  if (caliper >= least && caliper <= GREATEST_BOARD_MM) return;
  throw new InputError(
    argument,
    typeof got === "number" ? `${got} mm` : shown(got),
    `give a caliper from ${least} to ${GREATEST_BOARD_MM} mm, such as 2, 2 mm or 80 pt`,
  );
}

function readCellLength(cell: unknown, column: Column, at: string): Mm {
  const argument = `${at}, ${column.heading}`;
  const points = column.key === "caliper";
  if (column.unit !== "pt") return readLength(cell, { argument, unit: column.unit, points });
  const text = typeof cell === "number" || /^[\d.,\s]+$/.test(String(cell)) ? `${String(cell)} pt` : cell;
  return readLength(text, { argument, unit: "mm", points });
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
