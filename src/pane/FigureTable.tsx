import { printedTable } from "../estimate/printedTable";
import type { Cell } from "../item/answers";
import type { WorkbookUnit } from "../measure/units";
import { areaUnitOf } from "../survey/summary";
import { Amount, Table } from "./Table";

interface FigureTableProps {
  readonly label: string;
  readonly unit: WorkbookUnit;
  readonly rows: readonly (readonly Cell[])[];
}

/** A table with its headings in the first row, its figures as they are printed. */
export function FigureTable({ label, unit, rows }: FigureTableProps) {
  const [headings = [], ...lines] = printedTable(rows);
  return (
    <Table
      label={label}
      headings={headings.map((heading) => (heading === "net area" ? `${heading}, ${areaUnitOf(unit)}` : heading))}
      rows={lines.map((line, row) =>
        line.map((text, column) => (typeof rows[row + 1]![column] === "number" ? <Amount>{text}</Amount> : text)),
      )}
    />
  );
}
