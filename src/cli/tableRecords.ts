/** The rows of a table, each as a record by heading. */
export function tableRecords<Cell extends string | number>([headings = [], ...rows]: readonly (readonly Cell[])[]) {
  return rows.map((row) => Object.fromEntries(row.map((cell, index) => [String(headings[index]), cell] as const)));
}
