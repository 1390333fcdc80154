import { DEFINITIONS } from "../settings/schema";
import { settingKey, type GivenValue } from "../settings/given";
import { HAZARD_CAUTION, NO_HAZARD } from "../board/hazard";
import { ITEM_FUNCTIONS, type ItemFunctionId } from "../item/cellFunctions";
import type { Figure } from "../item/figure";
import { NO_ENCLOSURE } from "../item/sizeItem";
import type { TickColumn } from "../headings/recognition";
import { quoted, stored } from "../workbook/formulaText";
import { sizeFormulas, weightFormula, type FormulaPlace } from "./rowMeasures";
import { NO_MEASURES, notMadeHere } from "../survey/sizeSurvey";
import { BETWEEN_TICKS, type SurveyItem } from "../survey/surveyItems";

/** What the formulas of one row have in common. */
export interface RowArguments {
  readonly sizes: string;
  readonly weight: string;
  readonly enclosure: string;
  /** Its own settings, with what its keeper prefers: what its board is chosen by. */
  readonly own: readonly string[];
  /** The same with the weight, for the function that says why a row cannot be sized. */
  readonly ownAndWeight: readonly string[];
  /** Its own settings with the board that was chosen. */
  readonly ownWithBoard: readonly string[];
}

/**
 * Reads the row's own cells: measures with the units of their headings or unit column, dimension texts where the three
 * sizes are blank, the weight, and the row's own settings.
 */
export function rowArguments(item: SurveyItem, place: FormulaPlace): RowArguments {
  const { settings } = place.survey.recognition;
  const stated = settings.flatMap(({ column, setting }) => {
    const key = settingKey(setting);
    if (key === undefined) return [];
    const cell = place.cell(column, item.row);
    return [{ key, name: DEFINITIONS[key].name, value: key === "material" ? withoutSigns(cell) : cell }];
  });
  const preference =
    place.preference === undefined
      ? []
      : [{ key: "wallBoard", name: DEFINITIONS.wallBoard.name, value: place.preference(item.row) }];
  const own = [...stated, ...preference];
  const weight = weightFormula(item, place);
  const known = {
    name: DEFINITIONS.weight.name,
    value: weight === '""' ? '"none"' : `IF(${blank(weight)},"none",${weight})`,
  };
  const board = { name: DEFINITIONS.wallBoard.name, value: place.board(item.row) };
  const settled = own.filter(({ key }) => key !== "wallBoard");
  // A base or case that is auto is chosen by the guide, whatever the walls are.
  const { baseBoard, caseBoard } = place.settings;
  const byGuide = baseBoard === "auto" || caseBoard === "auto" ? [known] : [];
  return {
    sizes: sizeFormulas(item, place).join(","),
    weight,
    enclosure: enclosureFormula(item, place),
    own: settingsText(own),
    ownAndWeight: settingsText([...own, known]),
    ownWithBoard: [...(byGuide.length > 0 ? place.guide : []), ...settingsText([...settled, board, ...byGuide])],
  };
}

/** The text of a formula for a survey that says nothing of enclosures. */
const NOTHING = '""';

/** The cell of the enclosure, with the kind that its word means; ticks and a kind for all rows, spelled out. */
function enclosureFormula({ row, meant }: SurveyItem, { survey, cell }: FormulaPlace): string {
  const { columns, ticks } = survey.recognition;
  if (ticks.length > 0) return ticksFormula(row, ticks, cell);
  if (columns.enclosure === undefined) return meant === undefined ? NOTHING : quoted(meant.kind);
  const ref = cell(columns.enclosure.column, row);
  if (meant === undefined) return ref;
  const { word, kind } = meant;
  const same =
    word === null
      ? `TRIM(${ref})=""`
      : `${ref}=${typeof word === "string" ? quoted(word) : String(word).toUpperCase()}`;
  return `IF(${same},${quoted(kind)},${ref})`;
}

function ticksFormula(row: number, ticks: readonly TickColumn[], cell: FormulaPlace["cell"]): string {
  const isTicked = (column: number) =>
    `AND(${["", "0", "no", "n", "false"].map((text) => `TRIM(${cell(column, row)})<>${quoted(text)}`).join(",")})`;
  const texts = ticks.map(({ column, kind }) => `IF(${isTicked(column)},${quoted(BETWEEN_TICKS + kind)},"")`);
  return `MID(${texts.join("&")},${BETWEEN_TICKS.length + 1},99)`;
}

/** The live formula of one figure of one row, in the form in which a workbook stores it, without `=`. */
export function rowFormula(figure: Figure, item: SurveyItem, place: FormulaPlace, row: RowArguments): string {
  const { columns } = place.survey.recognition;
  const [fn, ...selectors] = figure.formula;
  const call = callOf(fn, selectors, row, place);
  if (figure.withHazard && columns.hazard !== undefined) {
    const hazard = place.cell(columns.hazard.column, item.row);
    const said = `${quoted(HAZARD_CAUTION.before)}&TRIM(SUBSTITUTE(${hazard},CHAR(10)," "))&${quoted(HAZARD_CAUTION.after)}`;
    const nothing = `${callOf("OUTSIDE", ["height"], row, place)}=""`;
    return `IF(${saysNoHazard(hazard)},${call},IF(${nothing},"",${said}&IF(${call}="","","; "&${call})))`;
  }
  if (fn === "PROBLEM") return problemFormula(call, item, row, place);
  if (!figure.ofAllCopies || columns.quantity === undefined) return call;
  const quantity = place.cell(columns.quantity.column, item.row);
  // Of a row without enclosure there is nothing to multiply.
  return `IF(${call}="","",IF(OR(${quantity}="",${quantity}=0),1,${quantity})*${call})`;
}

/**
 * A cell function answers a row without measures with nothing; of a row with an enclosure that is a problem, also where
 * the measures are deleted later. It knows no structure that is not made here either.
 */
function problemFormula(call: string, item: SurveyItem, { enclosure }: RowArguments, place: FormulaPlace): string {
  if (enclosure === NOTHING) return call;
  const { columns } = place.survey.recognition;
  const measures = (["height", "width", "depth", "dimensions"] as const).flatMap((field) =>
    columns[field] === undefined ? [] : [place.cell(columns[field].column, item.row)],
  );
  // Zeros are blanks too, and an error in a cell is for the function to report.
  const isBlankRow = `IFERROR(TRIM(SUBSTITUTE(${measures.join("&")},"0",""))="",1=0)`;
  const isNone = `ISNUMBER(FIND("|"&LOWER(TRIM(${enclosure}))&"|","||${NO_ENCLOSURE}|0|"))`;
  const ofBlankRow = `IF(${isNone},"",${quoted(NO_MEASURES.message)})`;
  const known = `IF(${isBlankRow},${ofBlankRow},${call})`;
  if (item.notMade !== true || columns.enclosure === undefined) return known;
  const cell = place.cell(columns.enclosure.column, item.row);
  const word = String(item.cells.enclosure);
  return `IF(${cell}=${quoted(word)},${quoted(notMadeHere(word).message)},${known})`;
}

/**
 * The same for a row whose quantity cannot be read: the result that says so, until the cell holds something else.
 *
 * @param result what every figure of such a row shows
 */
export function untilQuantityMended(
  formula: string,
  { row, cells }: SurveyItem,
  { survey, cell }: FormulaPlace,
  result: unknown,
): string {
  const { quantity } = survey.recognition.columns;
  if (quantity === undefined) return formula;
  const shown = typeof result === "string" ? quoted(result) : "#VALUE!";
  return `IF(${cell(quantity.column, row)}&""=${quoted(String(cells.quantity))},${shown},${formula})`;
}

/** Settings as a table in a formula. */
export function settingsConstant(values: readonly GivenValue[]): string {
  const rows = values.map(
    ({ key, value }) => `${quoted(DEFINITIONS[key].name)},${typeof value === "number" ? value : quoted(String(value))}`,
  );
  return `{"setting","value";${rows.join(";")}}`;
}

/** The words are looked for as a whole between bars; FALSE reads otherwise in other languages. */
function saysNoHazard(cell: string): string {
  const words = quoted(`|${NO_HAZARD.join("|")}|`);
  return `OR(${cell}=FALSE,ISNUMBER(FIND("|"&LOWER(TRIM(${cell}))&"|",${words})))`;
}

/** What each function takes last: the board is chosen once a row, and all others but `problem` take the one chosen. */
const OWN: Readonly<Partial<Record<ItemFunctionId, (row: RowArguments, place: FormulaPlace) => readonly string[]>>> = {
  "BOARD.STOCK": ({ own }, { guide }) => [...guide, ...own],
  // It says too where an item is beyond the guide.
  CAUTIONS: ({ ownWithBoard }, { guide }) => [...guide, ...ownWithBoard],
  PROBLEM: ({ ownAndWeight }) => ownAndWeight,
};

function callOf(fn: ItemFunctionId, selectors: readonly string[], row: RowArguments, place: FormulaPlace): string {
  const weighed = ITEM_FUNCTIONS[fn].weight === "argument";
  const own = OWN[fn]?.(row, place) ?? row.ownWithBoard;
  return stored(fn, [
    row.sizes,
    ...(weighed ? [row.weight] : []),
    row.enclosure,
    ...selectors.map(quoted),
    ...place.shared,
    ...own,
  ]);
}

/** A settings text is parted at these two signs. */
function withoutSigns(cell: string): string {
  return `SUBSTITUTE(SUBSTITUTE(${cell},";",","),"="," ")`;
}

function blank(value: string): string {
  return `OR(${value}="",${value}=0)`;
}

/** `fit=loose; turn-in=` of what the cells hold: nothing for one that is blank or 0. */
function settingsText(given: readonly { readonly name: string; readonly value: string }[]): readonly string[] {
  const parts = given.map(
    ({ name, value }, i) => `${quoted(`${i === 0 ? "" : "; "}${name}=`)}&IF(${value}=0,"",${value})`,
  );
  return parts.length === 0 ? [] : [parts.join("&")];
}
