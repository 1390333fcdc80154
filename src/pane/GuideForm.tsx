import { useState } from "preact/hooks";
import { KINDS } from "../enclosure/registry";
import { boardsOnOffer } from "../filling/boardColumns";
import { guideEdits, guideRows, type GuideChange } from "../filling/settingEdits";
import { BOARD_KINDS, CARD_KINDS } from "../settings/boardGuide";
import { GUIDE_CELLS } from "../settings/starterGuide";
import { tableHeading } from "../settings/tableHeading";
import { ChoiceField } from "./ChoiceField";
import { makeSheets } from "./makeSheets";
import type { PaneModel, PaneSurvey } from "./paneState";

interface FormProps {
  readonly model: PaneModel;
  readonly survey: PaneSurvey;
  readonly busy: boolean;
}

type Cells = Readonly<Record<string, string>>;

/** The board guide, a line for each row; a row is changed, inserted or deleted on its sheet. */
export function GuideForm({ model, survey, busy }: FormProps) {
  const [open, setOpen] = useState<number>();
  const range = survey.found.guide ?? GUIDE_CELLS;
  const units = new Map((range[0] ?? []).map((cell) => [tableHeading(cell).name, tableHeading(cell).unit]));
  const change = async (what: string, made: GuideChange): Promise<void> => {
    await model.write(what, makeSheets, (now) => ({ edits: { cells: guideEdits(now, made) } }));
    setOpen(undefined);
  };
  return (
    <>
      <h2>Board guide</h2>
      <p>
        The first row that covers an item gives its board. There is no published table of board by weight: put your own
        habit here.
      </p>
      <ol class="rows guide">
        {guideRows(range).map((cells, index) => {
          const row = index + 1;
          return (
            <li key={row}>
              <button
                type="button"
                aria-expanded={open === row}
                aria-label={`Row ${row} of the board guide: ${rowText(cells, units)}`}
                onClick={() => setOpen(open === row ? undefined : row)}
              >
                {rowText(cells, units)}
              </button>
              {open === row && (
                <GuideRowForm
                  cells={cells}
                  units={units}
                  boards={boardsOnOffer(survey.sized)}
                  busy={busy}
                  save={(does, next) =>
                    void change(
                      does === "insert" ? "Adding a row to the board guide" : `Changing row ${row} of the board guide`,
                      {
                        does,
                        row,
                        cells: next,
                      },
                    )
                  }
                  remove={() => void change(`Deleting row ${row} of the board guide`, { does: "delete", row })}
                />
              )}
            </li>
          );
        })}
      </ol>
    </>
  );
}

const LIMITS = ["short side up to", "long side up to", "thickness up to", "weight up to"] as const;

/** `board kinds: short side up to 105 mm, weight up to 0.3 kg: 1.5 mm`. */
function rowText(cells: Cells, units: ReadonlyMap<string, string>): string {
  const limits = LIMITS.flatMap((name) =>
    (cells[name] ?? "") === "" ? [] : [`${name} ${cells[name]!} ${units.get(name) ?? ""}`.trim()],
  );
  const covers = limits.length === 0 ? "whatever the size" : limits.join(", ");
  return `${[cells["kind"], cells["material"]].filter(Boolean).join(", ")}, ${covers}: ${cells["board"] ?? ""}`;
}

interface RowProps {
  readonly cells: Cells;
  readonly units: ReadonlyMap<string, string>;
  readonly boards: readonly string[];
  readonly busy: boolean;
  readonly save: (does: "replace" | "insert", cells: Cells) => void;
  readonly remove: () => void;
}

function GuideRowForm({ cells, units, boards, busy, save, remove }: RowProps) {
  const [next, setNext] = useState(cells);
  const set = (name: string) => (text: string) => setNext({ ...next, [name]: text });
  const named = (names: readonly string[]) => names.map((name) => ({ value: name, label: name }));
  return (
    <form
      class="decisions"
      onSubmit={(event) => {
        event.preventDefault();
        save("replace", next);
      }}
    >
      <ChoiceField
        label="Kind"
        value={next["kind"] ?? ""}
        options={named([BOARD_KINDS, CARD_KINDS, ...KINDS.map(({ name }) => name)])}
        busy={busy}
        choose={set("kind")}
      />
      <ChoiceField
        label="Board"
        value={next["board"] ?? ""}
        options={named(boards)}
        other="a stock name, a caliper such as 2 mm, or 2 x 2 mm"
        busy={busy}
        choose={set("board")}
      />
      {LIMITS.filter((name) => units.has(name)).map((name) => (
        <label key={name} class="field">
          {`${name}, ${units.get(name) ?? ""}`}
          <input
            value={next[name] ?? ""}
            placeholder="no limit"
            onInput={(event) => set(name)(event.currentTarget.value)}
          />
        </label>
      ))}
      <p class="row">
        <button type="submit" class="main" disabled={busy}>
          Save
        </button>
        <button type="button" disabled={busy} onClick={() => save("insert", next)}>
          Insert as a new row above
        </button>
        <button type="button" disabled={busy} onClick={remove}>
          Delete
        </button>
      </p>
    </form>
  );
}
