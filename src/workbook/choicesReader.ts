import { parseArea } from "./cellRef";
import type { ListChoices } from "./listChoices";
import { attribute, type XmlHandlers } from "./readXml";

/**
 * Listens to a sheet for the cells that offer a list of values, in file order, one entry for each area. Newer programs
 * write a list that lies on another sheet as an extension, where the formula and the cells are elements of their own.
 */
export function choicesReader(): Required<Pick<XmlHandlers, "open" | "text" | "close">> & {
  readonly found: readonly ListChoices[];
} {
  const found: ListChoices[] = [];
  let list = false;
  let into: "formula" | "areas" | undefined;
  let formula = "";
  let areas = "";
  return {
    found,
    open: (tag) => {
      if (tag.local === "dataValidation") {
        list = attribute(tag, "type") === "list";
        formula = "";
        areas = attribute(tag, "sqref") ?? "";
      } else if (list && tag.local === "formula1") into = "formula";
      else if (list && tag.local === "sqref") into = "areas";
    },
    text: (piece) => {
      if (into === "formula") formula += piece;
      else if (into === "areas") areas += piece;
    },
    close: ({ local }) => {
      if (local === "formula1" || local === "sqref") into = undefined;
      if (local !== "dataValidation" || !list) return;
      list = false;
      for (const each of areas.trim().split(/\s+/)) {
        const area = parseArea(each);
        if (area !== undefined && formula.trim() !== "" && found.length < MOST_LISTS)
          found.push({ area, formula: formula.trim() });
      }
    },
  };
}

/** More than these in one sheet are not shown; a save keeps them. */
const MOST_LISTS = 5000;
