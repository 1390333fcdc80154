import { nameFor } from "../headings/columnQuestions";
import type { Amount, AmountRow, AmountSurvey, Size } from "../headings/amounts";
import type { Field } from "../headings/vocabulary/vocabulary";
import { InputError } from "../measure/errors";
import { FIRST_DATE_SERIAL } from "../measure/readLength";
import { plainText } from "../measure/plainText";
import { readDimensions } from "../measure/readDimensions";
import { wholeLength } from "../measure/wholeLength";
import { scanMass } from "../measure/scanMass";
import { scanNumber } from "../measure/scanNumber";
import { fromMm, type LengthUnit } from "../measure/units";
import type { MassUnit } from "../measure/unitWords";
import { isBlank } from "../measure/blank";
import type { Settings } from "../settings/schema";
import { isDepthApart, unitOf, type Survey, type SurveyItem } from "./surveyItems";

/** The measures of a survey as its cells give them, for the question whether they can be true. */
export function surveyAmounts(survey: Survey, settings: Settings, unitGiven: boolean): Omit<AmountSurvey, "odd"> {
  const { columns, others } = survey.recognition;
  const headings = new Map([...Object.values(columns), ...others].map(({ column, heading }) => [column, heading]));
  const columnOf = (field: Field) => {
    const column = columns[field];
    if (column === undefined) return undefined;
    return { column: column.column, name: nameFor(column.column, headings), unit: survey.units[field] };
  };
  const sizeOf = (field: "height" | "width" | "depth") => columnOf(field) ?? columnOf("dimensions");
  const found = {
    height: sizeOf("height"),
    width: sizeOf("width"),
    depth: sizeOf("depth"),
    weight: columnOf("weight"),
  };
  return {
    rows: survey.items.flatMap((item) => (item.leftOut === "" ? [amountsOf(item, survey, settings)] : [])),
    columns: Object.fromEntries(Object.entries(found).filter(([, column]) => column !== undefined)),
    unit:
      settings.textUnit !== undefined && columns.height === undefined
        ? plainUnit(settings.textUnit)
        : settings.surveyUnit,
    unitGiven: unitGiven || columns.unit !== undefined,
  };
}

function plainUnit(unit: LengthUnit): AmountSurvey["unit"] {
  return unit === "cm" || unit === "in" ? unit : "mm";
}

function amountsOf(item: SurveyItem, survey: Survey, settings: Settings): AmountRow {
  const { row, cells } = item;
  const isText = isBlank(cells.height) && isBlank(cells.width) && isBlank(cells.depth) && !isBlank(cells.dimensions);
  const unit = rowUnit(item);
  if (isText) return { row, ...textAmounts(item, survey, settings) };
  if (isDepthApart(survey))
    return { row, ...textAmounts(item, survey, settings), depth: length(cells.depth, unit, "depth") };
  return {
    row,
    height: length(cells.height, unit, "height"),
    width: length(cells.width, unit, "width"),
    depth: length(cells.depth, unit, "depth"),
    weight: mass(cells.weight),
  };
}

/** The unit of the row's own unit column. */
function rowUnit(item: SurveyItem): LengthUnit | undefined {
  try {
    return isBlank(item.cells.unit) ? undefined : unitOf(item, "height", { units: {} });
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

function length(cell: unknown, unit: LengthUnit | undefined, direction: Size): Amount<LengthUnit> | undefined {
  if (typeof cell === "number") return cell > 0 && cell < FIRST_DATE_SERIAL ? { value: cell, unit } : undefined;
  if (typeof cell !== "string") return undefined;
  const text = plainText(cell);
  const found = wholeLength(text, direction);
  if (found === undefined || found.unit === "pt" || found.value <= 0) return undefined;
  return { value: found.value, unit: found.unit ?? unit };
}

function mass(cell: unknown): Amount<MassUnit> | undefined {
  if (typeof cell === "number") return cell > 0 ? { value: cell, unit: undefined } : undefined;
  if (typeof cell !== "string") return undefined;
  const text = plainText(cell);
  const found = scanMass(text, 0);
  if (found !== undefined && found.end === text.length) return { value: found.kg, unit: "kg" };
  const number = scanNumber(text, 0);
  return number !== undefined && number.end === text.length && number.value > 0
    ? { value: number.value, unit: undefined }
    : undefined;
}

/** Read twice: a text that is as long in cm as in mm gives its own unit. */
function textAmounts(item: SurveyItem, survey: Survey, settings: Settings): Omit<AmountRow, "row"> {
  const cell = item.cells.dimensions;
  const weight = mass(item.cells.weight);
  const none = { height: undefined, width: undefined, depth: undefined, weight };
  if (typeof cell !== "string") return none;
  const order = survey.recognition.columns.dimensions?.order ?? settings.order;
  try {
    const inMm = readDimensions(cell, { argument: "dimensions", order, unit: "mm" });
    const inCm = readDimensions(cell, { argument: "dimensions", order, unit: "cm" });
    const amount = (mm: number | undefined, other: number | undefined): Amount<LengthUnit> | undefined => {
      if (mm === undefined || other === undefined) return undefined;
      if (mm !== other) return { value: mm, unit: rowUnit(item) };
      const unit = /"|''|(?<!\p{L})(?:in|inch|inches)(?!\p{L})/iu.test(plainText(cell))
        ? "in"
        : /cm|см|厘米|سم/i.test(cell)
          ? "cm"
          : "mm";
      return { value: fromMm(mm, unit), unit };
    };
    const kg = inMm.weightKg;
    return {
      height: amount(inMm.height, inCm.height),
      width: amount(inMm.width, inCm.width),
      depth: amount(inMm.depth, inCm.depth),
      weight: weight ?? (kg === undefined ? undefined : { value: kg, unit: "kg" }),
    };
  } catch (error) {
    if (error instanceof InputError) return none;
    throw error;
  }
}
