import { boardParts } from "../enclosure/part";
import { areaIn, tidy, type WorkbookUnit } from "../measure/units";
import { netAreaM2 } from "../item/answers";
import type { SizedSurvey } from "./sizeSurvey";
import { problemText } from "../item/sizeItem";

/** What became of a survey, in figures that add up: every row is in exactly one of the counts. */
export interface Summary {
  readonly rows: number;
  readonly sized: number;
  readonly inBoxes: number;
  readonly withoutEnclosure: number;
  readonly totalsRows: number;
  readonly problems: readonly { readonly row: number; readonly identifier: string; readonly problem: string }[];
  /** Enclosures to make, copies counted. */
  readonly enclosures: readonly { readonly enclosure: string; readonly count: number }[];
  /** Net area of all copies. */
  readonly boardArea: readonly { readonly stock: string; readonly area: number }[];
  readonly areaUnit: "m2" | "ft2";
}

export function summaryOf({ survey, outcomes, settings }: SizedSurvey): Summary {
  const count = (state: string) => outcomes.filter((outcome) => outcome.state === state).length;
  const enclosures = new Map<string, number>();
  const areas = new Map<string, number>();
  for (const outcome of outcomes) {
    if (outcome.state !== "sized") continue;
    const { sized, quantity } = outcome;
    enclosures.set(sized.kind.name, (enclosures.get(sized.kind.name) ?? 0) + quantity);
    for (const part of boardParts(sized.assembly))
      if (part.material === "board") areas.set(part.stock, (areas.get(part.stock) ?? 0) + netAreaM2([part]) * quantity);
  }
  return {
    rows: outcomes.length,
    sized: count("sized"),
    inBoxes: count("in box"),
    withoutEnclosure: count("nothing"),
    totalsRows: count("totals"),
    problems: survey.items.flatMap((item, index) => {
      const outcome = outcomes[index]!;
      if (outcome.state !== "problem") return [];
      return [{ row: item.row, identifier: item.identifier, problem: problemText(outcome.error) }];
    }),
    enclosures: [...enclosures].map(([enclosure, number]) => ({ enclosure, count: number })),
    boardArea: [...areas].map(([stock, area]) => ({ stock, area: tidy(areaIn(area, settings.unit)) })),
    areaUnit: areaUnitOf(settings.unit),
  };
}

export function areaUnitOf(unit: WorkbookUnit): "m2" | "ft2" {
  return unit === "in" ? "ft2" : "m2";
}
