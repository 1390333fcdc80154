import type { Progress } from "../cutting/types";
import { Unavailable } from "../measure/errors";
import { inTurns } from "../estimate/inTurns";
import { betterPlan, toBuy, type StockPlan } from "../estimate/stockPlans";
import type { StockJob } from "../estimate/stockJobs";

/** What a planning worker is asked, and what it answers. */
export interface PlanAsk {
  readonly job: StockJob;
  readonly seed: number;
  /** Left out, the short search whose plan is the same on any machine. */
  readonly milliseconds: number | undefined;
}

export type PlanMessage = { readonly progress: Progress } | { readonly plan: StockPlan } | { readonly refused: string };

/** How far the search for one stock has come. */
export interface StockProgress {
  readonly stock: string;
  readonly sheets: number;
  /** Share over the proved bound; 0 when no plan can be better. */
  readonly gap: number;
}

export interface SearchOptions {
  /** The script of the worker. */
  readonly worker: string;
  /** For each stock; 0 for the short search alone. */
  readonly seconds: number;
  readonly cores: number;
  readonly signal: AbortSignal;
  /** Plans so far, by place of their job, and the share of the work that is done. */
  readonly onProgress: (stocks: readonly StockProgress[], done: number) => void;
}

/**
 * Plans stocks in workers, one a core. After a short search each stock is searched in rounds of growing length from
 * other seeds, and the best plan is kept. When the signal aborts, the workers are ended at once and the best plans so
 * far are the answer; a stock without a plan yet is waited for.
 *
 * @returns the plans in the order of the jobs
 */
export async function searchPlans(jobs: readonly StockJob[], options: SearchOptions): Promise<readonly StockPlan[]> {
  const { worker, seconds, cores, signal, onProgress } = options;
  const best: (StockPlan | undefined)[] = jobs.map(() => undefined);
  const running: StockProgress[] = jobs.map(({ stock }) => ({ stock, sheets: 0, gap: Number.NaN }));
  const rounds = roundsOf(seconds);
  const asks = [undefined, ...rounds].flatMap((milliseconds, round) =>
    jobs.map((job, place) => ({ place, ask: { job, seed: round + 1, milliseconds } satisfies PlanAsk })),
  );
  const total = asks.length;
  /** Asks that a thread is working on. */
  let begun = 0;
  const report = () => onProgress([...running], total === 0 ? 1 : 1 - (asks.length + begun) / total);
  const searchOne = async (thread: Worker, { place, ask }: (typeof asks)[number]): Promise<boolean> => {
    begun++;
    const plan = await answer(thread, ask, best[place] === undefined ? undefined : signal, (progress) => {
      const before = running[place]!;
      if (best[place] === undefined || progress.sheets < before.sheets) {
        running[place] = { ...before, sheets: progress.sheets, gap: progress.gap };
        report();
      }
    });
    begun--;
    if (plan === undefined) return false;
    best[place] = betterPlan(plan, best[place]);
    running[place] = progressOf(best[place]);
    report();
    return true;
  };
  /** The next ask that can still better something. */
  const take = () => {
    for (let next = asks.shift(); next !== undefined; next = asks.shift()) {
      const had = best[next.place];
      if (had === undefined) return next;
      if (!signal.aborted && had.plan !== undefined && !had.plan.provedLeast) return next;
    }
    return undefined;
  };
  report();
  await inTurns({
    threads: Math.min(Math.max(1, cores), jobs.length),
    start: () => new Worker(worker, { type: "module" }),
    end: (thread) => thread.terminate(),
    next: take,
    answer: searchOne,
  });
  return best.map((plan) => plan!);
}

/** Rounds of 1, 2, 4 ... seconds that fill the time, ms. */
export function roundsOf(seconds: number): readonly number[] {
  const rounds: number[] = [];
  let left = seconds;
  for (let round = 1; left > 0; round *= 2) {
    const taken = left - round < round ? left : round;
    rounds.push(taken * 1000);
    left -= taken;
  }
  return rounds;
}

function progressOf({ stock, form, plan }: StockPlan): StockProgress {
  if (plan === undefined) return { stock, sheets: 0, gap: 0 };
  const bound = form === "roll" ? plan.rollBound : plan.sheetBound;
  const taken = form === "roll" ? plan.rollLength : toBuy({ form, plan });
  return { stock, sheets: toBuy({ form, plan }), gap: plan.provedLeast || bound === 0 ? 0 : taken / bound - 1 };
}

/** One answer of a worker; undefined when the signal aborts first. */
function answer(
  thread: Worker,
  ask: PlanAsk,
  signal: AbortSignal | undefined,
  onProgress: (progress: Progress) => void,
): Promise<StockPlan | undefined> {
  return new Promise((resolve, reject) => {
    if (signal?.aborted === true) return resolve(undefined);
    signal?.addEventListener("abort", () => resolve(undefined), { once: true });
    thread.onmessage = ({ data }: MessageEvent<PlanMessage>) => {
      if ("progress" in data) onProgress(data.progress);
      else if ("plan" in data) resolve(data.plan);
      else reject(new Unavailable(data.refused));
    };
    thread.onerror = (event) => reject(new Error(event.message));
    thread.postMessage(ask);
  });
}
