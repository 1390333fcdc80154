import { kindNamed } from "../enclosure/kindNamed";
import { isBlank } from "../measure/blank";
import { InputError, NoAnswer, shown } from "../measure/errors";
import { readDimensions } from "../measure/readDimensions";
import { readLength } from "../measure/readLength";
import { readMass } from "../measure/readMass";
import { massUnitOf } from "../measure/units";
import { plainName } from "../settings/names";
import { DEFINITIONS, type Settings } from "../settings/schema";
import { settingsForRows } from "../settings/settingsForRows";
import { settingKey } from "../settings/given";
import type { SharedSettings } from "../settings/readSettings";
import { cautionsIn } from "../item/boardAnswers";
import type { SaidOfRow } from "../item/saidOfRow";
import { asOne, isNoEnclosure, naming, sizeItem, weightSet, type Sized, type WeighedItem } from "../item/sizeItem";
import { isDepthApart, surveyItems, unitOf, type Survey, type SurveyItem, type SurveyOptions } from "./surveyItems";

/** What became of a row. One row in, one outcome out. */
export type Outcome =
  | {
      readonly state: "sized";
      readonly sized: Sized;
      readonly quantity: number;
      /** Of all that share the enclosure. */
      readonly said: SaidOfRow;
    }
  /** Nothing to size: a blank row, or enclosure `none`. */
  | { readonly state: "nothing" }
  /** No item, or left out by the user; `why` says it. */
  | { readonly state: "left out"; readonly why: string }
  /** Answered on the first row of its box. */
  | { readonly state: "in box"; readonly box: string }
  | {
      readonly state: "problem";
      readonly error: InputError | NoAnswer;
      /** It has an enclosure and no measure at all: a cell function answers such a row with nothing. */
      readonly unmeasured?: true;
    };

/** What to watch with what a row makes, gravest first; the one reading for columns, pane and paper. */
export function cautionsOfRow(outcome: Outcome): readonly string[] {
  return outcome.state === "sized" ? cautionsIn(outcome.sized, outcome.said) : [];
}

/** A survey of which each row is sized when it is asked for, and kept by nobody. */
export interface SurveyReading {
  readonly survey: Survey;
  /** Of the row at that place of `survey.items`. */
  readonly outcomeAt: (index: number) => Outcome;
  /** What all rows share. */
  readonly settings: Settings;
}

export interface SizedSurvey extends SurveyReading {
  /** In the order of `survey.items`. */
  readonly outcomes: readonly Outcome[];
}

/**
 * Sizes every row of a survey.
 *
 * @param cells the table with its heading row
 * @param settings settings arguments, shared by all rows
 * @throws InputError when the table or the shared settings cannot be read; what is wrong with a row is its outcome
 */
export function sizeSurvey(
  cells: readonly (readonly unknown[])[],
  settings: readonly unknown[],
  options: SurveyOptions = {},
): SizedSurvey {
  return sizedAtOnce(readSurvey(cells, settings, options));
}

/** Every row of a survey that is sorted out already. */
export function sizedAtOnce({ survey, outcomeAt, settings }: SurveyReading): SizedSurvey {
  const outcomes = survey.items.map((_, index) => outcomeAt(index));
  return { survey, outcomes, outcomeAt: (index) => outcomes[index]!, settings };
}

/**
 * The same, sized row by row as it is asked for: the assemblies of a long survey take a gigabyte together, and a table of
 * figures needs one at a time.
 */
export function readSurvey(
  cells: readonly (readonly unknown[])[],
  settings: readonly unknown[],
  options: SurveyOptions = {},
): SurveyReading {
  const shared = settingsForRows(settings);
  const settingFits = (setting: string, value: unknown) => {
    const key = settingKey(setting);
    return key !== undefined && shared.takes(key, value);
  };
  return readingOf(surveyItems(cells, { ...options, settingFits }), shared.withOwn);
}

type ForRow = SharedSettings["withOwn"];

/**
 * A survey whose rows are sized as they are asked for.
 *
 * @param leftOut rows that the user leaves out, with the reason
 */
export function readingOf(
  survey: Survey,
  forRow: ForRow,
  leftOut: ReadonlyMap<number, string> = new Map(),
): SurveyReading {
  const boxes = groupBoxes(survey.items);
  const outcomeAt = (index: number): Outcome => {
    const item = survey.items[index]!;
    const why = item.leftOut === "" ? leftOut.get(item.row) : item.leftOut;
    if (why !== undefined) return { state: "left out", why };
    const set = item.box === "" ? [item] : boxes.get(item.box)!;
    if (set[0] !== item) return { state: "in box", box: item.box };
    try {
      return sizeSet(set as readonly [SurveyItem, ...SurveyItem[]], survey, forRow);
    } catch (error) {
      if (error instanceof InputError || error instanceof NoAnswer) return { state: "problem", error };
      throw error;
    }
  };
  return { survey, outcomeAt, settings: forRow([]) };
}

function groupBoxes(items: readonly SurveyItem[]): ReadonlyMap<string, readonly SurveyItem[]> {
  const boxes = new Map<string, SurveyItem[]>();
  for (const item of items) {
    if (item.box === "" || item.leftOut !== "") continue;
    const set = boxes.get(item.box);
    if (set === undefined) boxes.set(item.box, [item]);
    else set.push(item);
  }
  return boxes;
}

/** One item, or those that share a box. */
function sizeSet(set: readonly [SurveyItem, ...SurveyItem[]], survey: Survey, forRow: ForRow): Outcome {
  const [first] = set;
  if (isNoEnclosure(first.cells.enclosure)) return { state: "nothing" };
  const other = set.find(({ notMade }) => notMade === true);
  if (other !== undefined) return { state: "problem", error: notMadeHere(other.cells.enclosure) };
  if (set.every((item) => isBlankItem(item, survey)))
    return isBlank(first.cells.enclosure) || !survey.asks
      ? { state: "nothing" }
      : { state: "problem", error: NO_MEASURES, unmeasured: true };
  const asked = forRow(set.length === 1 ? first.own : ownOfBox(set));
  const items = set.length === 1 ? [readItem(first, survey, asked)] : readBox(set, survey, asked);
  const { item, weightKg = weightSet(asked), settings } = asOne(items, first.cells.enclosure, asked);
  const quantity = set.length === 1 ? given(first.quantity) : 1;
  return {
    state: "sized",
    sized: sizeItem(item, first.cells.enclosure, weightKg, settings),
    quantity,
    said: set.length === 1 ? first.said : { ...first.said, hazard: hazardsOf(set) },
  };
}

/** A box is as hazardous as what lies in it. */
function hazardsOf(set: readonly SurveyItem[]): string {
  return [...new Set(set.map(({ said }) => said.hazard).filter((hazard) => hazard !== ""))].join(", ");
}

export const NO_MEASURES = new InputError(
  "height",
  "no measures",
  "give height, width and depth",
  "or none as its enclosure",
);

/** A known structure that is none of our kinds. */
export function notMadeHere(enclosure: unknown): InputError {
  return new InputError(
    "enclosure",
    shown(enclosure),
    "a structure that is not made here",
    "choose another kind, or none",
  );
}

/**
 * What the rows of one box set: the first row's own values, and the board that any of them prefers.
 *
 * @throws InputError when two of them prefer different boards
 */
function ownOfBox(set: readonly [SurveyItem, ...SurveyItem[]]): SurveyItem["own"] {
  const [first] = set;
  for (const key of OF_THE_BOX) refuseOther(set, key);
  const preferences = set.flatMap(({ own, identifier }) =>
    own.flatMap((each) => (each.key === "wallBoard" ? [{ each, identifier }] : [])),
  );
  const [preferred, ...others] = preferences;
  if (preferred === undefined) return first.own;
  const other = others.find(({ each }) => plainName(String(each.value)) !== plainName(String(preferred.each.value)));
  if (other !== undefined)
    throw new InputError(
      "preferred board",
      `${shown(other.each.value)} for ${other.identifier} in box ${first.box}, and ${shown(preferred.each.value)} for ${preferred.identifier}`,
      "one box is made of one board",
      "give both rows the same, or leave one blank",
    );
  return [...first.own.filter(({ key }) => key !== "wallBoard"), preferred.each];
}

const OF_THE_BOX = ["arrangement", "dividers", "dividerHeight"] as const;

/** A row that says nothing lies as the first does. */
function refuseOther(set: readonly [SurveyItem, ...SurveyItem[]], key: (typeof OF_THE_BOX)[number]): void {
  const saidBy = ({ own }: SurveyItem) => own.find((each) => each.key === key)?.value;
  const [first] = set;
  const wanted = saidBy(first);
  const other = set.find((item) => {
    const said = saidBy(item);
    return said !== undefined && plainName(shown(said)) !== plainName(shown(wanted));
  });
  if (other === undefined) return;
  const { name } = DEFINITIONS[key];
  throw new InputError(
    name,
    `${shown(saidBy(other))} for ${other.identifier} in box ${first.box}, whose first row says ${wanted === undefined ? "nothing" : shown(wanted)}`,
    "items of one box lie in one way",
    "give both rows the same, or another box",
  );
}

/** Those that share a box: each copy in the order of the survey. */
function readBox(
  set: readonly [SurveyItem, ...SurveyItem[]],
  survey: Survey,
  settings: Settings,
): readonly WeighedItem[] {
  const [first] = set;
  // A set is not read without an enclosure to compare with; of one item, what is wrong is said in the order of the
  // cell functions.
  if (isBlank(first.cells.enclosure)) kindNamed(null);
  return set.flatMap((item) => {
    if (item !== first) refuseOtherEnclosure(item, first);
    return naming(item === first ? "" : `${item.identifier}, `, () => {
      const copies = given(item.quantity);
      const read = readItem(item, survey, settings);
      return Array.from({ length: copies }, () => read);
    });
  });
}

function isBlankItem({ cells }: SurveyItem, { recognition }: Survey): boolean {
  const { height, width, depth, dimensions } = cells;
  return (
    isBlank(height) &&
    isBlank(width) &&
    isBlank(depth) &&
    (recognition.columns.dimensions === undefined || isBlank(dimensions))
  );
}

/** Height, width and depth of their columns, else of the dimension text; weight of its column, else of that text. */
function readItem(item: SurveyItem, survey: Survey, settings: Settings): WeighedItem {
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

function refuseOtherEnclosure(item: SurveyItem, first: SurveyItem): void {
  const own = item.cells.enclosure;
  if (isBlank(own) || String(own).trim().toLowerCase() === String(first.cells.enclosure).trim().toLowerCase()) return;
  throw new InputError(
    "enclosure",
    `${shown(own)} for ${item.identifier} in box ${first.box}, whose first row says ${shown(first.cells.enclosure)}`,
    "one box is one enclosure",
    "give both rows the same, or another box",
  );
}

function given<T>(value: T | InputError): T {
  if (value instanceof InputError) throw value;
  return value;
}
