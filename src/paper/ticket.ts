import { nearestMark } from "../measure/benchLength";
import { massIn, massUnitOf, type WorkbookUnit } from "../measure/units";
import { problemText, type Sized } from "../item/sizeItem";
import { cellText, isBlank } from "../measure/blank";
import { columnNamed } from "../survey/columnNamed";
import { byBenchOrder } from "../survey/benchOrder";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { cautionsOfRow } from "../survey/outcome";
import { unitOf, type Survey, type SurveyItem } from "../survey/surveyItems";
import type { SurveyCells } from "../survey/surveyAnswers";
import type { InputError, NoAnswer } from "../measure/errors";

/** What a bench ticket is made from: one enclosure to be made, for an item or for those that share a box. */
export interface Ticket {
  readonly identifier: string;
  readonly title: string;
  /** As the survey's cells hold it, a line for each item that the enclosure is for. */
  readonly asSurveyed: readonly string[];
  readonly quantity: number;
  /** Of the survey, counted as the sheet counts. */
  readonly row: number;
  readonly batch: string;
  readonly priority: string;
  /** Where it is kept, as the survey says; empty where it does not. */
  readonly shelf: string;
  readonly sized: Sized;
  /** Of this row, gravest first. */
  readonly cautions: readonly string[];
}

/**
 * A ticket for each enclosure of a survey, in the order of batch, priority and row.
 *
 * @param cells what the survey was read from, for the column `shelf`; without them no ticket has a shelf
 */
export function ticketsOf({ survey, outcomes, settings }: SizedSurvey, cells: SurveyCells = []): readonly Ticket[] {
  const shelf = columnNamed("shelf", survey, cells);
  const outcomeOf = new Map(survey.items.map((item, index) => [item, outcomes[index]!]));
  return [...survey.items].sort(byBenchOrder).flatMap((item) => {
    const outcome = outcomeOf.get(item)!;
    if (outcome.state !== "sized") return [];
    const { sized, quantity } = outcome;
    const sharing =
      item.box === "" ? [item] : survey.items.filter((each) => each.box === item.box && each.leftOut === "");
    const sizes = sharing.map((each) => asSurveyed(each, survey, settings.answerUnit));
    return [
      {
        identifier: item.identifier,
        title: item.title,
        asSurveyed:
          sharing.length === 1
            ? sizes
            : sharing.map((each, at) => `${each.identifier}: ${sizes[at]}${namedTitle(each)}`),
        quantity,
        row: item.row,
        batch: cellText(item.cells.batch),
        priority: cellText(item.cells.priority),
        shelf: shelf === undefined ? "" : cellText(cells[item.row - 1]?.[shelf]),
        sized,
        cautions: cautionsOfRow(outcome),
      },
    ];
  });
}

/** Rows without a ticket, with the reason. */
export function withoutTicket({
  survey,
  outcomes,
}: SizedSurvey): readonly (readonly [identifier: string, why: string])[] {
  return survey.items.flatMap((item, index) => {
    const outcome = outcomes[index]!;
    return outcome.state === "problem" ? [[item.identifier, why(outcome.error)] as const] : [];
  });
}

function why(error: InputError | NoAnswer): string {
  return problemText(error);
}

/** `14 1/4 in × 9 1/2 in × 2 3/8 in, 3.9 kg`. */
function asSurveyed(item: SurveyItem, survey: Survey, unit: WorkbookUnit): string {
  const { height, width, depth, dimensions, weight, quantity } = item.cells;
  const sizes = [height, width, depth].every(isBlank)
    ? cellText(dimensions)
    : `${(["height", "width", "depth"] as const)
        .map((field) => withUnit(item.cells[field], unitOf(item, field, survey) ?? unit))
        .join(" × ")}`;
  const weightUnit = survey.units.weight ?? massUnitOf(unit);
  const weighed = isBlank(weight) ? [] : [withUnit(weight, weightUnit)];
  const copies = isBlank(quantity) || item.quantity === 1 ? [] : [`${cellText(quantity)} copies`];
  return [sizes, ...weighed, ...copies].join(", ");
}

function withUnit(cell: unknown, unit: string): string {
  const text = cellText(cell);
  return /^[\d.,/\s-]+$/.test(text) ? `${text} ${unit}` : text;
}

function namedTitle({ title }: SurveyItem): string {
  return title === "" ? "" : `, ${title}`;
}

/** From this weight on, in kg or lb, a hundredth is more than scales for objects show. */
const HEAVY = 10;

/** `300 × 210 × 40 mm, 1.45 kg`: the item as it was understood. */
export function readAs({ item, weightKg, settings }: Sized): string {
  const { answerUnit: unit } = settings;
  const sizes = [item.height, item.width, item.depth].map((size) => nearestMark(size, unit)).join(" × ");
  const weight = massIn(weightKg ?? 0, unit);
  const decimals = weight < HEAVY ? 2 : 1;
  const mass = weightKg === undefined ? "" : `, ${Number(weight.toFixed(decimals))} ${massUnitOf(unit)}`;
  return `${sizes} ${unit}${mass}`;
}
