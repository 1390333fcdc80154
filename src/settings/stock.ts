import { InputError, shown } from "../measure/errors";
import type { Mm } from "../measure/units";

export const MATERIALS = ["board", "card", "covering", "lining", "cushion", "closure"] as const;
export type Material = (typeof MATERIALS)[number];

/** What may hold an enclosure shut. */
export const CLOSURES = ["ties", "hook and loop", "tongue", "clasp", "band"] as const;
export type Closure = (typeof CLOSURES)[number];

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
  /** Where it is bought, and by which number. */
  readonly supplier: string | undefined;
  readonly itemNumber: string | undefined;
  /** The day of the price. */
  readonly quoteDate: string | undefined;
  /** The price is an example, not a quote. */
  readonly examplePrice: boolean;
}

export const PERMANENCES = ["a", "b", "none"] as const;
export type Permanence = (typeof PERMANENCES)[number];

/** Boards thinner or thicker than this are refused as a slip of the unit (common practice, no source). */
export const LEAST_BOARD_MM = 0.3;
export const GREATEST_BOARD_MM = 10;
/** Card is folded, so that it may be thinner: 10 pt is 0.254 mm. */
export const LEAST_CARD_MM = 0.15;

/** Wider than any board, glass or steel; beyond, a sag would be no number. */
export const LEAST_MODULUS_GPA = 0.001;
export const GREATEST_MODULUS_GPA = 1000;

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
