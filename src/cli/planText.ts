import { sheetLabels } from "../cutting/sheetLabels";
import type { SheetPlan } from "../cutting/types";
import { completenessOf } from "../estimate/completeness";
import { partText, SHEETS_HEADINGS, sheetsRow } from "../estimate/sheetAnswers";
import { toBuy, type StockPlan } from "../estimate/stockPlans";
import { whyUncut } from "../estimate/whyUncut";
import { plainRows } from "../item/answers";
import { problemText } from "../item/sizeItem";
import { formatLengthWithUnit } from "../measure/formatLength";
import type { WorkbookUnit } from "../measure/units";
import type { Settings } from "../settings/schema";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { visibleLine } from "./print";
import { textTable } from "../pack/textTable";

/** Names that are shown of a group that is left out; the rest is counted. */
const NAMES_SHOWN = 6;

/** What was read, and what is left out by reason. */
export function readText({ survey, outcomes }: SizedSurvey, plans: readonly StockPlan[]): readonly string[] {
  const { complete, inPart, notSized } = completenessOf({ outcomes }, plans);
  const left = [
    ...(notSized === 0 ? [] : [`${notSized} cannot be sized`]),
    ...(inPart === 0 ? [] : [`${inPart} in part`]),
  ];
  const counts = `${complete} complete${left.length === 0 ? "" : `, ${left.join(", ")}`}`;
  return [
    `${survey.items.length} items read: ${counts}`,
    ...leftOutGroups({ survey, outcomes }, plans),
    ...joinedText(plans),
  ];
}

function leftOutGroups(
  { survey, outcomes }: Pick<SizedSurvey, "survey" | "outcomes">,
  plans: readonly StockPlan[],
): readonly string[] {
  const groups = new Map<string, string[]>();
  const add = (reason: string, name: string) => groups.set(reason, [...(groups.get(reason) ?? []), visibleLine(name)]);
  survey.items.forEach((item, index) => {
    const outcome = outcomes[index]!;
    if (outcome.state === "problem") add(problemText(outcome.error), item.identifier);
  });
  for (const plan of plans)
    for (const { piece, count, reason } of plan.plan?.uncuttable ?? [])
      add(`${plan.stock}: ${whyUncut(plan, reason)}`, `${piece.item} ${piece.part}${count > 1 ? ` x ${count}` : ""}`);
  if (groups.size === 0) return [];
  const lines = [...groups].map(([reason, names]) => `  ${reason}: ${shownNames(names)}`);
  return ["", "Left out", ...lines];
}

/** Boards that are cut in pieces and joined, each once. */
function joinedText(plans: readonly StockPlan[]): readonly string[] {
  const names = new Set(
    plans.flatMap(({ plan }) =>
      (plan?.sheets ?? []).flatMap(({ placements }) =>
        placements.flatMap(({ piece }) =>
          piece.joinedFrom === undefined ? [] : [visibleLine(`${piece.item} ${piece.part}`)],
        ),
      ),
    ),
  );
  if (names.size === 0) return [];
  return [
    "",
    `Joined at the bench, as no sheet holds them whole (join=yes): ${shownNames([...names])}.`,
    "Butt the pieces of a single board and bridge the joint with a strip of card; turn every other ply of a laminated one end for end, so that the joints lie apart. Trim to size after joining (common practice, no source).",
  ];
}

function shownNames(names: readonly string[]): string {
  const more = names.length > NAMES_SHOWN ? `, and ${names.length - NAMES_SHOWN} more` : "";
  return `${names.slice(0, NAMES_SHOWN).join(", ")}${more}`;
}

/** How many sheets of each stock with what is proved, and what each plan asks of the person who cuts it. */
export function stocksText(plans: readonly StockPlan[], settings: Settings): readonly string[] {
  const figures = plans.flatMap((stockPlan) => {
    const { stock, figures: own } = stockPlan;
    if (own === undefined || own.cuts === 0) return [];
    return [
      [
        stock,
        own.cuts,
        own.setUps,
        own.trims > 0 ? `${own.stages} + trim` : String(own.stages),
        own.slivers,
        own.openItems,
        `${own.meanSpread.toFixed(1)} / ${own.mostSpread}`,
        own.loosePanels,
      ],
    ];
  });
  return [
    textTable(plainRows([SHEETS_HEADINGS, ...plans.map((plan) => sheetsRow(plan, settings))])),
    ...(figures.length === 0 ? [] : ["", textTable([FIGURE_HEADINGS, ...figures]), "", ...plans.flatMap(proofText)]),
    ...plans.flatMap((plan) => limitsText(plan, settings)),
  ];
}

const FIGURE_HEADINGS = [
  "at the bench",
  "cuts",
  "settings of the fence",
  "stages",
  "slivers",
  "most open items",
  "sheets an item, mean / most",
  "loose panels",
];

/** What may be claimed of a count, for a funder to read. */
function proofText({ stock, form, plan }: StockPlan): readonly string[] {
  if (plan === undefined || plan.sheets.length === 0) return [];
  const leftOut = plan.uncuttable.reduce((sum, { count }) => sum + count, 0);
  const without = leftOut === 0 ? "" : `, without ${leftOut} ${leftOut === 1 ? "piece" : "pieces"} left out`;
  const parts = leftOut === 0 ? "these parts" : "the other parts";
  const claim = (amount: string, least: string) =>
    `${amount} of ${stock}${without}. No plan cuts ${parts}, at finished size, from ${least} (proved).`;
  if (form === "roll")
    return [
      claim(`${(plan.rollLength / MM_PER_M).toFixed(2)} m`, `less than ${(plan.rollBound / MM_PER_M).toFixed(2)} m`),
    ];
  const sheets = toBuy({ form, plan });
  return [claim(`${sheets} ${sheets === 1 ? "sheet" : "sheets"}`, `fewer than ${plan.sheetBound}`)];
}

const MM_PER_M = 1000;

/** Limits of the bench style that are kept only where that is possible, and are not. */
function limitsText({ stock, figures }: StockPlan, { planStyle, openItems, loosePanels }: Settings): readonly string[] {
  if (planStyle !== "bench" || figures === undefined) return [];
  const over = (found: number, limit: number) => limit > 0 && found > limit;
  return [
    ...(over(figures.openItems, openItems)
      ? [
          `${stock}: up to ${figures.openItems} items are open, and open items is ${openItems}. Fewer need more sheets: raise spare sheets, or give a batch size.`,
        ]
      : []),
    ...(over(figures.loosePanels, loosePanels)
      ? [`${stock}: up to ${figures.loosePanels} loose panels, and loose panels is ${loosePanels}.`]
      : []),
  ];
}

/** Where a plan with fewer sheets was found beside one of the bench style: what it would ask for. */
export function fewerSheetsText(plans: readonly StockPlan[], least: readonly StockPlan[]): readonly string[] {
  return plans.flatMap((plan) => {
    const other = least.find(({ stock }) => stock === plan.stock);
    const fewer = other === undefined ? 0 : toBuy(plan) - toBuy(other);
    if (other?.figures === undefined || plan.figures === undefined || fewer <= 0) return [];
    const more = other.figures.setUps - plan.figures.setUps;
    const needs = more > 0 ? `needs ${more} more settings of the fence` : "is cut with walls to size";
    return [`A checked plan of ${toBuy(other)} sheets of ${plan.stock} exists and ${needs} (plan style=least sheets).`];
  });
}

/** Every sheet in a short table: sheets that are cut alike together, each cut with its setting. */
export function sheetTables({ stock, form, plan }: StockPlan, unit: WorkbookUnit): readonly string[] {
  if (plan === undefined) return [];
  const size = (mm: number) => formatLengthWithUnit(mm, unit);
  const labels = sheetLabels(plan);
  const alike = new Map<string, number[]>();
  plan.sheets.forEach(({ layout, length, width }, index) => {
    const key = `${layout} ${length} ${width}`;
    alike.set(key, [...(alike.get(key) ?? []), index]);
  });
  return [...alike.values()].flatMap((indexes) => {
    const sheet = plan.sheets[indexes[0]!]!;
    const numbers = indexes.map((index) => labels[index]!).join(", ");
    const noun = nounOf(form, sheet, indexes.length);
    const rows = indexes.flatMap((index) =>
      plan.sheets[index]!.placements.map(({ piece, x, y, length, width }) => [
        labels[index]!,
        piece.item,
        partText(piece),
        size(length),
        size(width),
        size(x),
        size(y),
      ]),
    );
    return [
      "",
      `${stock}, ${noun} ${numbers}: ${size(sheet.length)} along the grain x ${size(sheet.width)}`,
      textTable([["on", "item", "part", "length", "width", "from the end", "from the side"], ...rows]),
      "",
      textTable([
        ["cut", "way", "setting"],
        ...sheet.cuts.map(({ way, setting }, index) => [index + 1, `${way} the grain`, size(setting)]),
      ]),
    ];
  });
}

function nounOf(form: StockPlan["form"], { offCut }: SheetPlan, count: number): string {
  const noun = form === "roll" ? "length" : offCut === undefined ? "sheet" : "off-cut";
  return count > 1 ? `${noun}s` : noun;
}
