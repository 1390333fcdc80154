import type { ComponentChildren } from "preact";

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
                  {typeof cell === "number" ? Number(cell.toFixed(3)) : cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
