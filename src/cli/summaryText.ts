import { boardTotalRows, type BoardTotal } from "../estimate/boardTotals";
import { plainRows } from "../item/answers";
import type { Settings } from "../settings/schema";
import type { Summary } from "../survey/summary";
import { visibleLine } from "./print";
import { textTable } from "../pack/textTable";

/** What became of a survey, for a person. */
export function summaryText(summary: Summary, totals: readonly BoardTotal[], settings: Settings): string {
  const { rows, sized, inBoxes, withoutEnclosure, leftOut, problems, enclosures } = summary;
  const counts = [
    `${sized} sized`,
    ...(inBoxes > 0 ? [`${inBoxes} in the box of another row`] : []),
    ...(withoutEnclosure > 0 ? [`${withoutEnclosure} blank or without enclosure`] : []),
    ...(leftOut > 0 ? [`${leftOut} left out`] : []),
    `${problems.length} with a problem`,
  ];
  const boards = totals.filter(({ material }) => material === "board");
  const all = boards.reduce((sum, { area }) => sum + area, 0);
  return [
    `${rows} rows: ${counts.join(", ")}`,
    "",
    indented(textTable([["enclosure", "to make"], ...enclosures.map((each) => [each.enclosure, each.count])])),
    ...(totals.length === 0
      ? []
      : [
          "",
          indented(
            textTable([
              ...plainRows(boardTotalRows(totals, settings)),
              ...(boards.length > 1 ? [["all boards", "", all]] : []),
            ]),
          ),
          totals.some(({ byArea }) => byArea)
            ? "  Sheets: what holds the net area at least. plan counts them by a cutting plan."
            : "  Sheets: by a first cutting plan. plan searches for longer, and may find fewer.",
        ]),
    ...(problems.length === 0
      ? []
      : [
          "",
          "Rows with a problem, left out of the figures above",
          ...problemLines(problems).map((line) => `  ${visibleLine(line)}`),
        ]),
  ].join("\n");
}

/** A line for each row; rows with the same problem together. */
function problemLines(problems: Summary["problems"]): readonly string[] {
  const groups = new Map<string, Summary["problems"][number][]>();
  for (const each of problems) {
    const group = groups.get(each.problem);
    if (group === undefined) groups.set(each.problem, [each]);
    else group.push(each);
  }
  return [...groups].map(([problem, rows]) => {
    const [first] = rows;
    if (rows.length === 1) return `row ${first!.row}, ${first!.identifier}: ${problem}`;
    const named = rows.slice(0, MOST_NAMED).map(({ row }) => row);
    const more = rows.length > MOST_NAMED ? ", ..." : "";
    return `${rows.length.toLocaleString("en")} rows: ${problem} (${named.join(", ")}${more})`;
  });
}

const MOST_NAMED = 6;

function indented(text: string): string {
  return text.replace(/^/gm, "  ");
}
