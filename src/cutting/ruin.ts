import { type Forest, NONE } from "./forest";
import { discard, takeOut } from "./panels";
import { forgetSheet, type Search } from "./search";

/** Panels taken out in a step: one to this many, chosen evenly. */
const MOST_PANELS = 8;

/** Takes some panels, and what is on them, out of sheets chosen by chance. */
export function ruin(search: Search): void {
  const { random } = search;
  for (let left = 1 + random.below(MOST_PANELS); left > 0 && search.sheetCount > 0; left--) {
    ruinPanel(search, random.below(search.sheetCount));
  }
}

function ruinPanel(search: Search, at: number): void {
  const { forest } = search;
  const sheet = search.sheets[at]!;
  const panel = randomPanel(search, sheet);
  const before = search.outCount;
  if (panel === sheet) {
    search.outCount = discard(forest, sheet, search.out, search.outCount);
    forgetSheet(search, at);
  } else {
    search.outCount = takeOut(forest, panel, search.out, search.outCount);
    if (isBare(forest, sheet)) {
      discard(forest, sheet, search.out, search.outCount);
      forgetSheet(search, at);
    }
  }
  for (let index = before; index < search.outCount; index++) search.outArea += search.job.area[search.out[index]!]!;
}

function isBare(forest: Forest, sheet: number): boolean {
  return forest.piece[sheet] === NONE && forest.first[sheet] === NONE;
}

/** A panel of the sheet that is cut or a piece, each as likely as the others. */
function randomPanel(search: Search, sheet: number): number {
  const { forest, panels } = search;
  let count = 0;
  let panel = sheet;
  for (;;) {
    if (forest.first[panel] !== NONE) {
      panels[count++] = panel;
      panel = forest.first[panel]!;
      continue;
    }
    if (forest.piece[panel] !== NONE) panels[count++] = panel;
    while (panel !== sheet && forest.next[panel] === NONE) panel = forest.parent[panel]!;
    if (panel === sheet) break;
    panel = forest.next[panel]!;
  }
  return count === 0 ? sheet : panels[search.random.below(count)]!;
}
