import { enclosureMassOfAdhesive } from "../board/mass";
import type { Settings } from "../settings/schema";
import { hundredth, hundredthSum, type EstimateLine } from "./estimateLine";
import { hoursOf } from "./labour";
import type { Demand } from "./stockJobs";

/** What the enclosures of one kind, or of one batch, cost of a whole budget. */
export interface CostShare {
  readonly of: string;
  readonly enclosures: number;
  readonly hours: number;
  /** With contingency. */
  readonly materials: number;
  readonly labour: number;
  /** Shipping, tax and indirect cost. */
  readonly other: number;
  readonly total: number;
  readonly each: number;
}

interface DemandCost {
  readonly demand: Demand;
  readonly hours: number;
  readonly materials: number;
  readonly labour: number;
}

/**
 * What each enclosure costs: of a stock by the area of its pieces, of adhesive by its mass, of labour by its hours, of all
 * else in proportion to these. Shares are rounded so that they add up to the budget.
 */
export function costShares(
  groups: readonly { readonly group: string; readonly demands: readonly Demand[] }[],
  lines: readonly EstimateLine[],
  settings: Settings,
): { readonly byKind: readonly CostShare[]; readonly byBatch: readonly CostShare[] } {
  const costs = groups.flatMap(({ group, demands }) =>
    groupCosts(
      demands,
      lines.filter((line) => line.group === group && !ADDED.has(line.material)),
      settings,
    ),
  );
  const hasBatches = costs.some(({ demand }) => demand.batch !== "");
  return {
    byKind: sharesBy(costs, ({ enclosure }) => enclosure, lines),
    byBatch: hasBatches ? sharesBy(costs, ({ batch }) => (batch === "" ? "not given" : batch), lines) : [],
  };
}

const ADDED: ReadonlySet<EstimateLine["material"]> = new Set(["shipping", "tax", "indirect"]);

function groupCosts(
  demands: readonly Demand[],
  lines: readonly EstimateLine[],
  settings: Settings,
): readonly DemandCost[] {
  const hours = hoursOf(demands, settings);
  const materials = new Map<Demand, number>();
  const labour = new Map<Demand, number>();
  for (const { material, stock, total } of lines) {
    const weights = demands.map((demand) => {
      if (material === "labour") return hours.get(demand)!;
      if (material === "adhesive") return demand.quantity * enclosureMassOfAdhesive(demand.parts, settings);
      return demand.quantity * areaOf(demand, stock);
    });
    const all = weights.reduce((sum, weight) => sum + weight, 0);
    const into = material === "labour" ? labour : materials;
    demands.forEach((demand, at) => {
      if (all > 0) into.set(demand, (into.get(demand) ?? 0) + (total * weights[at]!) / all);
    });
  }
  return demands.map((demand) => ({
    demand,
    hours: hours.get(demand)!,
    materials: materials.get(demand) ?? 0,
    labour: labour.get(demand) ?? 0,
  }));
}

function areaOf({ parts }: Demand, stock: string): number {
  return parts.reduce((sum, part) => sum + (part.stock === stock ? part.count * part.length * part.width : 0), 0);
}

function sharesBy(
  costs: readonly DemandCost[],
  nameOf: (demand: Demand) => string,
  lines: readonly EstimateLine[],
): readonly CostShare[] {
  const names = [...new Set(costs.map(({ demand }) => nameOf(demand)))];
  const own = names.map((name) => costs.filter(({ demand }) => nameOf(demand) === name));
  const sums = (of: (cost: DemandCost) => number) => own.map((all) => all.reduce((sum, cost) => sum + of(cost), 0));
  const enclosures = sums(({ demand }) => demand.quantity);
  const totalOf = (is: (line: EstimateLine) => boolean) => hundredthSum(lines.filter(is), ({ total }) => total);
  const [materials, labour] = [sums((cost) => cost.materials), sums((cost) => cost.labour)];
  const direct = materials.map((amount, at) => amount + labour[at]!);
  const rounded = {
    materials: sharedOut(
      totalOf(({ material }) => material !== "labour" && !ADDED.has(material)),
      materials,
    ),
    labour: sharedOut(
      totalOf(({ material }) => material === "labour"),
      labour,
    ),
    other: sharedOut(
      totalOf(({ material }) => ADDED.has(material)),
      direct.some((amount) => amount > 0) ? direct : enclosures,
    ),
  };
  const hours = sums((cost) => cost.hours);
  return names.map((of, at) => {
    const parts = { materials: rounded.materials[at]!, labour: rounded.labour[at]!, other: rounded.other[at]! };
    const total = hundredth(parts.materials + parts.labour + parts.other);
    return {
      of,
      enclosures: enclosures[at]!,
      hours: hundredth(hours[at]!),
      ...parts,
      total,
      each: hundredth(total / enclosures[at]!),
    };
  });
}

const HUNDREDTHS = 100;

/** An amount shared out in hundredths by weight: what rounding leaves goes to the largest remainders. */
export function sharedOut(amount: number, weights: readonly number[]): readonly number[] {
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  if (all === 0) return weights.map(() => 0);
  const exact = weights.map((weight) => (amount * HUNDREDTHS * weight) / all);
  const shares = exact.map((share) => Math.floor(share + NOISE));
  const left = Math.round(amount * HUNDREDTHS) - shares.reduce((sum, share) => sum + share, 0);
  const order = exact.map((share, at) => ({ at, rest: share - shares[at]! })).sort((a, b) => b.rest - a.rest);
  for (const { at } of order.slice(0, left)) shares[at]!++;
  return shares.map((share) => share / HUNDREDTHS);
}

const NOISE = 1e-9;
