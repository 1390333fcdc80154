import { faultsOf, randomBenchJob, randomJob } from "./jobs";

// Plans of random jobs in both styles through the verifier: `SOAK_RUNS=100000 tsx test/cutting/soakPlans.ts`, half of them
// in each style. `SOAK_SEED=20001` goes on from there. Outside the test runner, in which it takes longer.

const RUNS = Number(process.env["SOAK_RUNS"] ?? 1000);
const from = Number(process.env["SOAK_SEED"] ?? 1);
/** Jobs of each style between two reports. */
const REPORTED = 1000;
const SLOWEST_SHOWN_MS = 1000;

const styles = { "least sheets": randomJob, bench: randomBenchJob };
const last = from + Math.ceil(RUNS / 2) - 1;
let pieces = 0;
let faulty = 0;
for (let seed = from; seed <= last; seed++) {
  for (const [style, jobOf] of Object.entries(styles)) {
    const job = jobOf(seed);
    const start = performance.now();
    try {
      for (const fault of faultsOf(job)) {
        faulty++;
        process.stdout.write(`${style}, seed ${seed}: ${fault}\n`);
      }
    } catch (error) {
      faulty++;
      process.stdout.write(`${style}, seed ${seed}: ${(error as Error).stack}\n`);
    }
    const taken = performance.now() - start;
    if (taken > SLOWEST_SHOWN_MS) process.stdout.write(`${style}, seed ${seed} took ${taken.toFixed(0)} ms\n`);
    pieces += job.pieces.reduce((sum, { count = 1 }) => sum + count, 0);
  }
  if (seed % REPORTED === 0 || seed === last)
    process.stdout.write(
      `seeds ${from} to ${seed} in both styles: ${pieces} pieces, ${faulty} faults, ${process.cpuUsage().user / 1e6} s\n`,
    );
}
process.exitCode = faulty === 0 ? 0 : 1;
