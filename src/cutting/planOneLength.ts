import type { CutSheet } from "./construct";
import { UNITS_PER_MM, unitsUp } from "./grid";
import { prepareRoll } from "./job";
import { layOutPlan } from "./layOutPlan";
import { areasOf, nothingFits } from "./planParts";
import { constructRoll, improveRoll } from "./planRoll";
import { rollBound } from "./rollBound";
import type { CuttingOptions, Piece, Plan, Roll } from "./types";
import type { Watch } from "./watch";

const MM_PER_M = 1000;

/** How to cut pieces off a roll in one length, as short as can be found. */
export function planOneLength(pieces: readonly Piece[], roll: Roll, options: CuttingOptions, watch: Watch): Plan {
  const { job, tooLarge } = prepareRoll(pieces, roll, options);
  const gap = unitsUp(options.pieceGap ?? 0);
  const trim = 2 * (options.edgeTrim ?? 0);
  const taken = (units: number) => (units === 0 ? 0 : (units - gap) / UNITS_PER_MM + trim);
  const cost = (units: number) => (taken(units) / MM_PER_M) * roll.pricePerM;
  const bound = rollBound(job, job.kinds[0]!.width, watch.mostSteps);
  let best = job.size === 0 ? undefined : constructRoll(job, bound);
  const length = () => best?.length ?? 0;
  const report = () =>
    options.onProgress?.({
      sheets: best === undefined ? 0 : 1,
      cost: taken(length()),
      bound: taken(bound),
      gap: bound === 0 ? 0 : length() / bound - 1,
      iterations: watch.steps(),
      elapsedMs: watch.elapsedMs(),
    });
  report();
  if (best !== undefined)
    improveRoll(job, best, bound, options.seed ?? 1, watch, (panel) => {
      best = panel;
      report();
    });
  const cutSheets: readonly CutSheet[] = best === undefined ? [] : [{ kind: 0, panel: best }];
  const face = { name: roll.name, length: taken(length()), width: roll.width };
  const laidOut = layOutPlan(job, cutSheets, [face], options);
  const sheets = cutSheets.length;
  return {
    ...laidOut,
    counts: [{ stock: roll.name, sheets, packs: sheets, cost: cost(length()) }],
    cost: cost(length()),
    costBound: cost(bound),
    sheetBound: sheets,
    rollLength: taken(length()),
    rollBound: taken(bound),
    provedLeast: length() <= bound && !nothingFits(job, tooLarge),
    uncuttable: tooLarge,
    ...areasOf(laidOut.sheets),
    iterations: watch.steps(),
  };
}
