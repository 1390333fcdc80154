import { planCutting } from "../cutting/planCutting";
import type { Budget, Piece, Plan, Progress, Sheet, Stock } from "../cutting/types";
import { verifyPlan } from "../cutting/verify";
import type { Part } from "../enclosure/part";
import { plainName } from "../settings/names";
import type { Settings } from "../settings/schema";
import type { Material, StockRow } from "../settings/stock";

/** Enclosures to be made for one item: what its parts ask of the stock. */
export interface Demand {
  readonly item: string;
  /** Where the item stands in the survey, for what is grouped by a heading. */
  readonly row: number;
  readonly enclosure: string;
  readonly quantity: number;
  readonly parts: readonly Part[];
}

/** How one stock is cut for all demands together. */
export interface StockPlan {
  readonly stock: string;
  readonly material: Material;
  /** `sheets` bought by number, `roll` by length; `none` where the stock table gives no size, so that only the area is known. */
  readonly form: "sheets" | "roll" | "none";
  readonly netAreaM2: number;
  readonly pieces: number;
  readonly plan: Plan | undefined;
}

export interface PlanOptions {
  readonly budget?: Budget;
  readonly onProgress?: (stock: string, progress: Progress) => void;
  readonly shouldStop?: () => boolean;
}

/**
 * Plans every stock that the demands use, in the order of the stock table; stocks that it does not list come last.
 * Each plan is checked by a verifier of its own before anyone sees it.
 *
 * @throws InputError when a sheet or allowance cannot be used
 * @throws Error when a plan fails its check, which is a bug
 */
export function stockPlans(
  demands: readonly Demand[],
  settings: Settings,
  options: PlanOptions = {},
): readonly StockPlan[] {
  const byStock = new Map<string, Piece[]>();
  const materials = new Map<string, Material>();
  for (const { item, quantity, parts } of demands)
    for (const part of parts) {
      const pieces = byStock.get(part.stock) ?? [];
      byStock.set(part.stock, pieces);
      materials.set(part.stock, part.material);
      pieces.push(pieceOf(part, item, quantity));
    }
  const order = [...new Set([...settings.stock.map((row) => row.stock), ...byStock.keys()])];
  return order.flatMap((stock) => {
    const pieces = byStock.get(stock);
    return pieces === undefined ? [] : [planOf(stock, materials.get(stock)!, pieces, settings, options)];
  });
}

/** The stock that a name means among those planned; undefined when it is none of them. */
export function planNamed(plans: readonly StockPlan[], name: string): StockPlan | undefined {
  const wanted = plainName(name);
  return plans.find((plan) => plainName(plan.stock) === wanted);
}

function pieceOf(part: Part, item: string, quantity: number): Piece {
  const across = part.grain === "along width";
  return {
    id: `${item} / ${part.fullName}`,
    item,
    part: part.fullName,
    length: across ? part.width : part.length,
    width: across ? part.length : part.width,
    count: part.count * quantity,
    turn: part.grain === "either",
  };
}

const MM2_PER_M2 = 1e6;

function planOf(
  stock: string,
  material: Material,
  pieces: readonly Piece[],
  settings: Settings,
  { budget, onProgress, shouldStop }: PlanOptions,
): StockPlan {
  const count = pieces.reduce((sum, piece) => sum + (piece.count ?? 1), 0);
  const area = pieces.reduce((sum, { length, width, count = 1 }) => sum + length * width * count, 0) / MM2_PER_M2;
  const source = sourceOf(settings.stock.filter((row) => row.stock === stock));
  const about = { stock, material, netAreaM2: area, pieces: count };
  if (source === undefined) return { ...about, form: "none", plan: undefined };
  const options = { edgeTrim: settings.edgeTrim, pieceGap: settings.pieceGap };
  const plan = planCutting(pieces, source, {
    ...options,
    ...(budget === undefined ? {} : { budget }),
    ...(onProgress === undefined ? {} : { onProgress: (progress) => onProgress(stock, progress) }),
    ...(shouldStop === undefined ? {} : { shouldStop }),
  });
  const faults = verifyPlan(plan, pieces, source, options);
  if (faults.length > 0) throw new Error(`the plan for ${stock} fails its check: ${faults[0]}`);
  return { ...about, form: source.kind, plan };
}

/**
 * What a stock is cut from. A row with a price is bought, and what it says is `on hand` is used first; a row with
 * `on hand` and no price is an off-cut: so many and no more.
 */
function sourceOf(rows: readonly StockRow[]): Stock | undefined {
  const sized = rows.filter((row) => row.sheetWidth !== undefined);
  const roll = sized.find((row) => row.sheetLength === undefined);
  if (roll !== undefined)
    return { kind: "roll", roll: { name: roll.stock, width: roll.sheetWidth!, pricePerM: roll.price ?? 0 } };
  if (sized.length === 0) return undefined;
  return { kind: "sheets", sheets: sized.flatMap((row) => sheetsOf(row, sized.length > 1)) };
}

function sheetsOf(row: StockRow, several: boolean): readonly Sheet[] {
  const [length, width] = [row.sheetLength!, row.sheetWidth!];
  const name = several ? `${row.stock} ${length} x ${width}` : row.stock;
  const inHand: readonly Sheet[] =
    row.onHand === undefined ? [] : [{ name: `${name}, on hand`, length, width, price: 0, onHand: row.onHand }];
  if (row.onHand !== undefined && row.price === undefined) return inHand;
  return [...inHand, { name, length, width, price: row.price ?? 0, pack: row.pack }];
}
