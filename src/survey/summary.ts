import { boardParts, type Part } from "../enclosure/part";
import { areaIn, tidy, type WorkbookUnit } from "../measure/units";
import { isBoardOrCard } from "../settings/stock";
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
  readonly boardArea: readonly BoardArea[];
  readonly areaUnit: "m2" | "ft2";
}

/** What a survey takes of one board or card. */
export interface BoardArea {
  readonly stock: string;
  readonly material: Part["material"];
  /** Enclosures that it goes into. */
  readonly items: number;
  /** Of these, with plies of it laminated into one board. */
  readonly laminated: number;
  /** Net area of all copies. */
  readonly area: number;
}

export function summaryOf({ survey, outcomes, settings }: SizedSurvey): Summary {
  const count = (state: string) => outcomes.filter((outcome) => outcome.state === state).length;
  const enclosures = new Map<string, number>();
  const areas = new Map<string, Omit<BoardArea, "stock">>();
  for (const outcome of outcomes) {
    if (outcome.state !== "sized") continue;
    const { sized, quantity } = outcome;
    enclosures.set(sized.kind.name, (enclosures.get(sized.kind.name) ?? 0) + quantity);
    // A joint strip may be of lining paper, which is no board.
    const parts = boardParts(sized.assembly).filter(isBoardOrCard);
    for (const stock of new Set(parts.map((part) => part.stock))) {
      const own = parts.filter((part) => part.stock === stock);
      const sum = areas.get(stock) ?? { material: own[0]!.material, items: 0, laminated: 0, area: 0 };
      areas.set(stock, {
        ...sum,
        items: sum.items + quantity,
        laminated: sum.laminated + (own.some(({ plies }) => plies > 1) ? quantity : 0),
        area: sum.area + netAreaM2(own) * quantity,
      });
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
      ...areas.get(stock)!,
      stock,
      area: tidy(areaIn(areas.get(stock)!.area, settings.answerUnit)),
    })),
    areaUnit: areaUnitOf(settings.answerUnit),
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
