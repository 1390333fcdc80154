import { boardParts, type Part } from "../enclosure/part";
import { areaIn, tidy, type WorkbookUnit } from "../measure/units";
import type { Settings } from "../settings/schema";
import { netAreaM2 } from "../item/answers";
import type { SizedSurvey } from "./sizeSurvey";
import { problemText } from "../item/sizeItem";

/** What became of a survey, in figures that add up: every row is in exactly one of the counts. */
export interface Summary {
  readonly rows: number;
  readonly sized: number;
  readonly inBoxes: number;
  readonly withoutEnclosure: number;
  /** Rows of totals, headings again, and rows that the user leaves out. */
  readonly leftOut: number;
  readonly problems: readonly { readonly row: number; readonly identifier: string; readonly problem: string }[];
  /** Enclosures to make, copies counted. */
  readonly enclosures: readonly { readonly enclosure: string; readonly count: number }[];
  /** By board and card: the enclosures that it goes into, and the net area of all copies. */
  readonly boardArea: readonly {
    readonly stock: string;
    readonly material: Part["material"];
    readonly items: number;
    readonly area: number;
  }[];
  readonly areaUnit: "m2" | "ft2";
}

export function summaryOf({ survey, outcomes, settings }: SizedSurvey): Summary {
  const count = (state: string) => outcomes.filter((outcome) => outcome.state === state).length;
  const enclosures = new Map<string, number>();
  const areas = new Map<string, { material: Part["material"]; items: number; area: number }>();
  for (const outcome of outcomes) {
    if (outcome.state !== "sized") continue;
    const { sized, quantity } = outcome;
    enclosures.set(sized.kind.name, (enclosures.get(sized.kind.name) ?? 0) + quantity);
    const used = new Set<string>();
    for (const part of boardParts(sized.assembly)) {
      const sum = areas.get(part.stock) ?? { material: part.material, items: 0, area: 0 };
      const items = sum.items + (used.has(part.stock) ? 0 : quantity);
      areas.set(part.stock, { ...sum, items, area: sum.area + netAreaM2([part]) * quantity });
      used.add(part.stock);
    }
  }
  return {
    rows: outcomes.length,
    sized: count("sized"),
    inBoxes: count("in box"),
    withoutEnclosure: count("nothing"),
    leftOut: count("left out"),
    problems: survey.items.flatMap((item, index) => {
      const outcome = outcomes[index]!;
      if (outcome.state !== "problem") return [];
      return [{ row: item.row, identifier: item.identifier, problem: problemText(outcome.error) }];
    }),
    enclosures: [...enclosures].map(([enclosure, number]) => ({ enclosure, count: number })),
    boardArea: inStockOrder([...areas.keys()], settings).map((stock) => ({
      stock,
      material: areas.get(stock)!.material,
      items: areas.get(stock)!.items,
      area: tidy(areaIn(areas.get(stock)!.area, settings.unit)),
    })),
    areaUnit: areaUnitOf(settings.unit),
  };
}

/** In the order of the stock table; what it does not list comes last. */
function inStockOrder(names: readonly string[], { stock }: Settings): readonly string[] {
  const order = new Map(stock.map((row, index) => [row.stock, index]));
  return [...names].sort((one, other) => (order.get(one) ?? Infinity) - (order.get(other) ?? Infinity));
}

export function areaUnitOf(unit: WorkbookUnit): "m2" | "ft2" {
  return unit === "in" ? "ft2" : "m2";
}
