import { figureOf } from "../item/figureCatalogue";
import type { WorkbookUnit } from "../measure/units";

/** The heading of a figure with the unit of its answers: `outside height (mm)`. */
export function headedFigure(name: string, unit: WorkbookUnit): string {
  const kind = figureOf(name)?.unit;
  const own = kind === undefined ? undefined : UNITS[kind]?.[unit === "in" ? "in" : "metric"];
  const shown = own === "" ? unit : own;
  return shown === undefined ? name : `${name} (${shown})`;
}

/** The figure that a heading of ours names, with or without its unit. */
export function figureOfHeading(heading: string): string {
  return heading.replace(/ \((?:mm|cm|in|m2|ft2|kg|lb)\)$/, "");
}

/** Empty text: the unit of the workbook itself. */
const UNITS: Readonly<Record<string, { readonly metric: string; readonly in: string } | undefined>> = {
  length: { metric: "", in: "" },
  area: { metric: "m2", in: "ft2" },
  mass: { metric: "kg", in: "lb" },
};
