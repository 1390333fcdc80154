import type { NewColumn } from "./edits";
import type { OwnColumn } from "./ownMarks";

/** Which column of the earlier run each column takes over: by the heading asked for then, else by the one that stands there. */
export function matchedColumns(
  columns: readonly NewColumn[],
  own: readonly OwnColumn[],
  headingAt: (column: number) => string,
) {
  const left = [...own];
  const reused = new Map<NewColumn, OwnColumn>();
  for (const column of columns) {
    const { heading, formerHeading, headingsElsewhere = [] } = column;
    const wanted = [heading, ...(formerHeading === undefined ? [] : [formerHeading]), ...headingsElsewhere];
    const [at = -1] = wanted
      .map((name) => name.toLowerCase())
      .map((name) => left.findIndex((mark) => (mark.wantedName || headingAt(mark.column)).toLowerCase() === name))
      .filter((place) => place >= 0);
    if (at >= 0) reused.set(column, left.splice(at, 1)[0]!);
  }
  return { reused, left };
}

/** Those columns that end the table without a gap. */
export function tail(marks: readonly OwnColumn[], right: number): readonly OwnColumn[] {
  const found: OwnColumn[] = [];
  for (let column = right; ; column--) {
    const mark = marks.find((m) => m.column === column);
    if (!mark) return found;
    found.push(mark);
  }
}

/** The last column up to the edge that is not ours: the neighbour whose look is copied. */
export function lastOther(edge: number, ours: ReadonlySet<number>): number | undefined {
  for (let column = edge; column >= 1; column--) if (!ours.has(column)) return column;
  return undefined;
}
