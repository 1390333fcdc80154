/** How much of a search is spent: of a fixed amount of work, or of a time. */
export interface Effort {
  /** Counts work done, in looks at one item under one size. */
  readonly count: (looks: number) => void;
  /** 0 at the start, 1 when the budget is spent. */
  readonly spent: () => number;
}

/** `looks`: the same answer on any machine. `milliseconds`: as good an answer as there is time for. */
export type EffortBudget = { readonly looks: number } | { readonly milliseconds: number };

/** The clock is read once in so many looks. */
const LOOKS_PER_CLOCK = 20_000;

/** @param shouldStop asked whenever the clock is read; a search that is stopped keeps what it has */
export function createEffort(budget: EffortBudget, shouldStop: () => boolean = () => false): Effort {
  const start = performance.now();
  let looks = 0;
  let next = 0;
  let share = 0;
  return {
    count(more) {
      looks += more;
      if (looks < next) return;
      next = looks + LOOKS_PER_CLOCK;
      share = "looks" in budget ? looks / budget.looks : (performance.now() - start) / budget.milliseconds;
      if (shouldStop()) share = 1;
    },
    spent: () => share,
  };
}
