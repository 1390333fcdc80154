import { weighCut } from "./bestCut";
import type { Choice } from "./choice";
import { type Forest, NONE } from "./forest";
import { UNITS2_PER_TENTH2 } from "./grid";
import type { Job } from "./job";
import type { Random } from "./random";
import { worthOf } from "./worth";

/** The leftovers by area, so that a piece looks only at those near its own size. */
export type Shelves = Shelf[];

/** Leftovers with their sizes beside them: looking each up among a hundred thousand panels takes most of the time. */
interface Shelf {
  readonly panels: number[];
  readonly lengths: number[];
  readonly widths: number[];
}

/** Shelves in area^(1/4): a sheet of one square metre, in units, stands on shelf 200. */
const SHELVES_PER_ROOT = 2 / UNITS2_PER_TENTH2 ** (1 / 4);

/** Of the leftovers on one shelf so many are looked at, the newest: of ten thousand pieces a plan takes a quarter of a per cent more. */
const SEEN = 150;

/** Moves the open leftovers of the forest to their shelves. */
export function shelve(shelves: Shelves, forest: Forest): void {
  for (let slot = 0; slot < forest.openCount; slot++) {
    const panel = forest.open[slot]!;
    forest.slot[panel] = NONE;
    const length = forest.length[panel]!;
    const width = forest.width[panel]!;
    const shelf = (shelves[shelfOf(length * width)] ??= { panels: [], lengths: [], widths: [] });
    shelf.panels.push(panel);
    shelf.lengths.push(length);
    shelf.widths.push(width);
  }
  forest.openCount = 0;
}

/** Finds the leftover and the way of cutting that lose the least worth, and takes the leftover from its shelf. */
export function takeFromShelves(
  shelves: Shelves,
  forest: Forest,
  job: Job,
  piece: number,
  random: Random,
  choice: Choice,
): void {
  choice.leftover = NONE;
  choice.loss = Number.POSITIVE_INFINITY;
  const length = job.length[piece]!;
  const width = job.width[piece]!;
  const turn = job.turn[piece] === 1;
  const area = length * width;
  for (let shelf = shelfOf(area); shelf < shelves.length; shelf++) {
    const own = shelves[shelf];
    if (own === undefined || own.panels.length === 0) continue;
    const least = Math.max(smallestOn(shelf), area);
    // The larger the leftover, the more worth a piece of some size takes from it.
    if (worthOf(least) - worthOf(least - area) > choice.loss) break;
    const { panels, lengths, widths } = own;
    for (let at = Math.max(0, panels.length - SEEN); at < panels.length; at++) {
      const fullLength = lengths[at]!;
      const fullWidth = widths[at]!;
      if (length <= fullLength && width <= fullWidth)
        weighCut(forest, job, piece, panels[at]!, false, random, 0, choice);
      if (turn && width <= fullLength && length <= fullWidth)
        weighCut(forest, job, piece, panels[at]!, true, random, 0, choice);
    }
  }
  if (choice.leftover === NONE) return;
  takeOff(shelves[shelfOf(forest.length[choice.leftover]! * forest.width[choice.leftover]!)]!, choice.leftover);
}

/** The last leftover of a shelf takes the place of one that is taken off. */
function takeOff({ panels, lengths, widths }: Shelf, leftover: number): void {
  const panel = panels.pop()!;
  const length = lengths.pop()!;
  const width = widths.pop()!;
  if (panel === leftover) return;
  const at = panels.indexOf(leftover);
  panels[at] = panel;
  lengths[at] = length;
  widths[at] = width;
}

function shelfOf(area: number): number {
  return Math.floor(Math.sqrt(Math.sqrt(area)) * SHELVES_PER_ROOT);
}

const smallest: number[] = [];

/** The least area on a shelf; worked out once, since a search asks for it again and again. */
function smallestOn(shelf: number): number {
  return (smallest[shelf] ??= Math.floor((shelf / SHELVES_PER_ROOT) ** 4));
}
