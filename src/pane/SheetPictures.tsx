import { useState } from "preact/hooks";
import { sheetPlan } from "../drawing/sheetPlan";
import type { StockPlan } from "../estimate/stockPlans";
import type { WorkbookUnit } from "../measure/units";
import { Drawing } from "./Drawing";

/** Pictures shown before the rest is asked for. */
const FIRST = 6;

/** Every sheet as it is cut, those of one stock together. */
export function SheetPictures({ plans, unit }: { readonly plans: readonly StockPlan[]; readonly unit: WorkbookUnit }) {
  const [shown, setShown] = useState(FIRST);
  const sheets = plans.flatMap(({ plan, form }) =>
    (plan?.sheets ?? []).map((sheet, index) => ({
      sheet,
      heading: form === "roll" ? "Length of roll" : `Sheet ${index + 1} of ${plan!.sheets.length}`,
    })),
  );
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
