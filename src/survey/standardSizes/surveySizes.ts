import type { Assembly } from "../../enclosure/assembly";
import { boardsOf, netAreaM2 } from "../../item/answers";
import { sizeItem, type Sized } from "../../item/sizeItem";
import { enlarged, insideOf } from "../../item/standardSize";
import type { Mm } from "../../measure/units";
import { boardName } from "../../settings/boards";
import type { SizedSurvey } from "../sizeSurvey";
import type { SurveyItem } from "../surveyItems";
import { chooseSizes } from "./chooseSizes";
import type { EffortBudget } from "./effort";
import { fillersOf } from "./fillersOf";
import type { InsideSize } from "./sizesProblem";

/** A standard inside size of one kind, construction and board. */
export interface StandardSize {
  /** A, B, C and so on. */
  readonly name: string;
  readonly enclosure: string;
  readonly board: string;
  readonly height: Mm;
  readonly width: Mm;
  readonly depth: Mm;
  readonly enclosures: number;
  /** Net area of board of one, m2. */
  readonly boardM2: number;
  /** Directions of its items with so much room left that they want a filler. */
  readonly fillers: number;
}

export interface SurveySizes {
  readonly sizes: readonly StandardSize[];
  /** By the place of the row in the survey: the name of its size; empty where it is made to measure. */
  readonly sizeOf: ReadonlyMap<number, string>;
  /** Kinds, constructions and boards that share no size: as many sizes at the least, or some are made to measure. */
  readonly groups: number;
  readonly toMeasure: { readonly enclosures: number; readonly leastPossible: number; readonly boardM2: number };
  /** Net area of board of all, m2; and no choice of so many sizes takes less. */
  readonly totalM2: number;
  readonly leastM2: number;
  /** The same where every enclosure is made to its own measure. */
  readonly ownM2: number;
}

/**
 * At most so many standard inside sizes for all enclosures of a survey: fewest made to measure, then least net area of
 * board, with a proven bound. A size is of one kind, one construction and one board, and is nowhere larger than an item
 * needs by more than the setting `slack`.
 *
 * @param seed the same seed and number of looks give the same answer
 */
export function surveySizes(
  { survey, outcomes, settings }: SizedSurvey,
  count: number,
  budget: EffortBudget,
  shouldStop?: () => boolean,
): SurveySizes {
  const rows = outcomes.flatMap((outcome, place) =>
    outcome.state === "sized" ? [{ ...outcome, sized: toOwnMeasure(outcome.sized), place }] : [],
  );
  const groups = new Map<string, { readonly group: number; readonly sized: Sized }>();
  const needs = rows.map(({ sized, quantity, place }) => {
    const key = groupKey(sized, survey.items[place]!);
    const known = groups.get(key) ?? { group: groups.size, sized };
    groups.set(key, known);
    return { ...insideOf(sized.assembly), group: known.group, quantity };
  });
  const first = [...groups.values()].map(({ sized }) => sized);
  const cost = (size: InsideSize): number => boardM2(enlarged(first[size.group]!, size));
  const slack = settings.slack === 0 ? undefined : settings.slack;
  const found = chooseSizes({ needs, count, slack, cost }, budget, SEED, shouldStop);
  const own = needs.map((need) => need.quantity * cost(need));
  const order = found.sizes
    .map((size, at) => ({ size, at }))
    .sort(
      ({ size: one }, { size: other }) =>
        one.group - other.group || one.y - other.y || one.x - other.x || one.z - other.z,
    );
  const sizes = order.map(({ size, at }, index): StandardSize => {
    const held = needs.filter((_, place) => found.sizeOf[place] === at);
    const { kind, board } = first[size.group]!;
    return {
      name: nameOf(index),
      enclosure: kind.name,
      board: boardName(board),
      height: size.y,
      width: size.x,
      depth: size.z,
      enclosures: held.reduce((sum, { quantity }) => sum + quantity, 0),
      boardM2: cost(size),
      fillers: held.reduce((sum, need) => sum + need.quantity * fillersOf(need, size), 0),
    };
  });
  const named = new Map(order.map(({ at }, index) => [at, sizes[index]!.name]));
  const toMeasure = needs.flatMap((need, place) => (found.sizeOf[place]! < 0 ? [{ need, area: own[place]! }] : []));
  return {
    sizes,
    sizeOf: new Map(rows.map(({ place }, index) => [place, named.get(found.sizeOf[index]!) ?? ""])),
    groups: groups.size,
    toMeasure: {
      enclosures: found.toMeasure,
      leastPossible: found.leastToMeasure,
      boardM2: toMeasure.reduce((sum, { area }) => sum + area, 0),
    },
    totalM2: found.total,
    leastM2: found.leastTotal,
    ownM2: own.reduce((sum, area) => sum + area, 0),
  };
}

const SEED = 1;

const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

/** A to Z, then A2 to Z2 and so on. */
function nameOf(index: number): string {
  const round = Math.floor(index / LETTERS.length);
  return LETTERS[index % LETTERS.length]! + (round === 0 ? "" : String(round + 1));
}

/** The enclosure made to the measure of its item, whatever standard size its row names. */
export function toOwnMeasure(sized: Sized): Sized {
  const { item, kind, weightKg, requested } = sized;
  return requested.size === "" ? sized : sizeItem(item, kind.name, weightKg, { ...requested, size: "" });
}

/** Net area of board of one enclosure, m2. */
export function boardM2(assembly: Assembly): number {
  return netAreaM2(boardsOf(assembly));
}

/** What a row sets for its own object alone. */
const OF_THE_ITEM: ReadonlySet<string> = new Set(["weight", "wallBoard", "size"]);

/** What a size is made alike in: the kind, the boards, and all that the row itself sets but its weight. */
function groupKey({ kind, board, settings }: Sized, { own }: SurveyItem): string {
  const set = own.filter(({ key }) => !OF_THE_ITEM.has(key)).map(({ key, value }) => [key, value]);
  return JSON.stringify([kind.name, boardName(board), settings.baseBoard, settings.caseBoard, set]);
}
