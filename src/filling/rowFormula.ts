import { DEFINITIONS, type SettingKey } from "../settings/schema";
import { PREFERRED_BOARD } from "../settings/definitions/materialSettings";
import { settingKey, type GivenValue } from "../settings/given";
import { HAZARD_CAUTION, NO_HAZARD } from "../board/hazard";
import { ITEM_FUNCTIONS, type ItemFunctionId } from "../item/cellFunctions";
import type { Figure } from "../item/figure";
import { NO_ENCLOSURE } from "../item/sizeItem";
import type { TickColumn } from "../headings/recognition";
import { quoted, stored } from "../workbook/formulaText";
import { boxMeasures } from "./boxMeasures";
import { sizeFormulas, weightFormula, withPoint, type FormulaPlace } from "./rowMeasures";
import { NO_MEASURES, notMadeHere } from "../survey/sizeSurvey";
import { BETWEEN_TICKS, type SurveyItem } from "../survey/surveyItems";

/** What the formulas of one row have in common. */
export interface RowArguments {
  /** The rows that share its box, itself first; itself alone where it shares none. */
  readonly set: readonly SurveyItem[];
  readonly sizes: string;
  readonly weight: string;
  readonly enclosure: string;
  /** Its own settings, with what its keeper prefers: what its board is chosen by. */
  readonly own: readonly string[];
  /** The same with the weight, for the function that says why a row cannot be sized. */
  readonly ownAndWeight: readonly string[];
  /** Its own settings with the board that was chosen. */
  readonly ownWithBoard: readonly string[];
  /** What most functions take last: the settings of all rows, then its own with the board. */
  readonly last: string;
}

/**
 * Reads the row's own cells: measures with the units of their headings or unit column, dimension texts where the three
 * sizes are blank, the weight, and the row's own settings. Of a shared box, the cells of all its rows.
 *
 * @param set the rows that share its box, itself first
 */
export function rowArguments(item: SurveyItem, place: FormulaPlace, set: readonly SurveyItem[] = [item]): RowArguments {
  const measures =
    set.length === 1
      ? {
          sizes: sizeFormulas(item, place),
          weight: weightFormula(item, place),
          weightText: weightFormula(item, place, true),
        }
      : boxMeasures(set, place);
  const { settings } = place.survey.recognition;
  // Of two columns that name the board, the later of the text counts where both are filled.
  const inOrder = [...settings].sort(
    (one, other) => Number(one.setting === PREFERRED_BOARD) - Number(other.setting === PREFERRED_BOARD),
  );
  const stated = inOrder.flatMap(({ column, setting }) => {
    const key = settingKey(setting);
    if (key === undefined) return [];
    const cell = place.cell(column, item.row);
    const cells = key === "wallBoard" ? set.map(({ row }) => place.cell(column, row)) : [cell];
    return [{ key, ...(key === "material" ? textOf(key, materialFormula(cell, place)) : firstGiven(key, cells)) }];
  });
  const preference =
    place.preference === undefined
      ? []
      : [
          {
            key: "wallBoard",
            ...firstGiven(
              "wallBoard",
              set.map(({ row }) => place.preference!(row)),
            ),
          },
        ];
  const { sizes, weight, weightText } = measures;
  const own = [...stated, ...preference];
  const known: GivenText = {
    name: DEFINITIONS.weight.name,
    text: weight === '""' ? '"none"' : set.length > 1 ? weightText : `IF(${blank(weight)},"none",${weightText})`,
  };
  const board = textOf("wallBoard", place.board(item.row));
  const settled = own.filter(({ key }) => key !== "wallBoard");
  // A base or case that is auto is chosen by the guide, whatever the walls are.
  const { baseBoard, caseBoard } = place.settings;
  const byGuide = baseBoard === "auto" || caseBoard === "auto" ? [known] : [];
  const ownWithBoard = [...(byGuide.length > 0 ? place.guide : []), ...settingsText([...settled, board, ...byGuide])];
  return {
    set,
    sizes: sizes.join(","),
    weight,
    enclosure: enclosureFormula(item, place),
    own: settingsText(own),
    ownAndWeight: settingsText([...own, known]),
    ownWithBoard,
    last: [...place.shared, ...ownWithBoard].join(","),
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

/** A setting that cells of the row give. */
interface GivenText {
  readonly name: string;
  /** What it says, as a formula. */
  readonly text: string;
}

function textOf(key: SettingKey, text: string): GivenText {
  return { name: DEFINITIONS[key].name, text: `IF(${text}=0,"",${text})` };
}

/** What the first of some cells says that holds something. */
function firstGiven(key: SettingKey, cells: readonly string[]): GivenText {
  const last = cells.at(-1)!;
  const ofLast = `IF(${last}=0,"",${withPoint(last)})`;
  const text = cells.slice(0, -1).reduceRight((rest, cell) => `IF(${blank(cell)},${rest},${withPoint(cell)})`, ofLast);
  return { name: DEFINITIONS[key].name, text };
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

/** What the cell says of the material, with what the survey's own words mean. */
function materialFormula(cell: string, { survey }: FormulaPlace): string {
  const meant = survey.materialWords.map(
    ({ word, material }) =>
      `&IF(ISNUMBER(FIND(${quoted(word.toLowerCase())},LOWER(${cell}))),${quoted(`, ${material}`)},"")`,
  );
  return `${withoutSigns(cell)}${meant.join("")}`;
}

/** A settings text is parted at these two signs. */
function withoutSigns(cell: string): string {
  return `SUBSTITUTE(SUBSTITUTE(${cell},";",","),"="," ")`;
}

function blank(value: string): string {
  return `OR(${value}="",${value}=0)`;
}

/** `fit=loose; turn-in=` of what the cells hold: nothing for one that is blank or 0. */
function settingsText(given: readonly GivenText[]): readonly string[] {
  const parts = given.map(({ name, text }, i) => `${quoted(`${i === 0 ? "" : "; "}${name}=`)}&${text}`);
  return parts.length === 0 ? [] : [parts.join("&")];
}
