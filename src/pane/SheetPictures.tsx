import { useState } from "preact/hooks";
import { sheetPlan } from "../drawing/sheetPlan";
import { newSheets, sheetLabels } from "../cutting/sheetLabels";
import type { SheetPlan } from "../cutting/types";
import type { StockPlan } from "../estimate/stockPlans";
import type { WorkbookUnit } from "../measure/units";
import { Drawing } from "./Drawing";

/** Pictures shown before the rest is asked for. */
const FIRST = 6;

/** Every sheet as it is cut, those of one stock together. */
export function SheetPictures({ plans, unit }: { readonly plans: readonly StockPlan[]; readonly unit: WorkbookUnit }) {
  const [shown, setShown] = useState(FIRST);
  const sheets = plans.flatMap(({ plan, form }) => {
    if (plan === undefined) return [];
    const labels = sheetLabels(plan);
    const of = newSheets(plan).length;
    return plan.sheets.map((sheet, index) => ({ sheet, heading: headingOf(sheet, form, labels[index]!, of) }));
  });
  return (
    <details>
      <summary>Cutting plans as pictures: {sheets.length}</summary>
      {sheets.slice(0, shown).map(({ sheet, heading }, index) => (
        <Drawing key={index} picture={sheetPlan(sheet, { unit, width: 340, heading })} />
      ))}
      {sheets.length > shown && (
        <button type="button" onClick={() => setShown(shown + 4 * FIRST)}>
          More pictures ({sheets.length - shown})
        </button>
      )}
    </details>
  );
}

function headingOf({ offCut }: SheetPlan, form: StockPlan["form"], label: string, of: number): string {
  if (form === "roll") return "Length of roll";
  return offCut === undefined ? `Sheet ${label} of ${of}` : `Off-cut ${label}`;
}
