import type { Cell } from "../item/answers";
import type { Settings } from "../settings/schema";
import type { Estimate } from "./estimate";
import { groupHeading } from "./estimateTables";
import { SHEETS_HEADINGS, sheetsRow } from "./sheetAnswers";

/** Of the counts of sheets in a budget, how many no plan can make fewer. */
export function provedCounts({ lines }: Pick<Estimate, "lines">): { readonly proved: number; readonly all: number } {
  const cut = lines.filter(({ unit }) => unit === "sheets");
  const proved = cut.filter(
    ({ provedLeast, quantity, spoilage, leastPossible }) => provedLeast || quantity - spoilage === leastPossible,
  );
  return { proved: proved.length, all: cut.length };
}

/** What a plan takes, before sheets for spoilt pieces are added to what is bought. */
const PLANNED = "planned";

/** Beside each count the least that any plan can reach; by batch, or what a budget goes by, where there are several. */
export function proofRows({ plans }: Pick<Estimate, "plans">, settings: Settings): readonly (readonly Cell[])[] {
  const grouped = plans.length > 1;
  return [
    [
      ...(grouped ? [groupHeading(settings)] : []),
      ...SHEETS_HEADINGS.map((name) => (name === "to buy" ? PLANNED : name)),
    ],
    ...plans.flatMap(({ group, plans: own }) =>
      own.map((plan) => [...(grouped ? [group] : []), ...sheetsRow(plan, settings)]),
    ),
  ];
}
