import { PLAIN_LIMIT_MM } from "../measure/readLength";
import { massUnitOf, MM_PER, type LengthUnit } from "../measure/units";
import { isBlank } from "../measure/blank";
import { InputError } from "../measure/errors";
import type { Settings } from "../settings/schema";
import { quoted, stored } from "../workbook/formulaText";
import type { Field } from "../headings/vocabulary/vocabulary";
import { isDepthApart, unitOf, type Survey, type SurveyItem } from "../survey/surveyItems";

/** How the formulas of a survey reach their cells and settings. */
export interface FormulaPlace {
  readonly survey: Survey;
  readonly settings: Settings;
  /** The cell of a column in a row: `$B5`. Columns count from 1. */
  readonly cell: (column: number, row: number) => string;
  /** Arguments after the selectors that every row shares: the names of the settings range and stock table. */
  readonly shared: readonly string[];
  /** The name of the board guide, for the formulas that choose by it. */
  readonly guide: readonly string[];
  /** The cell of the row's preference, where this run adds the column for it. */
  readonly preference: ((row: number) => string) | undefined;
  /** The cell of the row's board, which all other formulas of the row take. */
  readonly board: (row: number) => string;
}

const SIZES = ["height", "width", "depth"] as const;
type Size = (typeof SIZES)[number];

/**
 * Height, width and depth of a row: its cells with their units, or its dimension text where the three are blank.
 *
 * @param joined whether they go into a text, where a number has a point in every language
 */
export function sizeFormulas(item: SurveyItem, place: FormulaPlace, joined = false): readonly string[] {
  return SIZES.map((size) => sizeFormula(size, item, place, joined));
}

function sizeFormula(size: Size, item: SurveyItem, place: FormulaPlace, joined: boolean): string {
  const { columns } = place.survey.recognition;
  const own = columns[size] === undefined ? '""' : lengthFormula(size, item, place, joined);
  if (columns.dimensions === undefined) return own;
  const number = textFormula(size, item, place);
  const read = joined ? pointed(number) : number;
  if (isDepthApart(place.survey) && !isBlank(item.cells.depth)) return size === "depth" ? own : read;
  return orOfText(own, item, place, read);
}

/**
 * The row's weight with its unit, `""` where the survey has none.
 *
 * @param joined whether it goes into a text, where a number has a point in every language
 */
export function weightFormula(item: SurveyItem, place: FormulaPlace, joined = false): string {
  const { survey, settings, cell } = place;
  const { weight, dimensions } = survey.recognition.columns;
  if (weight === undefined && dimensions === undefined) return '""';
  const own =
    weight === undefined
      ? '""'
      : weightOf(measureCell("weight", item, cell(weight.column, item.row)), survey.units.weight, settings, joined);
  if (dimensions === undefined) return own;
  const number = textFormula("weight", item, place);
  const read = `IFERROR(${joined ? pointed(number) : number},"")`;
  const ofText = orOfText('""', item, place, read);
  return weight === undefined ? ofText : `IF(${isEmpty(cell(weight.column, item.row))},${ofText},${own})`;
}

function weightOf(ref: string, unit: string | undefined, settings: Settings, joined: boolean): string {
  if (unit === undefined || unit === massUnitOf(settings.surveyUnit)) return joined ? withPoint(ref) : ref;
  // Numbers that are stored as text are in the unit of the heading too, with a point or a comma, whatever Excel reads.
  const isNumber = `OR(ISNUMBER(${ref}*1),ISNUMBER(SUBSTITUTE(${ref},".",",")*1))`;
  return `IF(${isEmpty(ref)},"",IF(${isNumber},${withPoint(ref)}&" ${unit}",${ref}))`;
}

/** A row that has its sizes needs no look at its text; one that has none follows when they are typed. */
function orOfText(own: string, item: SurveyItem, place: FormulaPlace, read: string): string {
  const { columns } = place.survey.recognition;
  const sizes = SIZES.filter((each) => columns[each] !== undefined);
  if (sizes.length === 0) return read;
  if (sizes.some((each) => !isBlank(item.cells[each]))) return own;
  return `IF(AND(${sizes.map((each) => `${place.cell(columns[each]!.column, item.row)}=""`).join(",")}),${read},${own})`;
}

function textFormula(wanted: Size | "weight", item: SurveyItem, place: FormulaPlace): string {
  const { column, order } = place.survey.recognition.columns.dimensions!;
  const unit = knownUnit(item, "dimensions", place.survey);
  const own = [
    ...(order === undefined ? [] : [`order=${order}`]),
    ...(unit === undefined ? [] : [`text unit=${unit}`]),
  ];
  return stored("DIMENSIONS", [
    measureCell("dimensions", item, place.cell(column, item.row)),
    quoted(wanted),
    ...place.shared,
    ...(own.length === 0 ? [] : [quoted(own.join("; "))]),
  ]);
}

/** A cell with the unit of the row's unit column, which it follows, else of its heading. */
function lengthFormula(
  size: Size,
  item: SurveyItem,
  { survey, settings, cell }: FormulaPlace,
  joined: boolean,
): string {
  const { columns } = survey.recognition;
  const ref = measureCell(size, item, cell(columns[size]!.column, item.row));
  const byHeading = inUnit(ref, survey.units[size] as LengthUnit | undefined, settings, joined);
  if (columns.unit === undefined) return byHeading;
  const unit = cell(columns.unit.column, item.row);
  const most = `IF(${unit}="mm",${mostIn("mm")},${mostIn("in")})`;
  const measured = plainOrRead(ref, most, stored("MEASURE", [ref, `"unit="&${unit}`]));
  const byColumn = `IF(${isEmpty(ref)},"",${measured}&" "&${unit})`;
  const word = isBlank(item.cells.unit) ? "" : String(item.cells.unit).trim();
  const known = word === "" || MEASURED.has(word.toLowerCase()) ? undefined : knownUnit(item, size, survey);
  // A workbook is never in inches by another word, or in feet, so such a row says what its word means.
  const byWord =
    known === undefined ? byColumn : `IF(${unit}=${quoted(word)},${inUnit(ref, known, settings, joined)},${byColumn})`;
  return `IF(${isEmpty(unit)},${byHeading},${byWord})`;
}

/** Units in which the cell functions answer. */
const MEASURED: ReadonlySet<string> = new Set(["mm", "cm", "in"]);

/** A cell whose plain numbers, also those stored as text, are in a unit; its own unit wins. */
function inUnit(ref: string, unit: LengthUnit | undefined, settings: Settings, joined: boolean): string {
  if (unit === undefined || unit === settings.surveyUnit) return joined ? withPoint(ref) : ref;
  const measured = (cell: string, by: string) => stored("MEASURE", [cell, quoted(`unit=${by}`)]);
  // A number is as it is; a text is read, since it may have a unit of its own.
  if (unit !== "m" && unit !== "ft")
    return `IF(${isEmpty(ref)},"",${plainOrRead(ref, mostIn(unit), measured(ref, unit))}&" ${unit}")`;
  const number =
    unit === "m"
      ? `${pointed(`IF(${ref}<=${mostIn(unit)},${ref}*1000,${measured(`${ref}*100`, "cm")})`)}&" mm"`
      : `${pointed(`IF(${ref}<=${mostIn(unit)},${ref}*12,${measured(`${ref}*12`, "in")})`)}&" in"`;
  // A text that is as long in cm as in mm has no unit of its own; nor has one that neither reads, such as 8 5/8.
  const bare = `IFERROR(${measured(ref, "mm")}=${measured(ref, "cm")},1=1)`;
  const text = `${ref}&IF(${bare}," ${unit}","")`;
  return `IF(${isEmpty(ref)},"",IF(ISNUMBER(${ref}),${number},${text}))`;
}

/** A cell of a measure, without the points before its thousands. */
function measureCell(field: Field, { thousands = [] }: SurveyItem, ref: string): string {
  return thousands.includes(field) ? `IF(ISNUMBER(${ref}),${ref},SUBSTITUTE(${ref},".",""))` : ref;
}

/**
 * A number joined into a text has the decimal sign of the program's language, and 1,234 could be read two ways: here it has
 * a point everywhere. Anything else than a number is joined as it is.
 */
export function withPoint(ref: string): string {
  return `IF(ISNUMBER(${ref}),${pointed(ref)},${ref})`;
}

/** A number as it stands, which takes no call; one that is refused without its unit, and a text, is read by a function. */
function plainOrRead(ref: string, most: string, read: string): string {
  return pointed(`IF(AND(ISNUMBER(${ref}),${ref}<=${most}),${ref},${read})`);
}

/** The greatest number in a unit that is taken without it. */
function mostIn(unit: LengthUnit): string {
  return String(Math.floor(PLAIN_LIMIT_MM / MM_PER[unit]));
}

/** The text of a number, or of nothing, with a point. */
export function pointed(number: string): string {
  return `SUBSTITUTE(${number},",",".")`;
}

export function isEmpty(ref: string): string {
  return `OR(TRIM(${ref})="",${ref}=0)`;
}

function knownUnit(item: SurveyItem, field: Field, survey: Survey): LengthUnit | undefined {
  try {
    return unitOf(item, field, survey);
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}
