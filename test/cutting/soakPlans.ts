import { faultsOf, randomBenchJob, randomJob } from "./jobs";

// Plans of random jobs in both styles through the verifier: `SOAK_RUNS=100000 tsx test/cutting/soakPlans.ts`, half of them
// in each style. `SOAK_SEED=20001` goes on from there. Outside the test runner, in which it takes longer.

const RUNS = Number(process.env["SOAK_RUNS"] ?? 1000);
const from = Number(process.env["SOAK_SEED"] ?? 1);
/** Jobs of each style between two reports. */
const REPORTED = 1000;
/** Of the processor, not of the clock: on a busy machine, or one that sleeps, a job of a tenth of a second takes minutes. */
const SLOWEST_SHOWN_S = 1;

function spent(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

const styles = { "least sheets": randomJob, bench: randomBenchJob };
const last = from + Math.ceil(RUNS / 2) - 1;
let pieces = 0;
let faulty = 0;
for (let seed = from; seed <= last; seed++) {
  for (const [style, jobOf] of Object.entries(styles)) {
    const job = jobOf(seed);
    const start = spent();
    try {
      for (const fault of faultsOf(job)) {
        faulty++;
        process.stdout.write(`${style}, seed ${seed}: ${fault}\n`);
      }
    } catch (error) {
      faulty++;
      process.stdout.write(`${style}, seed ${seed}: ${(error as Error).stack}\n`);
    }
    const taken = spent() - start;
    if (taken > SLOWEST_SHOWN_S) process.stdout.write(`${style}, seed ${seed} took ${taken.toFixed(1)} CPU seconds\n`);
    pieces += job.pieces.reduce((sum, { count = 1 }) => sum + count, 0);
  }
  if (seed % REPORTED === 0 || seed === last)
    process.stdout.write(
      `seeds ${from} to ${seed} in both styles: ${pieces} pieces, ${faulty} faults, ${spent()} CPU seconds\n`,
    );
}
process.exitCode = faulty === 0 ? 0 : 1;
