import type { Injector } from "@univerjs/core";
import { indexRangesOnce } from "./indexRangesOnce";
import { listFormulasOnce } from "./listFormulasOnce";
import { readTextsOnce } from "./readTextsOnce";

/** Keeps the formula engine from doing again what it has done: an edit in a long survey would take seconds. */
export function quickEngine(injector: Injector): void {
  indexRangesOnce(injector);
  listFormulasOnce(injector);
  readTextsOnce();
}
