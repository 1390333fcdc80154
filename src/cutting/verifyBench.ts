import { countPlan, type PlanFigures } from "./countPlan";
import type { BenchStyle, CuttingOptions, Plan } from "./types";

const TOLERANCE = 1e-6;

/**
 * What is wrong with a plan of the bench style, in addition to what is wrong with any plan: blanks too small for what is made of
 * them, more changes of direction than the limit, a cut that is too long.
 *
 * @param counted the plan's figures, where they are known: sheets are then counted one by one only when there are too many stages
 */
export function verifyBench(plan: Plan, options: CuttingOptions, counted?: PlanFigures): readonly string[] {
  const { bench } = options;
  if (bench === undefined) return [];
  return [...checkBlanks(plan, options), ...checkStages(plan, options, bench, counted), ...checkCutLength(plan, bench)];
}

/** Walls lie along their strip with the gap of a cut between them; what is made of any other blank is no larger than it. */
function checkBlanks({ sheets }: Plan, { pieceGap = 0 }: CuttingOptions): readonly string[] {
  const faults = new Set<string>();
  for (const { placements } of sheets)
    for (const { piece: blank } of placements) {
      const { item, part, length, width, holds } = blank;
      if (holds === undefined) continue;
      // As many gaps as walls, but one.
      let taken = -pieceGap;
      let widest = 0;
      for (const { piece, count } of holds) {
        taken += (piece.length + pieceGap) * count;
        widest = Math.max(widest, piece.width);
        if (piece.item !== item) faults.add(`${part} of ${item} holds a part of ${piece.item}`);
      }
      if (taken > length + TOLERANCE || widest > width + TOLERANCE)
        faults.add(`${part} of ${item} is too small for what is made of it`);
    }
  return [...faults];
}

function checkStages(
  plan: Plan,
  { edgeTrim = 0, pieceGap = 0 }: CuttingOptions,
  { stages, leastWaste }: BenchStyle,
  counted: PlanFigures | undefined,
): readonly string[] {
  if (counted !== undefined && counted.stages <= stages) return [];
  const count = { edgeTrim, pieceGap, stages, leastWaste, absorbed: leastWaste };
  return plan.sheets.flatMap((sheet, index) => {
    const own = countPlan([sheet], count);
    return own.stages > stages ? [`sheet ${index + 1}: ${own.stages} stages where ${stages} are allowed`] : [];
  });
}

function checkCutLength({ sheets }: Plan, { cutLength }: BenchStyle): readonly string[] {
  if (cutLength === undefined) return [];
  return sheets.flatMap(({ cuts }, index) =>
    cuts
      .filter(({ from, to }) => to - from > cutLength + TOLERANCE)
      .map(({ from, to }) => `sheet ${index + 1}: a cut of ${to - from} mm is longer than ${cutLength} mm`),
  );
}
