import { completenessOf, completenessText } from "./completeness";
import { leftOutRows } from "./leftOutRows";
import { demandsOf } from "./demandsOf";
import { boardTotalRows, boardTotals } from "./boardTotals";
import { estimateOf, type DemandGroup, type Estimate } from "./estimate";
import { estimateTable, isGrouped, shareTables } from "./estimateTables";
import { exampleNotice } from "./examplePrices";
import { labourHours } from "./labourHours";
import { isBlank } from "../measure/blank";
import { stockPlans, type PlanOptions } from "./stockPlans";
import type { Demand } from "./stockJobs";
import { surveyPlans } from "./surveyPlans";
import { InputError, shown } from "../measure/errors";
import { didYouMean, plainName } from "../settings/names";
import type { Answer, Cell } from "../item/answers";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { columnNamed } from "../survey/columnNamed";
import type { SurveyCells } from "../survey/surveyAnswers";

/** The materials budget: above it what must be known of its prices, below it the totals by board, then what is left out. */
export function estimateAnswer(survey: SizedSurvey, cells: SurveyCells, options: PlanOptions = {}): Answer {
  const { settings } = survey;
  const estimate = estimateFor(survey, cells, options);
  const notice = exampleNotice(estimate, settings);
  return [
    ...(notice === "" ? [] : [[notice]]),
    ...estimateTable(estimate, settings),
    ...belowEstimate(survey, estimate),
  ];
}

/** What comes below the lines of a budget: how much it holds, costs of each enclosure, hours, boards, what is left out. */
export function belowEstimate(survey: SizedSurvey, estimate: Estimate): readonly (readonly Cell[])[] {
  const plans = estimate.plans.flatMap((group) => group.plans);
  // Areas stand under areas, also where the lines begin with a group.
  const indent = isGrouped(estimate) ? [""] : [];
  const totals = boardTotalRows(boardTotals(survey, plans), survey.settings);
  return [
    [completenessText(completenessOf(survey, plans))],
    ...shareTables(estimate).flatMap(([, rows]) => rows),
    ...totals.map((row) => [...indent, ...row]),
    ...leftOutRows(survey, plans, estimate),
  ];
}

/** The budget grouped as the setting `estimate by` says, its stocks planned one after the other. */
export function estimateFor(survey: SizedSurvey, cells: SurveyCells, options: PlanOptions = {}): Estimate {
  const { settings } = survey;
  const groups = demandGroups(survey, cells, settings.estimateBy);
  const [only, ...more] = groups;
  if (only !== undefined && more.length === 0)
    return estimateOf([{ ...only, plans: surveyPlans(survey, options).all() }], settings);
  return estimateOf(
    groups.map((group) => ({ ...group, plans: stockPlans(group.demands, settings, options) })),
    settings,
  );
}

/**
 * The enclosures of a survey by `material` (all together), `kind`, or a heading.
 *
 * @throws InputError when it is no heading of the survey, or the settings give hours for what is no kind
 */
export function demandGroups(survey: SizedSurvey, cells: SurveyCells, by: string): readonly DemandGroup[] {
  // What a budget could not use is said before a search that may take minutes.
  labourHours(survey.settings);
  const groupOf = grouping(survey, cells, by);
  const groups = new Map<string, Demand[]>();
  for (const demand of demandsOf(survey)) {
    const group = groupOf(demand);
    const members = groups.get(group);
    if (members === undefined) groups.set(group, [demand]);
    else members.push(demand);
  }
  return [...groups].map(([group, demands]) => ({ group, demands }));
}

function grouping({ survey }: SizedSurvey, cells: SurveyCells, estimateBy: string): (demand: Demand) => string {
  const by = plainName(estimateBy);
  if (by === "material") return () => "";
  if (by === "kind" || by === "enclosure") return ({ enclosure }) => enclosure;
  const index = columnNamed(estimateBy, survey, cells);
  if (index === undefined) {
    const headings = cells[survey.recognition.headingRow - 1] ?? [];
    const names = headings.filter((cell): cell is string => typeof cell === "string" && cell.trim() !== "");
    throw new InputError(
      "estimate by",
      shown(estimateBy),
      "give material, kind, or a heading of the survey",
      didYouMean(estimateBy, names),
    );
  }
  return ({ row }) => {
    const cell = cells[row - 1]?.[index];
    return isBlank(cell) ? "not given" : String(cell);
  };
}
