import { stockSize } from "./stockSize";
import { listed } from "../settings/names";
import { GuideForm } from "./GuideForm";
import { makeSheets, missingSheets } from "./makeSheets";
import { SettingsForm } from "./SettingsForm";
import type { ViewProps } from "./viewProps";
import { Table } from "./Table";

/** Settings, board guide and stock: made or found, changed by form, explained here. */
export function SetUpView({ model, survey, state }: ViewProps) {
  const { settings } = survey.sized;
  const missing = missingSheets(survey);
  const busy = state.doing !== undefined;
  const sheets = `${listed(missing, "and")} ${missing.length === 1 ? "sheet" : "sheets"}`;
  return (
    <>
      <p>
        {missing.length === 0
          ? "What you change here goes into the sheets settings and board guide, and every column follows."
          : `The workbook has no ${listed(missing, "and")} yet, so the usual values count. The first change here makes the ${sheets}.`}
      </p>
      {missing.length > 0 && (
        <p class="row">
          <button type="button" disabled={busy} onClick={() => void model.write(`Making the ${sheets}`, makeSheets)}>
            Make the {sheets}
          </button>
        </p>
      )}
      <SettingsForm model={model} survey={survey} busy={busy} />
      <GuideForm model={model} survey={survey} busy={busy} />
      <h2>Stock</h2>
      <p>
        Calipers, sheet sizes and prices are on the sheet “stock”. The prices that come with it are examples, not
        quotes.
      </p>
      <Table
        label="Stock"
        headings={["stock", "material", "caliper, mm", "sheet, mm", "price"]}
        rows={settings.stock.map((row) => [
          row.stock,
          row.material,
          row.caliper,
          stockSize(row),
          row.price === undefined ? "" : row.price.toFixed(2),
        ])}
      />
    </>
  );
}
