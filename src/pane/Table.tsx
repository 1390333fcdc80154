import type { ComponentChildren } from "preact";
import { roughFigure } from "../measure/roughFigure";

interface TableProps {
  readonly label: string;
  readonly headings: readonly string[];
  readonly rows: readonly (readonly ComponentChildren[])[];
}

/** A table that scrolls sideways by itself where the pane is too narrow. */
export function Table({ label, headings, rows }: TableProps) {
  return (
    <div class="table" role="region" aria-label={label} tabIndex={0}>
      <table>
        <thead>
          <tr>
            {headings.map((heading) => (
              <th key={heading} scope="col">
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, index) => (
            <tr key={index}>
              {row.map((cell, column) => (
                <td key={column} class={typeof cell === "number" ? "number" : ""}>
                  {typeof cell === "number" ? roughFigure(cell) : cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** A number in a cell as it is written out, at the right like every number. */
export function Amount({ children }: { readonly children: string }) {
  return <span class="amount">{children}</span>;
}
