import { settingsTable } from "../settings/settingsTable";
import { SETTINGS_NAME, STOCK_NAME } from "../filling/keptRanges";
import { surveyEdits } from "../filling/surveyEdits";
import type { ViewProps } from "./viewProps";
import { Table } from "./Table";

/** Settings and stock: made or found, edited in their sheets, explained here. */
export function SetUpView({ model, survey, state }: ViewProps) {
  const { found, sized } = survey;
  const missing = [
    ...(found.settings === undefined ? [SETTINGS_NAME] : []),
    ...(found.stock === undefined ? [STOCK_NAME] : []),
    ...(found.guide === undefined ? ["board guide"] : []),
  ];
  const make = () =>
    model.write(`Making the ${missing.join(" and ")} sheet${missing.length > 1 ? "s" : ""}`, ({ book, answered }) => {
      const { edits } = surveyEdits(book, { ...answered, figures: [], values: false, cutList: false });
      const { sheets = [], names = [] } = edits;
      return { edits: { sheets, names } };
    });
  const [, ...settings] = settingsTable(sized.settings);
  return (
    <>
      <h2>Settings and stock</h2>
      <p>
        {missing.length === 0
          ? "The workbook has its settings and its stock on sheets of their own. Change them there: every column follows."
          : `The workbook has no ${missing.join(" and no ")} yet, so the usual values are taken. Made as sheets, they are yours to change, and every column follows.`}
      </p>
      {missing.length > 0 && (
        <p class="row">
          <button type="button" class="main" disabled={state.doing !== undefined} onClick={() => void make()}>
            Make the {missing.join(" and ")} sheet{missing.length > 1 ? "s" : ""}
          </button>
        </p>
      )}
      <h3>Stock</h3>
      <Table
        label="Stock"
        headings={["stock", "material", "caliper, mm", "sheet, mm", "price"]}
        rows={sized.settings.stock.map((row) => [
          row.stock,
          row.material,
          row.caliper,
          row.sheetWidth === undefined
            ? ""
            : row.sheetLength === undefined
              ? `roll, ${row.sheetWidth} wide`
              : `${row.sheetLength} × ${row.sheetWidth}`,
          row.price ?? "",
        ])}
      />
      <h3>Every setting, and what it means</h3>
      <dl class="settings">
        {settings.map(([name, value, from, , unit, meaning, standing]) => (
          <div key={String(name)}>
            <dt>
              {name}: <strong>{value === "" ? "not given" : value}</strong> {value === "" ? "" : unit}
            </dt>
            <dd>
              {meaning} <span class="quiet">({[from, standing].filter((text) => text !== "").join("; ")})</span>
            </dd>
          </div>
        ))}
      </dl>
    </>
  );
}
