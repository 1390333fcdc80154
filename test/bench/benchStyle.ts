import { countPlan } from "../../src/cutting/countPlan";
import { planCutting } from "../../src/cutting/planCutting";
import type { BenchStyle } from "../../src/cutting/types";
import { verifyPlan } from "../../src/cutting/verify";
import { boxes, DEMO, surveyJobs } from "./cuttingSurveys";
import { parseArgs } from "node:util";

const { values } = parseArgs({
  options: {
    survey: { type: "string", default: "demo" },
    seconds: { type: "string", default: "10" },
    seeds: { type: "string", default: "1" },
    stages: { type: "string", default: "3" },
    style: { type: "string", default: "both" },
  },
});
const bench: BenchStyle = {
  stages: Number(values.stages),
  leastWaste: 5,
  matchAllowance: 3,
  spareSheets: 0.04,
  benchLength: 1500,
};
const seeds = Number(values.seeds);
for (const [style, own] of [
  ["least sheets", undefined],
  ["bench", bench],
] as const) {
  if (values.style !== "both" && values.style !== style) continue;
  const sums: Record<string, number> = {};
  for (let seed = 1; seed <= seeds; seed++) {
    const jobs = surveyJobs(values.survey === "demo" ? DEMO : boxes(Number(values.survey), seed), [], "board");
    for (const job of jobs) {
      const options = {
        edgeTrim: job.edgeTrim,
        pieceGap: job.pieceGap,
        bench: own,
        seed,
        budget: { milliseconds: (Number(values.seconds) * 1000) / jobs.length },
      };
      const plan = planCutting(job.pieces, job.source!, options);
      const faults = verifyPlan(plan, job.pieces, job.source!, options);
      if (faults.length > 0) console.log(faults.slice(0, 4));
      const figures = countPlan(plan.sheets, {
        edgeTrim: job.edgeTrim,
        pieceGap: job.pieceGap,
        stages: bench.stages,
        leastWaste: bench.leastWaste,
        absorbed: bench.leastWaste,
      });
      const line = {
        sheets: plan.sheets.length,
        bound: plan.sheetBound,
        ...figures,
        pieces: job.pieces.length,
        iterations: plan.iterations,
      };
      for (const [key, value] of Object.entries(line)) sums[key] = (sums[key] ?? 0) + value / seeds;
      console.log(style, seed, job.stock, JSON.stringify(line));
    }
  }
  console.log(
    "SUM",
    style,
    JSON.stringify(Object.fromEntries(Object.entries(sums).map(([k, v]) => [k, Number(v.toFixed(1))]))),
  );
}
