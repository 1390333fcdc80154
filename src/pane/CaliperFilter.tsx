import { figureOfHeading } from "../filling/headedFigure";
import { stockColumns } from "../filling/stockEdits";
import type { RowsByColumn } from "../host/port";
import { stockCells } from "../settings/starterStock";
import { ownColumns } from "../workbook/ownMarks";
import { counted } from "./numbers";
import type { PaneModel, PaneSurvey } from "./paneState";

interface FilterProps {
  readonly model: PaneModel;
  readonly survey: PaneSurvey;
  readonly busy: boolean;
}

/** One press shows the rows whose board has one caliper, as they are cut together. */
export function CaliperFilter({ model, survey, busy }: FilterProps) {
  const place = caliperColumn(survey);
  if (place === undefined) return null;
  const { rows } = survey.book.grid(place.sheet);
  const { stock, shopUnit } = survey.sized.settings;
  // A card may be given in points, as a text.
  const inStock = new Map(stock.map(({ caliperAsGiven, caliper }) => [caliperAsGiven, caliper]));
  const counts = new Map<number | string, number>();
  for (const row of rows.slice(place.headingRow, place.lastRow)) {
    const caliper = row[place.column - 1];
    if (typeof caliper === "number" || (typeof caliper === "string" && inStock.has(caliper)))
      counts.set(caliper, (counts.get(caliper) ?? 0) + 1);
  }
  const { unit = "" } =
    stockColumns(survey.found.stock ?? stockCells(stock)).find(({ field }) => field === "caliper") ?? {};
  const shown = (caliper: number | string) =>
    typeof caliper === "number" ? `${caliper} ${unit || shopUnit}` : caliper;
  const thickness = (caliper: number | string) => inStock.get(caliper) ?? Number(caliper);
  const calipers = [...counts].sort(([one], [other]) => thickness(one) - thickness(other));
  if (calipers.length === 0) return null;
  return (
    <section aria-label="Rows by caliper">
      <p>Show only the rows whose board has this caliper:</p>
      <p class="row">
        {calipers.map(([caliper, count]) => (
          <button
            key={caliper}
            type="button"
            disabled={busy}
            onClick={() => void model.showOnly(place, { value: caliper, text: shown(caliper) })}
          >
            <strong>{shown(caliper)}</strong> <span class="quiet">{counted(count, "row")}</span>
          </button>
        ))}
        <button type="button" disabled={busy} onClick={() => void model.showOnly(place, undefined)}>
          All rows
        </button>
      </p>
    </section>
  );
}

function caliperColumn({ book, chosen, sized }: PaneSurvey): RowsByColumn | undefined {
  const { firstColumn, lastColumn, lastRow } = sized.survey.recognition;
  const own = ownColumns(book).find(
    ({ sheet, wantedName }) => sheet === chosen.sheet.name && figureOfHeading(wantedName) === CALIPER,
  );
  if (own === undefined) return undefined;
  const { sheet, column, headingRow } = own;
  return { sheet, column, headingRow, lastRow, firstColumn, lastColumn };
}

const CALIPER = "caliper";
