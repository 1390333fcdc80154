import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import type { Budget, Progress } from "../cutting/types";
import { inTurns } from "../estimate/inTurns";
import { betterPlan, type StockPlan } from "../estimate/stockPlans";
import type { StockJob } from "../estimate/stockJobs";
import { InputError } from "../measure/errors";
import { besideProgram } from "./besideProgram";
import { warn } from "./print";

/** What a planning thread is started with, and then asked. */
export interface Shared {
  readonly stop: Int32Array;
}

export interface Ask {
  readonly place: number;
  readonly job: StockJob;
  readonly seed: number;
  readonly budget: Budget;
}

export type Message =
  | { readonly progress: Progress; readonly stock: string }
  | { readonly place: number; readonly plan: StockPlan }
  | { readonly place: number; readonly refused: Pick<InputError, "argument" | "got" | "expected" | "cure"> };

export interface BesideOptions {
  /** Time for each stock; with neither this nor `steps`, one usual time for all stocks together. */
  readonly milliseconds?: number | undefined;
  /** Steps of the search for each stock: the same plan on any machine. */
  readonly steps?: number | undefined;
  readonly onProgress?: (stock: string, progress: Progress) => void;
}

/**
 * Plans stocks on threads beside this one, one a core. With a time budget, idle cores search the same
 * stocks from other seeds, and the best plan of each is kept. The first Ctrl-C ends all searches with what they have.
 *
 * @returns the plans in the order of the jobs
 * @throws InputError as `planStock`
 */
export async function planBeside(jobs: readonly StockJob[], options: BesideOptions): Promise<readonly StockPlan[]> {
  const { milliseconds, onProgress } = options;
  const cores = availableParallelism();
  const seeds = milliseconds === undefined ? 1 : Math.max(1, Math.floor(cores / Math.max(1, jobs.length)));
  const asks = jobs.flatMap((job, place) =>
    Array.from({ length: seeds }, (_, seed): Ask => ({
      place,
      job,
      seed: seed + 1,
      budget: budgetOf(job, jobs, cores, options),
    })),
  );
  const best: StockPlan[] = [];
  const stop = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
  const interrupt = () => {
    Atomics.store(stop, 0, 1);
    warn("stopping: the best plans so far are kept");
  };
  process.once("SIGINT", interrupt);
  try {
    await inTurns({
      threads: Math.min(cores, asks.length),
      start: () => new Worker(besideProgram("planThread.js"), { workerData: { stop } satisfies Shared }),
      end: (worker) => worker.terminate(),
      next: () => asks.shift(),
      answer: async (worker, ask) => {
        best[ask.place] = betterPlan(await answer(worker, ask), best[ask.place]);
        return true;
      },
    });
  } finally {
    process.off("SIGINT", interrupt);
  }
  return best;

  function answer(worker: Worker, ask: Ask): Promise<StockPlan> {
    return new Promise((resolve, reject) => {
      worker.removeAllListeners();
      worker.on("error", reject);
      worker.on("message", (message: Message) => {
        if ("progress" in message) onProgress?.(message.stock, message.progress);
        else if ("plan" in message) resolve(message.plan);
        else reject(inputError(message.refused));
      });
      worker.postMessage(ask);
    });
  }
}

/** The time that all stocks share where nobody says how long to search. */
const USUAL_MS = 10_000;

/** Steps in which a small job is as good as done, for it and for each of its pieces. */
const STEPS = 3000;
const STEPS_PER_PIECE = 150;

function budgetOf(
  job: StockJob,
  jobs: readonly StockJob[],
  cores: number,
  { milliseconds, steps }: BesideOptions,
): Budget {
  if (steps !== undefined) return { iterations: steps };
  if (milliseconds !== undefined) return { milliseconds };
  const pieces = jobs.reduce((sum, each) => sum + each.pieces.length, 0);
  const share = (job.pieces.length / Math.max(1, pieces)) * Math.min(cores, jobs.length);
  return {
    iterations: STEPS + STEPS_PER_PIECE * job.pieces.length,
    milliseconds: USUAL_MS * Math.min(1, share),
  };
}

/** An error loses its kind on its way between threads. */
function inputError({ argument, got, expected, cure }: Pick<InputError, "argument" | "got" | "expected" | "cure">) {
  return new InputError(argument, got, expected, cure);
}
