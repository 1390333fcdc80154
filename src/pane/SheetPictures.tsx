import { useState } from "preact/hooks";
import { sheetPlan } from "../drawing/sheetPlan";
import { newSheets, sheetLabels } from "../cutting/sheetLabels";
import type { SheetPlan } from "../cutting/types";
import type { StockPlan } from "../estimate/stockPlans";
import type { WorkbookUnit } from "../measure/units";
import { counted } from "./numbers";
import { Enlarged } from "./Enlarged";

/** Pictures shown before the rest is asked for. */
const FIRST = 6;

/** Width of a picture in the pane and of the same enlarged, in its own units. */
const SMALL = 340;
const LARGE = 1000;

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
      <summary>Cutting plans as pictures: {counted(sheets.length, "sheet")}</summary>
      {sheets.slice(0, shown).map(({ sheet, heading }, index) => (
        <section key={index}>
          <h3>
            {sheet.stock}, {heading}
          </h3>
          <Enlarged
            picture={sheetPlan(sheet, { unit, width: SMALL })}
            large={() => sheetPlan(sheet, { unit, width: LARGE, heading })}
          />
        </section>
      ))}
      {sheets.length > shown && (
        <button type="button" onClick={() => setShown(shown + 4 * FIRST)}>
          Show more ({sheets.length - shown} left)
        </button>
      )}
    </details>
  );
}

function headingOf({ offCut }: SheetPlan, form: StockPlan["form"], label: string, of: number): string {
  if (form === "roll") return "length of roll";
  return offCut === undefined ? `sheet ${label} of ${of}` : `off-cut ${label}`;
}
