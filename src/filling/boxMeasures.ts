import { isBlank } from "../measure/blank";
import { readMass } from "../measure/readMass";
import { massIn, massUnitOf, tidy } from "../measure/units";
import { settingKey } from "../settings/given";
import { plainName } from "../settings/names";
import { quoted, stored } from "../workbook/formulaText";
import type { SurveyItem } from "../survey/surveyItems";
import { isEmpty, sizeFormulas, weightFormula, type FormulaPlace } from "./rowMeasures";

/** Measures of items that share a box, as formulas. */
export interface BoxMeasures {
  readonly sizes: readonly string[];
  readonly weight: string;
  /** What the setting `arrangement` is given; undefined where the rows say nothing of it. */
  readonly arrangement: string | undefined;
}

/**
 * Items that share a box lie one on another: the greatest height and width, depths and weights added, each as many times
 * as its row has copies. Side by side the widths are added. The formulas follow every row of the box.
 *
 * @returns undefined where a weight is a text with a unit of its own, and of items in rows or that rest otherwise than on
 * their backs, which no formula reads
 */
export function boxMeasures(set: readonly SurveyItem[], place: FormulaPlace): BoxMeasures | undefined {
  const weights = set.map((item) => weightInWorkbookUnit(item, place));
  if (weights.some((weight) => weight === undefined)) return undefined;
  const rows = set.map((item) => sizeFormulas(item, place).map((size) => measured(size, place)));
  const [heights, widths] = [0, 1].map((way) => rows.map((sizes) => sizes[way]!));
  const copies = set.map((item) => copiesFormula(item, place));
  const times = (values: readonly string[]) =>
    `SUM(${values.map((value, index) => (copies[index] === "1" ? value : `${value}*${copies[index]}`)).join(",")})`;
  const known = weights as readonly string[];
  const unknown = known.map(isEmpty).join(",");
  const isBeside = sideBySide(set[0]!, place);
  if (isBeside === undefined) return undefined;
  const greatest = (values: readonly string[]) => `MAX(${values.join(",")})`;
  const depths = rows.map((sizes) => sizes[2]!);
  return {
    sizes: [
      greatest(heights!),
      either(isBeside, times(widths!), greatest(widths!)),
      either(isBeside, greatest(depths), times(depths)),
    ],
    arrangement: isBeside === false ? undefined : either(isBeside, `SUM(${copies.join(",")})&" x 1"`, '"stacked"'),
    weight: known.every((weight) => weight === '""') ? '""' : `IF(OR(${unknown}),"",${times(known)})`,
  };
}

/** Whether items lie side by side: known, or a formula where a column of the survey says it. */
function sideBySide({ row, own }: SurveyItem, { survey, settings, cell }: FormulaPlace): boolean | string | undefined {
  const column = survey.recognition.settings.find(({ setting }) => settingKey(setting) === "arrangement")?.column;
  const value = own.find(({ key }) => key === "arrangement")?.value;
  const now = value === undefined ? settings.arrangement.by : typeof value === "string" ? plainName(value) : "other";
  if (now !== "stacked" && now !== "side by side") return undefined;
  const turned =
    settings.restsOn !== "back" || survey.recognition.settings.some(({ setting }) => settingKey(setting) === "restsOn");
  if (turned && (now !== "stacked" || column !== undefined)) return now === "stacked" ? false : undefined;
  if (column === undefined) return now === "side by side";
  const said = `TRIM(${cell(column, row)})`;
  return settings.arrangement.by === "side by side"
    ? `OR(${said}="",${said}="side by side")`
    : `${said}="side by side"`;
}

function either(which: boolean | string, then: string, otherwise: string): string {
  if (typeof which === "string") return `IF(${which},${then},${otherwise})`;
  return which ? then : otherwise;
}

/** How many copies of a row lie in the box: a blank or 0 is one. */
function copiesFormula({ row }: SurveyItem, { survey, cell }: FormulaPlace): string {
  const { quantity } = survey.recognition.columns;
  if (quantity === undefined) return "1";
  const ref = cell(quantity.column, row);
  return `IF(${isEmpty(ref)},1,${ref})`;
}

function measured(size: string, { settings }: FormulaPlace): string {
  return stored("MEASURE", [size, quoted(`unit=${settings.unit}`)]);
}

function weightInWorkbookUnit(item: SurveyItem, place: FormulaPlace): string | undefined {
  const { survey, settings, cell } = place;
  const { weight } = survey.recognition.columns;
  const wanted = massUnitOf(settings.unit);
  const unit = survey.units.weight ?? wanted;
  const typed = item.cells.weight;
  if (weight === undefined) return weightFormula(item, place);
  if (!isBlank(typed) && typeof typed !== "number") return undefined;
  if (unit === wanted) return weightFormula(item, place);
  const ref = cell(weight.column, item.row);
  const factor = tidy(massIn(readMass(`1 ${unit}`, { argument: "weight", unit: wanted }), settings.unit));
  return `IF(${isEmpty(ref)},"",${ref}*${factor})`;
}
