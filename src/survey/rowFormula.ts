import type { Settings } from "../settings/schema";
import { DEFINITIONS } from "../settings/schema";
import { settingKey } from "../settings/given";
import { plainName } from "../settings/names";
import type { Figure } from "./figures";
import type { Field } from "./headings";
import { isBlank } from "./sizeRow";
import { unitOf, type Survey, type SurveyItem } from "./surveyItems";

/** How the formulas of a survey reach their cells and settings. */
export interface FormulaPlace {
  readonly survey: Survey;
  readonly settings: Settings;
  /** The cell of a column in a row: `$B5`. Columns count from 1. */
  readonly cell: (column: number, row: number) => string;
  /** Arguments after the selectors that every row shares: the names of the settings range and stock table. */
  readonly shared: readonly string[];
}

/**
 * The live formula of one figure of one row, in the form in which a workbook stores it, without `=`.
 * It reads the row's own cells: measures with the units of their headings or unit column, dimension texts where the
 * three sizes are blank, and the row's own settings.
 */
export function rowFormula(figure: Figure, item: SurveyItem, place: FormulaPlace): string {
  const [fn, ...selectors] = figure.asked;
  const { columns } = place.survey.recognition;
  const enclosure = columns.enclosure === undefined ? '""' : place.cell(columns.enclosure.column, item.row);
  const call = stored(fn, [
    ...(["height", "width", "depth"] as const).map((field) => measure(field, item, place)),
    ...(WEIGHED.has(fn) ? [weight(item, place)] : []),
    enclosure,
    ...selectors.map(quoted),
    ...place.shared,
    ...ownSettings(item, place),
  ]);
  if (fn === "CAUTIONS" && columns.hazard !== undefined) {
    const hazard = place.cell(columns.hazard.column, item.row);
    const said = `"hazard ("&${hazard}&"): assess before handling; local rules"`;
    return `IF(${hazard}="",${call},${said}&IF(${call}="","","; "&${call}))`;
  }
  if (!figure.ofAllCopies || columns.quantity === undefined) return call;
  const quantity = place.cell(columns.quantity.column, item.row);
  return `IF(OR(${quantity}="",${quantity}=0),1,${quantity})*${call}`;
}

/** Functions that take a weight after the sizes. */
const WEIGHED = new Set(["BOARD.CALIPER", "BOARD.STOCK", "CAUTIONS"]);

/** The weight cell; grams and ounces are no workbook units, so their plain numbers carry the unit along. */
function weight(item: SurveyItem, { survey, settings, cell }: FormulaPlace): string {
  const column = survey.recognition.columns.weight;
  if (column === undefined) return '""';
  const ref = cell(column.column, item.row);
  const workbookUnit = settings.unit === "in" ? "lb" : "kg";
  if (column.unit === undefined || column.unit === workbookUnit) return ref;
  return `IF(ISNUMBER(${ref}),${ref}&" ${column.unit}",${ref})`;
}

/** The name under which a workbook stores a call of one of our functions. */
export function stored(fn: string, args: readonly string[]): string {
  return `_xldudf_ENC_${fn.replaceAll(".", "_")}(${args.join(",")})`;
}

function quoted(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}

function measure(field: "height" | "width" | "depth", item: SurveyItem, place: FormulaPlace): string {
  const { survey } = place;
  const { columns } = survey.recognition;
  const own = columns[field] === undefined ? undefined : withUnit(field, item, place);
  if (columns.dimensions === undefined) return own ?? '""';
  const read = stored("DIMENSIONS", [
    place.cell(columns.dimensions.column, item.row),
    quoted(field),
    ...place.shared,
    ...dimensionSettings(item, place),
  ]);
  // A row that has its sizes needs no look at the text; one that has none follows when they are typed.
  const sizes = (["height", "width", "depth"] as const).filter((each) => columns[each] !== undefined);
  if (own === undefined) return read;
  if (sizes.some((each) => !isBlank(item.cells[each]))) return own;
  return `IF(AND(${sizes.map((each) => `${place.cell(columns[each]!.column, item.row)}=""`).join(",")}),${read},${own})`;
}

/** A cell whose plain numbers are in another unit than the workbook's carries that unit along. */
function withUnit(field: Field, item: SurveyItem, { survey, settings, cell }: FormulaPlace): string {
  const { columns } = survey.recognition;
  const ref = cell(columns[field]!.column, item.row);
  if (columns.unit !== undefined && !isBlank(item.cells.unit)) {
    const unit = cell(columns.unit.column, item.row);
    return `IF(ISNUMBER(${ref}),${ref}&" "&${unit},${ref})`;
  }
  const unit = unitOf(item, field, survey);
  if (unit === undefined || unit === settings.unit) return ref;
  if (unit === "m" || unit === "ft") return `IF(ISNUMBER(${ref}),${ref}&" ${unit}",${ref})`;
  return `IF(${ref}="","",${stored("MEASURE", [ref, quoted(`unit=${unit}`)])}&" ${unit}")`;
}

function dimensionSettings(item: SurveyItem, { survey }: FormulaPlace): readonly string[] {
  const order = survey.recognition.columns.dimensions?.order;
  const unit = unitOf(item, "dimensions", survey);
  const parts = [
    ...(order === undefined ? [] : [`order=${order}`]),
    ...(unit === undefined ? [] : [`text unit=${unit}`]),
  ];
  return parts.length === 0 ? [] : [quoted(parts.join("; "))];
}

/** A text of the row's own settings, each left out where its cell is blank. */
function ownSettings(item: SurveyItem, { survey, cell }: FormulaPlace): readonly string[] {
  const columns = survey.recognition.settings.filter(({ setting }) => settingKey(setting) !== undefined);
  if (columns.length === 0) return [];
  const texts = columns.map(({ column, setting }) => {
    const ref = cell(column, item.row);
    return `IF(OR(${ref}="",${ref}=0),"",${quoted(`${plainSetting(setting)}=`)}&${ref}&"; ")`;
  });
  return [texts.join("&")];
}

function plainSetting(setting: string): string {
  const key = settingKey(setting);
  return key === undefined ? plainName(setting) : DEFINITIONS[key].name;
}
