import { useState } from "preact/hooks";
import {
  rowsNaming,
  stockColumns,
  stockEdits,
  stockLines,
  type StockChange,
  type StockTexts,
} from "../filling/stockEdits";
import type { StockField } from "../settings/stockFields";
import { stockCells } from "../settings/starterStock";
import { ChoiceField } from "./ChoiceField";
import { makeSheets } from "./makeSheets";
import { counted } from "./numbers";
import type { PaneModel, PaneSurvey } from "./paneState";
import { FURTHER, STOCK_MEANINGS } from "./stockMeanings";

interface FormProps {
  readonly model: PaneModel;
  readonly survey: PaneSurvey;
  readonly busy: boolean;
}

/** The line that is open for a new stock. */
const NEW = 0;

/** The stock table, a line for each row; a row is added, changed or removed on its sheet. */
export function StockForm({ model, survey, busy }: FormProps) {
  const [open, setOpen] = useState<number>();
  const range = survey.found.stock ?? stockCells(survey.sized.settings.stock);
  const columns = stockColumns(range);
  const change = async (what: string, made: StockChange, said: readonly string[] = []): Promise<void> => {
    await model.write(what, makeSheets, (now) => ({ edits: stockEdits(now, made), said }));
    setOpen(undefined);
  };
  const toggle = (row: number) => setOpen(open === row ? undefined : row);
  return (
    <>
      <h2>Stock</h2>
      <p>
        Boards, cards, cloth and paper as you buy them. The prices that come with the table are examples, not quotes: a
        price that you change counts as yours.
      </p>
      <ol class="rows guide">
        {stockLines(range).map(({ row, texts }) => (
          <li key={row}>
            <button
              type="button"
              aria-expanded={open === row}
              aria-label={`Stock ${lineText(texts, columns)}`}
              onClick={() => toggle(row)}
            >
              {lineText(texts, columns)}
            </button>
            {open === row && (
              <StockRowForm
                texts={texts}
                columns={columns}
                busy={busy}
                save={(next) =>
                  void change(`Changing stock ${next.stock ?? ""}`, { does: "replace", row, texts: next })
                }
                remove={() =>
                  void change(`Removing stock ${texts.stock ?? ""}`, { does: "remove", row }, missed(survey, texts))
                }
              />
            )}
          </li>
        ))}
        <li>
          <button type="button" aria-expanded={open === NEW} onClick={() => toggle(NEW)}>
            Add a stock
          </button>
          {open === NEW && (
            <StockRowForm
              texts={{ material: "board", grain: "fixed", pack: "1" }}
              columns={columns}
              busy={busy}
              save={(texts) => void change(`Adding stock ${texts.stock ?? ""}`, { does: "add", texts })}
            />
          )}
        </li>
      </ol>
    </>
  );
}

type Columns = ReturnType<typeof stockColumns>;

/** What is said where rows of the survey name a stock that goes. */
function missed(survey: PaneSurvey, { stock = "" }: StockTexts): readonly string[] {
  const rows = rowsNaming(stock, survey);
  return rows === 0
    ? []
    : [`${counted(rows, "row")} of the survey ask for it: choose another for them under Problems.`];
}

/** `conservation board 2: board, 2 mm, 1000 × 700 mm, 5.40 (example)`. */
function lineText(texts: StockTexts, columns: Columns): string {
  const unit = (field: StockField) => columns.find((each) => each.field === field)?.unit ?? "";
  const measure = (field: StockField) => {
    const text = texts[field] ?? "";
    return /[a-z]/i.test(text) || text === "" ? text : `${text} ${unit(field)}`.trim();
  };
  const [length = "", width = ""] = [texts["sheet length"], texts["sheet width"]];
  const sheet =
    length !== ""
      ? `${length} × ${measure("sheet width")}`
      : width === ""
        ? ""
        : `roll, ${measure("sheet width")} wide`;
  const price = texts.price ?? "";
  const isExample = (texts["example price"] ?? "").toLowerCase() === "yes";
  const money = Number.isFinite(Number(price)) ? Number(price).toFixed(2) : price;
  const parts = [
    texts.material ?? "",
    Number(texts.caliper ?? "") === 0 ? "" : measure("caliper"),
    sheet,
    price === "" ? "no price" : `${money}${isExample ? " (example)" : ""}`,
    (texts["on hand"] ?? "") === "" ? "" : `${texts["on hand"]} on hand`,
  ];
  return `${texts.stock ?? ""}: ${parts.filter((part) => part !== "").join(", ")}`;
}

interface RowProps {
  readonly texts: StockTexts;
  readonly columns: Columns;
  readonly busy: boolean;
  readonly save: (texts: StockTexts) => void;
  readonly remove?: () => void;
}

function StockRowForm({ texts, columns, busy, save, remove }: RowProps) {
  const [next, setNext] = useState(texts);
  const field = ({ field: name, unit }: Columns[number]) => {
    const { meaning, choices } = STOCK_MEANINGS[name];
    const value = next[name] ?? "";
    const set = (text: string) => setNext({ ...next, [name]: text });
    const label = unit === "" ? name : `${name}, ${unit}`;
    return (
      <div key={name} class="setting">
        {choices === undefined ? (
          <label class="field">
            {label}
            <input value={value} onInput={(event) => set(event.currentTarget.value)} />
          </label>
        ) : (
          <ChoiceField
            label={label}
            value={value}
            {...(choices.blank === undefined ? {} : { usual: choices.blank })}
            options={choices.words.map((word) => ({ value: word, label: word }))}
            busy={busy}
            choose={set}
          />
        )}
        <p class="quiet">{meaning}</p>
      </div>
    );
  };
  return (
    <form
      class="decisions"
      onSubmit={(event) => {
        event.preventDefault();
        save(next);
      }}
    >
      {columns.filter(({ field: name }) => !FURTHER.has(name)).map(field)}
      <details class="group">
        <summary>More of this stock</summary>
        {columns.filter(({ field: name }) => FURTHER.has(name)).map(field)}
      </details>
      <p class="row">
        <button type="submit" class="main" disabled={busy || (next.stock ?? "").trim() === ""}>
          Save
        </button>
        {remove !== undefined && (
          <button type="button" disabled={busy} onClick={remove}>
            Remove
          </button>
        )}
      </p>
    </form>
  );
}
