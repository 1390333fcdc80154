import type { Search } from "./search";

/** The search as it was before a step, apart from the forest, which remembers for itself. */
export interface Past {
  readonly sheets: Int32Array;
  readonly kinds: Int32Array;
  readonly used: Int32Array;
  readonly out: Int32Array;
  sheetCount: number;
  outCount: number;
  outArea: number;
  spent: number;
  worth: number;
}

/** Room for it. */
export function createPast(search: Search): Past {
  return {
    sheets: new Int32Array(search.sheets.length),
    kinds: new Int32Array(search.kinds.length),
    used: new Int32Array(search.used.length),
    out: new Int32Array(search.out.length),
    sheetCount: 0,
    outCount: 0,
    outArea: 0,
    spent: 0,
    worth: 0,
  };
}

/** Notes the search as it is. */
export function remember(search: Search, past: Past): void {
  copy(search.sheets, past.sheets, search.sheetCount);
  copy(search.kinds, past.kinds, search.sheetCount);
  copy(search.used, past.used, search.used.length);
  copy(search.out, past.out, search.outCount);
  past.sheetCount = search.sheetCount;
  past.outCount = search.outCount;
  past.outArea = search.outArea;
  past.spent = search.spent;
  past.worth = search.forest.totalWorth;
}

/** Makes it as it was noted. */
export function recall(search: Search, past: Past): void {
  copy(past.sheets, search.sheets, past.sheetCount);
  copy(past.kinds, search.kinds, past.sheetCount);
  copy(past.used, search.used, past.used.length);
  copy(past.out, search.out, past.outCount);
  search.sheetCount = past.sheetCount;
  search.outCount = past.outCount;
  search.outArea = past.outArea;
  search.spent = past.spent;
}

function copy(from: Int32Array, to: Int32Array, count: number): void {
  for (let index = 0; index < count; index++) to[index] = from[index]!;
}
