import { stockJobs, planStock } from "../../src/estimate/stockPlans";
import { boxes, surveyJobs } from "./cuttingSurveys";
void stockJobs;
const count = Number(process.argv[2]);
const start = performance.now();
const jobs = surveyJobs(boxes(count, 1), [["plan style", process.argv[3] ?? "bench"]], "any");
console.log("sized", performance.now() - start, jobs.map((j) => [j.stock, j.pieces.length]));
for (const job of jobs) {
  const t = performance.now();
  const c = process.cpuUsage();
  const plan = planStock(job, { budget: process.argv[4] ? { milliseconds: Number(process.argv[4]) } : { iterations: 2000 } });
  const cpu = process.cpuUsage(c);
  console.log(job.stock, plan.plan?.sheets.length, plan.plan?.sheetBound, plan.plan?.rollLength, plan.plan?.rollBound, JSON.stringify(plan.figures), "ms", performance.now() - t, "cpu", (cpu.user + cpu.system) / 1000, "MB", process.memoryUsage().rss / 2 ** 20);
}
