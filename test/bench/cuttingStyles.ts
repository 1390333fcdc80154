import { newSheets } from "../../src/cutting/sheetLabels";
import { planStock } from "../../src/estimate/stockPlans";
import { boxes, DEMO, surveyJobs } from "./cuttingSurveys";

/** What to plan in both styles: `demo` or a number of boxes. */
export interface StylesRun {
  readonly survey: string;
  readonly styles: readonly ("bench" | "least sheets")[];
  readonly seconds: number;
  /** Steps for each stock in place of the seconds: the same plans on any machine. */
  readonly iterations: number | undefined;
  readonly seeds: number;
  readonly settings: readonly (readonly string[])[];
  /** All stocks instead of board alone. */
  readonly allStocks: boolean;
}

/** Plans a survey's stocks in each style with the same time, and prints the figures of each and the means over the seeds. */
export function compareStyles({ survey, styles, seconds, iterations, seeds, settings, allStocks }: StylesRun): void {
  for (const style of styles) {
    const means = new Map<string, number>();
    for (let seed = 1; seed <= seeds; seed++) {
      const cells = survey === "demo" ? DEMO : boxes(Number(survey), seed);
      const jobs = surveyJobs(cells, [["plan style", style], ...settings], allStocks ? "any" : "board");
      for (const job of jobs) {
        const budget = iterations === undefined ? { milliseconds: (seconds * 1000) / jobs.length } : { iterations };
        const start = process.cpuUsage();
        const { plan, figures } = planStock(job, { seed, budget });
        const { user, system } = process.cpuUsage(start);
        const line = {
          sheets: plan === undefined ? 0 : newSheets(plan).length,
          least: plan?.sheetBound ?? 0,
          metres: (plan?.rollLength ?? 0) / 1000,
          leastMetres: (plan?.rollBound ?? 0) / 1000,
          ...figures,
          cpuSeconds: (user + system) / 1e6,
        };
        console.log(style, seed, job.stock, shown(line));
        for (const [key, value] of Object.entries(line)) {
          const name = `${job.source?.kind === "roll" ? "rolls" : "sheets"}: ${key}`;
          means.set(name, (means.get(name) ?? 0) + Number(value) / seeds);
        }
      }
    }
    console.log(`mean of ${seeds}, ${style}:`, shown(Object.fromEntries(means)));
  }
  console.log(`memory ${(process.memoryUsage().rss / 2 ** 20).toFixed(0)} MB`);
}

function shown(figures: object): string {
  return Object.entries(figures)
    .map(([key, value]) => `${key} ${Number(Number(value).toFixed(2))}`)
    .join(", ");
}
