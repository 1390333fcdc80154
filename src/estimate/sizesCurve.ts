import { sizedRow } from "../item/figure";
import { onShelf } from "../item/onShelf";
import type { Sized } from "../item/sizeItem";
import { enlarged } from "../item/standardSize";
import type { Mm } from "../measure/units";
import type { SizedSurvey } from "../survey/sizeSurvey";
import type { EffortBudget } from "../survey/standardSizes/effort";
import { surveySizes, toOwnMeasure } from "../survey/standardSizes/surveySizes";
import { materialCost } from "./materialCost";

/** What a survey takes with so many standard sizes; 0 sizes: each enclosure to its own measure. */
export interface CurvePoint {
  readonly sizes: number;
  readonly boardM2: number;
  /** Materials by their area; undefined where a stock has no price or no size. */
  readonly cost: number | undefined;
  /** Length of shelf, if all stand. */
  readonly shelf: Mm;
}

/** Counts of sizes that show how the curve runs. */
export const CURVE_COUNTS = [1, 2, 3, 5, 8, 12, 20, 30] as const;

/** With at most so many sizes. What cannot go into one is made to measure, and counts. */
export function curvePoint(survey: SizedSurvey, count: number, budget: EffortBudget): CurvePoint {
  const found = surveySizes(survey, count, budget);
  const sizes = new Map(found.sizes.map((size) => [size.name, size]));
  const taken = new Map<string, Taken>();
  return pointOf(survey, found.sizes.length, found.totalM2, (sized, place) => {
    const name = found.sizeOf.get(place)!;
    const size = sizes.get(name);
    if (size === undefined) return takenBy(sized);
    // A size is of one kind, one construction and one board: all that go into it take the same.
    const known = taken.get(name);
    if (known !== undefined) return known;
    const assembly = enlarged(sized, { x: size.width, y: size.height, z: size.depth });
    const own = takenBy({ ...sized, assembly });
    taken.set(name, own);
    return own;
  });
}

/** With every enclosure to its own measure. */
export function ownPoint(survey: SizedSurvey): CurvePoint {
  const { ownM2 } = surveySizes(survey, 1, { looks: 1 });
  return pointOf(survey, 0, ownM2, takenBy);
}

interface Taken {
  readonly cost: number | undefined;
  readonly along: Mm;
}

function takenBy(sized: Sized): Taken {
  const { along } = onShelf({ ...sized, settings: { ...sized.settings, orientation: "upright" } });
  return { cost: materialCost(sizedRow(sized, 1).parts(), sized.settings), along };
}

function pointOf(
  { outcomes }: SizedSurvey,
  sizes: number,
  boardM2: number,
  of: (sized: Sized, place: number) => Taken,
): CurvePoint {
  let [cost, shelf]: [number | undefined, Mm] = [0, 0];
  outcomes.forEach((outcome, place) => {
    if (outcome.state !== "sized") return;
    const { quantity } = outcome;
    const { cost: each, along } = of(toOwnMeasure(outcome.sized), place);
    cost = cost === undefined || each === undefined ? undefined : cost + each * quantity;
    shelf += along * quantity;
  });
  return { sizes, boardM2, cost, shelf };
}
