import type { Budget } from "./types";

/** Counts the steps of a search and says when its budget is spent. */
export interface Watch {
  /** Counts a step, or several for one that takes as long; true when no further one may be made. */
  readonly over: (count?: number) => boolean;
  readonly steps: () => number;
  /** The most steps that the budget has; Infinity where time alone ends it. */
  readonly mostSteps: number;
  readonly elapsedMs: () => number;
  /** The part of the budget that is spent, from 0 to 1. */
  readonly spent: () => number;
}

/** A watch that is over when a part of the other's budget is spent, and counts its steps on the other. */
export function shareOf(watch: Watch, part: number): Watch {
  return { ...watch, over: (count) => watch.spent() >= part || watch.over(count) };
}

/** A watch over the next stretch of another's budget, which ends when that part of the whole is spent. */
export function stretchOf(watch: Watch, end: number): Watch {
  const begin = watch.spent();
  return {
    ...watch,
    over: (count) => watch.spent() >= end || watch.over(count),
    spent: () => (begin >= end ? 1 : (watch.spent() - begin) / (end - begin)),
  };
}

/** With more pieces for each of its steps, a search changes nothing that a person would see. */
const MOST_PIECES_PER_STEP = 10;

/** Whether the budget is so small beside the pieces that getting ready to search would take longer than searching. */
export function isTooShort({ size }: { readonly size: number }, { mostSteps }: Watch): boolean {
  return mostSteps * MOST_PIECES_PER_STEP < size;
}

/** The clock and the caller are asked once in so many steps. */
const STEPS_PER_LOOK = 16;

/** @param budget with neither limit, nothing is searched beyond the first plan */
export function createWatch(budget: Budget, shouldStop: () => boolean): Watch {
  const start = performance.now();
  const mostSteps = budget.iterations ?? (budget.milliseconds === undefined ? 0 : Number.POSITIVE_INFINITY);
  const end = start + (budget.milliseconds ?? Number.POSITIVE_INFINITY);
  let now = start;
  let steps = 0;
  let ended = false;
  return {
    over(count = 1) {
      if (ended || steps >= mostSteps) return true;
      if (steps % STEPS_PER_LOOK < count) ended = performance.now() >= end || shouldStop();
      steps += count;
      return ended;
    },
    spent: () => {
      if (steps % STEPS_PER_LOOK === 0) now = performance.now();
      return Math.max(steps / mostSteps, (now - start) / (end - start));
    },
    steps: () => steps,
    mostSteps,
    elapsedMs: () => performance.now() - start,
  };
}
