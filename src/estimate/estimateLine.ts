import type { Settings } from "../settings/schema";
import type { Material } from "../settings/stock";

/** One line of a budget. Money in the currency of the stock table's prices, rounded to its hundredth. */
export interface EstimateLine {
  readonly group: string;
  readonly material: Material | "adhesive" | "labour" | "shipping" | "tax" | "indirect";
  readonly stock: string;
  readonly netAreaM2: number;
  /** Sheets, metres, kilograms or hours to buy; of tax and indirect cost the percentage. */
  readonly quantity: number;
  readonly unit: "sheets" | "m" | "m2" | "kg" | "hours" | "pieces" | "sum" | "%";
  /** Of the quantity, what is bought for spoilt pieces. */
  readonly spoilage: number;
  /** No plan needs fewer; undefined where nothing is cut. */
  readonly leastPossible: number | undefined;
  readonly provedLeast: boolean;
  /** Share of what is bought that ends in the enclosures; undefined where nothing is cut. */
  readonly yield: number | undefined;
  readonly unitPrice: number | undefined;
  readonly cost: number;
  readonly contingency: number;
  readonly total: number;
  /** What the applicant pays, what the applicant gives in kind, and the rest, which is requested: their sum is the total. */
  readonly match: number;
  readonly inKind: number;
  readonly requested: number;
  /** Where it is bought, as the stock table or the settings say; empty where they do not. */
  readonly supplier: string;
  readonly itemNumber: string;
  readonly pack: number | undefined;
  readonly quoteDate: string;
  /** Why the line is not, or not wholly, in the cost: nobody has said what it costs. A price of 0 is a price. */
  readonly notInCost: string | undefined;
}

/** A line before it is known who pays for it. */
export type CostLine = Omit<EstimateLine, "match" | "inKind" | "requested">;

/** What a line of something that is not cut has in common. */
export function bareLine(group: string, material: EstimateLine["material"]) {
  return {
    group,
    material,
    stock: material,
    netAreaM2: 0,
    spoilage: 0,
    leastPossible: undefined,
    provedLeast: false,
    yield: undefined,
    unitPrice: undefined,
    contingency: 0,
    supplier: "",
    itemNumber: "",
    pack: undefined,
    quoteDate: "",
    notInCost: undefined,
  };
}

/** The sums of a line of material. */
export function money(unitPrice: number | undefined, cost: number, { contingency }: Settings) {
  const rounded = hundredth(cost);
  const spare = percentOf(rounded, contingency);
  return { unitPrice, cost: rounded, contingency: spare, total: hundredth(rounded + spare) };
}

export function percentOf(amount: number, percent: number): number {
  return hundredth((amount * percent) / 100);
}

/** Money to the hundredth of its unit; amounts are positive, halves go up. */
export function hundredth(amount: number): number {
  return Math.round((amount + Number.EPSILON) * 100) / 100;
}

/** The sum of amounts that are hundredths. */
export function hundredthSum<T>(all: readonly T[], of: (one: T) => number): number {
  return hundredth(all.reduce((sum, one) => sum + of(one), 0));
}
