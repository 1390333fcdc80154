import { DEFINITIONS } from "../settings/schema";
import type { GivenValue } from "../settings/given";
import { HAZARD_CAUTION, NO_HAZARD } from "../board/hazard";
import { ITEM_FUNCTIONS, type ItemFunctionId } from "../item/cellFunctions";
import type { Figure } from "../item/figure";
import { NO_ENCLOSURE } from "../item/sizeItem";
import { quoted, stored } from "../workbook/formulaText";
import type { FormulaPlace } from "./rowMeasures";
import { NO_MEASURES, notMadeHere } from "../survey/outcome";
import type { SurveyItem } from "../survey/surveyItems";
import { type RowArguments, NOTHING } from "./rowArguments";

/** The live formula of one figure of one row, in the form in which a workbook stores it, without `=`. */
export function rowFormula(figure: Figure, item: SurveyItem, place: FormulaPlace, row: RowArguments): string {
  const { columns } = place.survey.recognition;
  const [fn, ...selectors] = figure.formula;
  const call = callOf(fn, selectors, row, place);
  if (figure.withHazard && columns.hazard !== undefined) {
    const { column } = columns.hazard;
    const cells = row.set.map((each) => place.cell(column, each.row));
    const named = cells.length === 1 ? trimmed(cells[0]!) : allHazards(cells);
    const said = `${quoted(HAZARD_CAUTION.before)}&${named}&${quoted(HAZARD_CAUTION.after)}`;
    const none = cells.map(saysNoHazard);
    // The sign at the end tells whether a caution follows, so that one call answers both.
    const both = `SUBSTITUTE(SUBSTITUTE(${said}&"; "&${call}&"${END}","; ${END}",""),"${END}","")`;
    return `IF(${none.length === 1 ? none[0]! : `AND(${none.join(",")})`},${call},IF(${isUnsized(item, place)},"",${both}))`;
  }
  if (fn === "PROBLEM") return problemFormula(call, item, row, place);
  // A box is made once, whatever copies lie in it.
  if (!figure.ofAllCopies || columns.quantity === undefined || row.set.length > 1) return call;
  const quantity = place.cell(columns.quantity.column, item.row);
  // Of a row without enclosure there is nothing to multiply.
  return `IF(${isUnsized(item, place)},"",IF(OR(${quantity}="",${quantity}=0),1,${quantity})*${call})`;
}

/** Whether the row has no enclosure: its board is empty, which is cheaper than to ask a function once more. */
function isUnsized({ row }: SurveyItem, { board }: FormulaPlace): string {
  return `IFERROR(${board(row)}="",1=0)`;
}

/** A sign that no caution holds. */
const END = "\u241f";

/**
 * A cell function answers a row without measures with nothing; of a row with an enclosure that is a problem, also where
 * the measures are deleted later. It knows no structure that is not made here either.
 */
function problemFormula(call: string, item: SurveyItem, { enclosure, set }: RowArguments, place: FormulaPlace): string {
  if (enclosure === NOTHING) return call;
  const { columns } = place.survey.recognition;
  const measures = (["height", "width", "depth", "dimensions"] as const).flatMap((field) =>
    columns[field] === undefined ? [] : set.map(({ row }) => place.cell(columns[field]!.column, row)),
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
  const ref = cell(quantity.column, row);
  const refused =
    typeof cells.quantity === "number" ? `${ref}=${cells.quantity}` : `${ref}&""=${quoted(String(cells.quantity))}`;
  return `IF(${refused},${shown},${formula})`;
}

/** Settings as a table in a formula. */
export function settingsConstant(values: readonly GivenValue[]): string {
  const rows = values.map(
    ({ key, value }) => `${quoted(DEFINITIONS[key].name)},${typeof value === "number" ? value : quoted(String(value))}`,
  );
  return `{"setting","value";${rows.join(";")}}`;
}

/** What rows of one box name, each once: `mould, arsenic`. */
function allHazards(cells: readonly string[]): string {
  const texts = cells.map((cell, index) => {
    const before = cells.slice(0, index).map((other) => `${other}=${cell}`);
    return `IF(OR(${[saysNoHazard(cell), ...before].join(",")}),"",", "&${trimmed(cell)})`;
  });
  return `MID(${texts.join("&")},3,999)`;
}

function trimmed(cell: string): string {
  return `TRIM(SUBSTITUTE(${cell},CHAR(10)," "))`;
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
  const own = OWN[fn]?.(row, place);
  return stored(fn, [
    row.sizes,
    ...(weighed ? [row.weight] : []),
    row.enclosure,
    ...selectors.map(quoted),
    ...(own === undefined ? [row.last] : [...place.shared, ...own]),
  ]);
}
