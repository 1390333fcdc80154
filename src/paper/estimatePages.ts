import { boardTotalRows, boardTotals } from "../estimate/boardTotals";
import { completenessOf, completenessText } from "../estimate/completeness";
import type { Estimate } from "../estimate/estimate";
import { exampleNotice } from "../estimate/examplePrices";
import type { Mm } from "../measure/units";
import { settingsTable } from "../settings/settingsTable";
import { plainCell, type Cell } from "../item/answers";
import { costTable, HOURS_TABLE, moreTables } from "../estimate/estimateTables";
import { leftOutByName, leftOutRows } from "../estimate/leftOutRows";
import { printedTable } from "../estimate/printedTable";
import { proofRows } from "../estimate/provedCounts";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { bodyWidth, flow, gap, type Block, type Frame } from "./blocks";
import type { Page } from "./page";
import { runningFoot } from "./runningFoot";
import { fitColumns, table } from "./table";
import { heading, paragraph, TYPE } from "./textBlocks";
import type { Typesetter } from "./typesetter";

const TITLE = "Materials budget";
const HOURS_BY_SIZE =
  "Hours each are for an item of 300 × 210 × 40 mm. A larger box takes more and a smaller one less, by its area of board.";
/** Of these headings the words may wrap; figures never do. */
const WORDY: ReadonlySet<string> = new Set(["material", "stock", "enclosure"]);

/** The budget as it goes to a funder: lines and totals, how they were reached, what was assumed, what is left out. */
export function estimatePages(
  estimate: Estimate,
  survey: SizedSurvey,
  frame: Frame,
  type: Typesetter,
): readonly Page[] {
  const { settings } = survey;
  const width = bodyWidth(frame);
  const plans = estimate.plans.flatMap((group) => group.plans);
  const leftOut = leftOutByName(leftOutRows(survey, plans, estimate));
  const boards = boardTotalRows(boardTotals(survey, plans), settings);
  const notice = exampleNotice(estimate, settings);
  const blocks = [
    ...paragraph(TITLE, width, { size: TYPE.title, bold: true, withNext: true }, type),
    ...paragraph(notice, width, { size: TYPE.body, bold: true }, type),
    ...paragraph(intro(survey), width, { size: TYPE.body }, type),
    ...budget(estimate, survey, width, type),
    ...[...moreTables(estimate, settings), ["Boards and cards", boards] as const].flatMap(([title, rows]) =>
      rows.length === 0
        ? []
        : [
            ...heading(title, width, type),
            ...figureTable(printedTable(rows), width, type),
            gap(1),
            ...(title === HOURS_TABLE && settings.hoursBySize
              ? paragraph(HOURS_BY_SIZE, width, { size: TYPE.small }, type)
              : []),
          ],
    ),
    ...heading("Method", width, type),
    ...method(survey).flatMap((text) => paragraph(text, width, { size: TYPE.small }, type)),
    ...proof(estimate, survey, width, type),
    ...heading("Not in this budget", width, type),
    ...(leftOut.length === 0
      ? paragraph(
          "Every row was sized, every piece fits a sheet, and every line has a price.",
          width,
          { size: TYPE.body },
          type,
        )
      : wordTable(leftOut, [1.25, 6], width, type)),
    ...heading("Settings used, and where each default comes from", width, type),
    ...settingsUsed(survey).flatMap((text) => paragraph(text, width, { size: TYPE.small }, type)),
  ];
  const foot = (page: number, of: number) => runningFoot(TITLE, `page ${page} of ${of}`, frame, type);
  return flow(blocks, frame, foot, TITLE);

  function intro({ survey: { items }, outcomes }: SizedSurvey): string {
    const sized = outcomes.filter(({ state }) => state === "sized");
    const copies = outcomes.reduce((sum, each) => sum + (each.state === "sized" ? each.quantity : 0), 0);
    const currency = settings.currency === "" ? "" : ` Money in ${settings.currency}.`;
    return `${copies} enclosures for ${sized.length} rows of a survey of ${items.length}. ${completenessText(completenessOf(survey, plans))}${currency}`;
  }
}

function budget(estimate: Estimate, { settings }: SizedSurvey, width: Mm, type: Typesetter): readonly Block[] {
  const [headings = [], ...lines] = costTable(estimate, settings).map((row) => row.map(cellText));
  const rows = printedTable(costTable(estimate, settings)).slice(1);
  const size = TYPE.small;
  const columns = headings.map((name, index) => ({
    heading: name,
    ...(WORDY.has(name) || (index === 0 && name !== "") ? { share: name === "stock" ? 1.6 : 1 } : {}),
    ...(lines.some((row) => /^[\d.]+$/.test(row[index] ?? "")) ? { align: "end" as const } : {}),
  }));
  return [
    ...heading("Budget", width, type),
    ...table(fitColumns(columns, rows, width, size, type), rows, { size, total: true }, type),
    gap(1),
    ...paragraph("Totals are sums of the lines as printed.", width, { size }, type),
  ];
}

/** Every setting that has a value of its own: those given, then the defaults by where they come from. */
function settingsUsed({ settings }: SizedSurvey): readonly string[] {
  const groups = new Map<string, string[]>();
  for (const [name, value, from, , , , standing] of settingsTable(settings).slice(1)) {
    // By kind or by another setting: there is no value to name.
    if (value === "default") continue;
    const group = from === "default" ? `Defaults, ${standing}` : `Given in ${from}`;
    groups.set(group, [...(groups.get(group) ?? []), `${name} ${value}`]);
  }
  return [...groups].map(([group, settings]) => `${group}: ${settings.join("; ")}.`);
}

function method({ settings }: SizedSurvey): readonly string[] {
  return [
    "Every enclosure is put together in space from the measures of the survey; its boards, cards, coverings and linings are read off that model and laid on sheets so that a knife or board shear can cut them edge to edge, the grain kept. Each plan is checked by a second program part before it is counted.",
    `Sheets and metres are bought whole. Contingency is ${settings.contingency} % of materials. Prices are those of the stock table. Whether a cost is allowed is the funder's rule.`,
  ];
}

/** Beside each count the least that any plan can reach. */
function proof(estimate: Estimate, { settings }: SizedSurvey, width: Mm, type: Typesetter): readonly Block[] {
  const [headings = [], ...rows] = printedTable(proofRows(estimate, settings));
  if (rows.length === 0) return [];
  const size = TYPE.small;
  const columns = headings.map((name) => ({
    heading: name,
    ...(name === "stock" ? { share: 1 } : {}),
    ...(["planned", "least possible", "yield", "net area"].includes(name) ? { align: "end" as const } : {}),
  }));
  return [
    ...heading("Proof of the counts: no plan can use less than the least possible", width, type),
    ...table(fitColumns(columns, rows, width, size, type), rows, { size }, type),
  ];
}

/** A table of a name and figures, its first row the headings. */
function figureTable([headings = [], ...rows]: readonly (readonly string[])[], width: Mm, type: Typesetter) {
  const columns = headings.map((name, index) => ({
    heading: name,
    ...(index === 0 ? { share: 1 } : { align: "end" as const }),
  }));
  const size = TYPE.small;
  return table(fitColumns(columns, rows, width, size, type), rows, { size }, type);
}

/** A table of words, its first row the headings. */
function wordTable(
  [headings = [], ...rows]: readonly (readonly string[])[],
  shares: readonly number[],
  width: Mm,
  type: Typesetter,
): readonly Block[] {
  const columns = headings.map((name, index) => ({ heading: name, share: shares[index]!, bold: index === 0 }));
  const size = TYPE.small;
  return table(fitColumns(columns, rows, width, size, type), rows, { size }, type);
}

function cellText(cell: Cell): string {
  return String(plainCell(cell));
}
