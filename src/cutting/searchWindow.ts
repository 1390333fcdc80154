import { type Forest, NONE } from "./forest";
import { isLeftover, openLeftover } from "./leftovers";
import type { Search } from "./search";

/** Pieces on the sheets that are changed together, about, and the steps before other sheets are taken. */
const WINDOW_PIECES = 400;

/** Parks all but some sheets, chosen by chance, so that a step looks through few leftovers however large the job. */
export function chooseWindow(search: Search, again: boolean): void {
  const all = search.sheetCount + search.parked.length / 2;
  const wanted = Math.ceil((WINDOW_PIECES * all) / search.job.size);
  if (!again && wanted >= all && search.parked.length === 0) return;
  gather(search);
  const { sheets, kinds, random, forest } = search;
  while (search.sheetCount > wanted) {
    const at = random.below(search.sheetCount);
    const last = --search.sheetCount;
    search.parked.push(sheets[at]!, kinds[at]!);
    sheets[at] = sheets[last]!;
    kinds[at] = kinds[last]!;
  }
  for (let slot = 0; slot < forest.openCount; slot++) forest.slot[forest.open[slot]!] = NONE;
  forest.openCount = 0;
  for (let index = 0; index < search.sheetCount; index++) reopen(forest, sheets[index]!);
}

/** Puts all sheets into the window. */
export function gather(search: Search): void {
  for (let index = 0; index < search.parked.length; index += 2) {
    search.sheets[search.sheetCount] = search.parked[index]!;
    search.kinds[search.sheetCount++] = search.parked[index + 1]!;
  }
  search.parked = [];
}

function reopen(forest: Forest, panel: number): void {
  if (isLeftover(forest, panel)) {
    forest.totalWorth -= forest.worth[panel]!;
    openLeftover(forest, panel);
  } else for (let part = forest.first[panel]!; part !== NONE; part = forest.next[part]!) reopen(forest, part);
}
