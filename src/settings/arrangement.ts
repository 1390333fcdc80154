import type { Mm } from "../measure/units";
import { words } from "./choices";
import { plainName } from "./names";
import { refuse, type ValueType } from "./valueType";

/**
 * How several items lie in one enclosure. A grid has the size of each column and row, or shares of the whole where only
 * their number is known.
 */
export type Arrangement =
  | { readonly by: "stacked" }
  | { readonly by: "side by side" }
  | { readonly by: "rows"; readonly of: number }
  | { readonly by: "grid"; readonly columns: readonly Mm[]; readonly rows: readonly Mm[] };

export const STACKED: Arrangement = { by: "stacked" };

const MOST = 50;
const ROWS = /^rows of (\d+)$/;
const GRID = /^(\d+) ?[x\u00d7] ?(\d+)$/;

export const arrangement: ValueType<Arrangement> = {
  choices: [
    ...words(["stacked", "side by side"]),
    { is: "measure", what: "rows of a number", examples: ["rows of 3"], apart: true },
    { is: "measure", what: "columns x rows", examples: ["3 x 2"] },
  ],
  unit: "",
  read: (value) => {
    const text = typeof value === "string" ? plainName(value) : refuse();
    if (text === "stacked" || text === "side by side") return { by: text };
    const [, of] = ROWS.exec(text) ?? [];
    if (of !== undefined) return { by: "rows", of: counted(of) };
    const [, across, down] = GRID.exec(text) ?? refuse();
    return { by: "grid", columns: ones(across!), rows: ones(down!) };
  },
  written: (value) => {
    if (value.by === "rows") return `rows of ${value.of}`;
    return value.by === "grid" ? `${value.columns.length} x ${value.rows.length}` : value.by;
  },
};

function counted(text: string): number {
  const count = Number(text);
  return count >= 1 && count <= MOST ? count : refuse();
}

function ones(text: string): readonly Mm[] {
  return Array.from({ length: counted(text) }, () => 1);
}
