import { neededClear } from "../../item/readyMade";
import { InputError } from "../../measure/errors";
import { plainName } from "../../settings/names";
import type { ListedSize } from "../../settings/sizesList";
import type { SizedSurvey } from "../sizeSurvey";
import { chooseSizes } from "./chooseSizes";
import type { EffortBudget } from "./effort";
import { fillersOf } from "./fillersOf";
import { fits, type InsideSize } from "./sizesProblem";

/** A box of the list, and how many of the survey go into it. */
export interface ReadyMadeSize {
  readonly listed: PricedSize;
  readonly enclosures: number;
  /** Directions of its items with so much room left that they want a filler. */
  readonly fillers: number;
}

export interface ReadyMadeSizes {
  readonly sizes: readonly ReadyMadeSize[];
  /** By the place of the row in the survey: the name of its size; empty where none chosen holds it. */
  readonly sizeOf: ReadonlyMap<number, string>;
  readonly toMeasure: { readonly enclosures: number; readonly leastPossible: number };
  /** Price of all that go into a box of the list; and no choice of so many sizes costs less. */
  readonly total: number;
  readonly least: number;
}

type PricedSize = ListedSize & { readonly price: number };

/**
 * The list of ready-made boxes among the settings: a table of sizes with a price for each; none where it has no prices.
 *
 * @throws InputError when some have a price and others none
 */
export function readyMadeList(sizes: readonly ListedSize[]): readonly PricedSize[] {
  const priced = sizes.filter((size): size is PricedSize => size.price !== undefined);
  const without = sizes.find(({ price }) => price === undefined);
  if (without === undefined || priced.length === 0) return priced;
  const cure = "a table with prices is a list of boxes to buy";
  throw new InputError("sizes", `no price for ${without.name}`, "give a price for every size, or for none", cure);
}

/**
 * At most so many boxes of a list for all items: fewest that go into none, then least price, with a proven bound. An item
 * needs its own size and its fit, without a covering; it goes into the cheapest chosen, of equals the first by name.
 */
export function readyMadeSizes(
  { outcomes, settings }: SizedSurvey,
  list: readonly PricedSize[],
  count: number,
  budget: EffortBudget,
): ReadyMadeSizes {
  const groups = new Map<string, number>();
  const groupOf = (enclosure: string): number => {
    const name = plainName(enclosure);
    groups.set(name, groups.get(name) ?? groups.size);
    return groups.get(name)!;
  };
  const rows = outcomes.flatMap((outcome, place) =>
    outcome.state === "sized" ? [{ sized: outcome.sized, quantity: outcome.quantity, place }] : [],
  );
  const needs = rows.map(({ sized, quantity }) => ({
    ...neededClear(sized),
    group: groupOf(sized.kind.name),
    quantity,
  }));
  const bySize = new Map<string, PricedSize>();
  const cheapestFirst = list.toSorted((one, other) => one.price - other.price || (one.name < other.name ? -1 : 1));
  const sizeOfListed = ({ enclosure, width, height, depth }: ListedSize): InsideSize => ({
    group: groupOf(enclosure),
    x: width,
    y: height,
    z: depth,
  });
  for (const listed of cheapestFirst) {
    const key = keyOf(sizeOfListed(listed));
    if (!bySize.has(key)) bySize.set(key, listed);
  }
  const offered = [...bySize.values()].map(sizeOfListed);
  const cost = (size: InsideSize): number => bySize.get(keyOf(size))?.price ?? 0;
  const slack = settings.slack === 0 ? undefined : settings.slack;
  const found = chooseSizes({ needs, count, slack, cost, offered }, budget, SEED);
  const chosen = new Set(found.sizes.map(keyOf));
  const taken = [...bySize].filter(([key]) => chosen.has(key)).map(([, listed]) => listed);
  const sizeOf = needs.map((need) => taken.find((listed) => fits(need, sizeOfListed(listed), slack)));
  return {
    sizes: taken.map((listed) => {
      const own = needs.filter((_, at) => sizeOf[at] === listed);
      return {
        listed,
        enclosures: own.reduce((sum, { quantity }) => sum + quantity, 0),
        fillers: own.reduce((sum, need) => sum + need.quantity * fillersOf(need, sizeOfListed(listed)), 0),
      };
    }),
    sizeOf: new Map(rows.map(({ place }, at) => [place, sizeOf[at]?.name ?? ""])),
    toMeasure: { enclosures: found.toMeasure, leastPossible: found.leastToMeasure },
    total: found.total,
    least: found.leastTotal,
  };
}

const SEED = 1;

function keyOf({ group, x, y, z }: InsideSize): string {
  return `${group} ${x} ${y} ${z}`;
}
