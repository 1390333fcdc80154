import { isBlank } from "../measure/blank";
import { InputError, shown } from "../measure/errors";
import { readDimensions } from "../measure/readDimensions";
import { readLength } from "../measure/readLength";
import { readMass } from "../measure/readMass";
import { massUnitOf } from "../measure/units";
import { DEFINITIONS, type Settings } from "../settings/schema";
import type { WeighedItem } from "../item/sizeItem";
import { isDepthApart, unitOf, type Survey, type SurveyItem } from "./surveyItems";

/** Height, width and depth of their columns, else of the dimension text; weight of its column, else of that text. */
export function readItem(item: SurveyItem, survey: Survey, settings: Settings): WeighedItem {
  const { height, width, depth, weight, dimensions } = item.cells;
  const weightUnit = survey.units.weight ?? massUnitOf(settings.surveyUnit);
  const weighed = isBlank(weight) ? undefined : readWeight(weight, weightUnit);
  if (isDepthApart(survey) && !isBlank(depth)) {
    const text = readTwo(dimensions, item, survey, settings);
    const own = readLength(depth, { argument: "depth", unit: unitOf(item, "depth", survey) ?? settings.surveyUnit });
    return { height: text.height, width: text.width, depth: own, weightKg: weighed ?? text.weightKg };
  }
  if (isBlank(height) && isBlank(width) && isBlank(depth)) {
    const text = readText(dimensions, item, survey, settings);
    return { ...text, weightKg: weighed ?? text.weightKg };
  }
  const read = (cell: unknown, argument: "height" | "width" | "depth") =>
    readLength(cell, { argument, unit: unitOf(item, argument, survey) ?? settings.surveyUnit });
  return {
    height: read(height, "height"),
    width: read(width, "width"),
    depth: read(depth, "depth"),
    weightKg: weighed,
  };
}

/** Whether a row says nothing of its size. */
export function isBlankItem({ cells }: SurveyItem, { recognition }: Survey): boolean {
  const { height, width, depth, dimensions } = cells;
  return (
    isBlank(height) &&
    isBlank(width) &&
    isBlank(depth) &&
    (recognition.columns.dimensions === undefined || isBlank(dimensions))
  );
}

function readWeight(cell: unknown, unit: string): number {
  try {
    // Grams and ounces are no workbook units, so a plain number of such a column is read as a text with its unit.
    if (unit === "kg" || unit === "lb") return readMass(cell, { argument: "weight", unit });
    const text = typeof cell === "number" || /^[\d.,\s]+$/.test(String(cell)) ? `${String(cell)} ${unit}` : cell;
    return readMass(text, { argument: "weight", unit: "kg" });
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    // In the words of the setting, by which formulas give a weight to functions that have no argument for it.
    throw new InputError("weight", shown(cell), `give ${DEFINITIONS.weight.accepts}`, error.cure);
  }
}

/** A dimension text of two measures or three. */
function readTwo(cell: unknown, item: SurveyItem, survey: Survey, settings: Settings) {
  if (typeof cell !== "string")
    throw new InputError("dimensions", shown(cell), "give a dimension text such as 31.5 x 24 x 4.2 cm");
  const order = survey.recognition.columns.dimensions?.order ?? settings.order;
  const unit = unitOf(item, "dimensions", survey) ?? settings.textUnit ?? settings.surveyUnit;
  return readDimensions(cell, { argument: "dimensions", order, unit });
}

function readText(cell: unknown, item: SurveyItem, survey: Survey, settings: Settings) {
  const { height, width, depth, weightKg } = readTwo(cell, item, survey, settings);
  if (depth !== undefined) return { height, width, depth, weightKg };
  throw new InputError(
    "dimensions",
    shown(cell),
    "give height x width x depth",
    "the depth is missing: measure it, or type it in its own column with height and width",
  );
}

/** How many of it there are. @throws InputError when its quantity cannot be read */
export function copiesOf({ quantity }: SurveyItem): number {
  if (quantity instanceof InputError) throw quantity;
  return quantity;
}
