import { listed } from "../settings/names";
import { GuideForm } from "./GuideForm";
import { makeSheets, missingSheets } from "./makeSheets";
import { SettingsForm } from "./SettingsForm";
import { StockForm } from "./StockForm";
import type { ViewProps } from "./viewProps";

/** Settings, board guide and stock: made or found, changed by form, explained here. */
export function SetUpView({ model, survey, state }: ViewProps) {
  const missing = missingSheets(survey);
  const busy = state.doing !== undefined;
  const sheets = `${listed(missing, "and")} ${missing.length === 1 ? "sheet" : "sheets"}`;
  return (
    <>
      <p>
        {missing.length === 0
          ? "What you change here goes into the sheets settings, board guide and stock, and every column follows."
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
      <StockForm model={model} survey={survey} busy={busy} />
    </>
  );
}
