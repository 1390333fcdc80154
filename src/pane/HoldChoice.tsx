import type { ColumnsHold } from "../workbook/edits";

interface HoldChoiceProps {
  readonly holds: ColumnsHold;
  readonly rows: number;
  readonly columns: number;
  readonly choose: (holds: ColumnsHold) => void;
}

/** What the columns hold, with what each choice asks of the spreadsheet. */
export function HoldChoice({ holds, rows, columns, choose }: HoldChoiceProps) {
  const cells = (rows * columns).toLocaleString("en");
  const choices: readonly (readonly [ColumnsHold, string])[] = [
    ["formulas", `a formula in every cell: ${cells} formulas. A row is worked out again when something in it changes`],
    [
      "one formula",
      `one formula for all rows: it fills ${cells} cells. All are worked out again when something in the survey changes; sort the survey and the figures follow`,
    ],
    ["values", `values: ${cells} cells and no formula. They stay as they are until you write the columns again`],
  ];
  return (
    <fieldset>
      <legend>What the columns hold</legend>
      {choices.map(([value, said]) => (
        <label key={value}>
          <input type="radio" name="holds" checked={holds === value} onChange={() => choose(value)} />
          <span>{said}</span>
        </label>
      ))}
    </fieldset>
  );
}
