import { isBlank } from "../measure/blank";
import { InputError, shown } from "../measure/errors";
import { readLength } from "../measure/readLength";
import { readMass } from "../measure/readMass";
import type { LengthUnit, Mm, WorkbookUnit } from "../measure/units";
import { askedBoard, type AskedBoard } from "./boards";
import { refuseErrorCell } from "./errorCell";
import { didYouMean, listed, plainName } from "./names";
import type { StockRow } from "./stock";
import { tableHeading } from "./tableHeading";

/** A row of the board guide: what it covers, and the board for it. A limit that is undefined covers everything. */
export interface GuideRow {
  /** Where it is in the guide, for messages: `board guide row 3`. */
  readonly at: string;
  /** A kind of enclosure, `board kinds` or `card kinds`; as typed, since only the kinds know their names. */
  readonly kind: string;
  /** A word for the item's material, or `board` or `card`: what a caliper is looked up among; empty for any. */
  readonly material: string;
  readonly shortSide: Mm | undefined;
  readonly longSide: Mm | undefined;
  readonly thickness: Mm | undefined;
  readonly weightKg: number | undefined;
  readonly asked: AskedBoard;
  /** The board as the cell has it, for messages. */
  readonly askedText: string;
}

/** The shop's own table of boards: the first row that covers an item is the answer. */
export type BoardGuide = readonly GuideRow[];

export const BOARD_KINDS = "board kinds";
export const CARD_KINDS = "card kinds";

/** What a guide is read with. */
export interface GuideContext {
  readonly unit: WorkbookUnit;
  readonly shopUnit: LengthUnit;
  readonly stock: readonly StockRow[];
}

/** Whether a row of cells is the heading row of a board guide: `board`, and a heading that ends in `up to`. */
export function isGuideHeading(cells: readonly unknown[]): boolean {
  const names = cells.map((cell) => tableHeading(cell).name);
  return names.includes("board") && names.some((name) => name.endsWith(UP_TO));
}

/**
 * Reads a board guide with its heading row.
 *
 * @param rows the range, headings first; a heading may carry its unit, as in `short side up to (in)`
 * @throws InputError naming the row and heading
 */
export function readBoardGuide(rows: readonly (readonly unknown[])[], context: GuideContext): BoardGuide {
  const [headings = [], ...body] = rows;
  const columns = headings.map((heading) => columnOf(heading, context));
  const guide = body.flatMap((cells, index) =>
    cells.every(isBlank) ? [] : [readRow(cells, columns, `board guide row ${index + 2}`, context)],
  );
  if (guide.length === 0)
    throw new InputError(
      "board guide",
      "headings without rows",
      "give at least one row",
      "ENC.BOARD.GUIDE() shows one",
    );
  return guide;
}

const UP_TO = "up to";

const LIMITS = ["short side up to", "long side up to", "thickness up to", "weight up to"] as const;
type Limit = (typeof LIMITS)[number];

interface Column {
  readonly heading: "kind" | "material" | "board" | Limit;
  readonly unit: string;
}

const OTHER_HEADINGS: Readonly<Record<string, Column["heading"]>> = {
  enclosure: "kind",
  "depth up to": "thickness up to",
};

const LENGTH_UNITS = ["mm", "cm", "m", "in", "ft"] as const;
const MASS_UNITS = ["kg", "g", "lb", "oz"] as const;

/** Undefined for a heading that says nothing of the guide, such as `standing`. */
function columnOf(cell: unknown, { unit, shopUnit }: GuideContext): Column | undefined {
  const { name, unit: written } = tableHeading(cell);
  const own = written.toLowerCase();
  const heading = OTHER_HEADINGS[name] ?? name;
  if (heading === "kind" || heading === "material" || heading === "board") return { heading, unit: own || shopUnit };
  if (!heading.endsWith(UP_TO)) return undefined;
  const limit = LIMITS.find((each) => each === heading);
  if (limit === undefined)
    throw new InputError("board guide heading", shown(cell), `give ${listed(LIMITS, "or")}`, didYouMean(name, LIMITS));
  const units: readonly string[] = limit === "weight up to" ? MASS_UNITS : LENGTH_UNITS;
  if (own !== "" && !units.includes(own))
    throw new InputError(`board guide heading ${limit}`, shown(own), `give ${listed(units, "or")}`);
  const usual = limit === "weight up to" ? (unit === "in" ? "lb" : "kg") : shopUnit;
  return { heading: limit, unit: own || usual };
}

function readRow(
  cells: readonly unknown[],
  columns: readonly (Column | undefined)[],
  at: string,
  context: GuideContext,
): GuideRow {
  const given = (heading: Column["heading"]) => {
    const index = columns.findIndex((column) => column?.heading === heading);
    const cell = cells[index];
    refuseErrorCell(cell, `${at}, ${heading}`);
    return { cell, unit: columns[index]?.unit ?? "" };
  };
  const length = (heading: Limit): Mm | undefined => {
    const { cell, unit } = given(heading);
    return isNoLimit(cell) ? undefined : readLength(cell, { argument: `${at}, ${heading}`, unit: unit as LengthUnit });
  };
  const word = (heading: "kind" | "material") => {
    const { cell } = given(heading);
    return isBlank(cell) ? "" : plainName(String(cell));
  };
  const { cell, unit } = given("board");
  return {
    at,
    kind: word("kind") || BOARD_KINDS,
    material: word("material"),
    shortSide: length("short side up to"),
    longSide: length("long side up to"),
    thickness: length("thickness up to"),
    weightKg: weight(given("weight up to"), `${at}, weight up to`),
    asked: askedBoard(isBlank(cell) ? "" : cell, {
      name: `${at}, board`,
      shopUnit: unit as LengthUnit,
      stock: context.stock,
    }),
    askedText: typeof cell === "number" ? `${cell} ${unit}` : String(cell).trim(),
  };
}

function weight({ cell, unit }: { cell: unknown; unit: string }, argument: string): number | undefined {
  if (isNoLimit(cell)) return undefined;
  if (unit === "kg" || unit === "lb") return readMass(cell, { argument, unit });
  const text = typeof cell === "number" || /^[\d.,\s]+$/.test(String(cell)) ? `${String(cell)} ${unit}` : cell;
  return readMass(text, { argument, unit: "kg" });
}

/** Blank as a cell can be blank, a bare 0 too; or a dash or `none`. */
function isNoLimit(cell: unknown): boolean {
  return isBlank(cell) || (typeof cell === "string" && (NO_LIMIT.has(plainName(cell)) || plainName(cell) === ""));
}

const NO_LIMIT = new Set(["none", "any"]);
