import { cellText } from "../measure/blank";
import type { SurveyItem } from "./surveyItems";

/** The order in which items are made: by batch, then by priority, then by row. */
export function byBenchOrder(one: SurveyItem, other: SurveyItem): number {
  return (
    blankLast(cellText(one.cells.batch), cellText(other.cells.batch)) ||
    blankLast(cellText(one.cells.priority), cellText(other.cells.priority)) ||
    one.row - other.row
  );
}

/** Numbers within words by their value; what has none comes last. */
function blankLast(one: string, other: string): number {
  if (one === "" || other === "") return Number(one === "") - Number(other === "");
  return ORDER.compare(one, other);
}

const ORDER = new Intl.Collator("en", { numeric: true });
