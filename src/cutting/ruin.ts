import { type Forest, NONE } from "./forest";
import { discard, takeOut } from "./takeOut";
import { forgetSheet, type Search } from "./search";

/** Sheets that a step changes, and panels it takes out of them: one to this many, chosen evenly. */
const MOST_SHEETS = 3;
const MOST_PANELS = 12;

/** Takes some panels, and what is on them, out of a few sheets chosen by chance. */
export function ruin(search: Search): void {
  if (search.sheetCount === 0) return;
  const { random } = search;
  const chosen = Array.from(
    { length: 1 + random.below(MOST_SHEETS) },
    () => search.sheets[random.below(search.sheetCount)]!,
  );
  for (let left = 1 + random.below(MOST_PANELS); left > 0; left--) {
    const at = placeOf(search, chosen[random.below(chosen.length)]!);
    if (at !== NONE) ruinPanel(search, at);
  }
}

/** Where a sheet is on the list; NONE when it was given up. */
function placeOf(search: Search, sheet: number): number {
  for (let at = 0; at < search.sheetCount; at++) if (search.sheets[at] === sheet) return at;
  return NONE;
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
