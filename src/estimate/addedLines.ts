import type { Settings } from "../settings/schema";
import { bareLine, hundredthSum, percentOf, type CostLine, type EstimateLine } from "./estimateLine";

/** Lines of the whole budget: shipping, tax on materials, indirect cost on all that is paid. */
export function addedLines(lines: readonly CostLine[], settings: Settings): readonly CostLine[] {
  const { shipping, tax, indirect, labourPaid } = settings;
  const materials = hundredthSum(lines, ({ material, total }) => (material === "labour" ? 0 : total));
  const labour = hundredthSum(lines, ({ material, total }) => (material === "labour" && labourPaid ? total : 0));
  const taxSum = percentOf(materials + shipping, tax);
  return [
    ...line("shipping", 1, "sum", shipping),
    ...line("tax", tax, "%", taxSum),
    ...line("indirect", indirect, "%", percentOf(materials + labour + shipping + taxSum, indirect)),
  ];
}

function line(
  material: EstimateLine["material"],
  quantity: number,
  unit: EstimateLine["unit"],
  cost: number,
): readonly CostLine[] {
  return cost === 0 ? [] : [{ ...bareLine("", material), quantity, unit, cost, total: cost }];
}

/** Who pays a line: labour that is not paid is in kind; of all else the applicant pays the match share. */
export function sharedLine(cost: CostLine, { labourPaid, matchShare }: Settings): EstimateLine {
  const inKind = cost.material === "labour" && !labourPaid ? cost.total : 0;
  const match = percentOf(cost.total - inKind, matchShare);
  return { ...cost, match, inKind, requested: hundredthSum([cost.total, -inKind, -match], (sum) => sum) };
}
