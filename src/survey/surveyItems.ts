import { yesOrNo } from "../headings/kindWords";
import { unitWord, wordsOf } from "../headings/lexicon";
import { DECIMALS, type Question, type Word } from "../headings/questions";
import type { Recognition, RecogniseOptions, TickColumn } from "../headings/recognition";
import { recogniseColumns, surveyRows } from "../headings/recognise";
import type { Field } from "../headings/vocabulary/vocabulary";
import { InputError, shown } from "../measure/errors";
import type { LengthUnit } from "../measure/units";
import { PREFERRED_BOARD } from "../settings/definitions/materialSettings";
import { SETTING_NAMES, type GivenValue } from "../settings/given";
import { hazardIn } from "../board/hazard";
import { isItemMaterial, type MaterialWord } from "../board/itemMaterials";
import { readCopies } from "../measure/readCopies";
import { NOTHING_SAID, typedHeight, type SaidOfRow } from "../item/saidOfRow";
import { cellText, isBlank } from "../measure/blank";
import { refuseDoubt } from "./refuseDoubt";
import { enclosureWords, type EnclosureWords, type Meant } from "./enclosureWords";
import { surveyNotes } from "./surveyNotes";
import { whyLeftOut } from "./whyLeftOut";
import { settingKeys, ownValues } from "./ownValues";
import { pointedFields, withoutPoints } from "./thousands";

export interface SurveyOptions extends RecogniseOptions {
  /**
   * Read for a command or the pane, which can ask: everyday words become kinds, and a row with an enclosure and no
   * measure is a problem. A cell function reads each row as the functions of one item do.
   */
  readonly asks?: boolean;
  /** What a cell shows where that is not its value: 000042, or a date. */
  readonly displayed?: (row: number, column: number) => string | undefined;
}

/** A row of a survey, its cells sorted out but not yet read. */
export interface SurveyItem {
  /** Where it stands in the table, counted from 1. */
  readonly row: number;
  /** What the row is called: its identifier as displayed, else `row 7`. */
  readonly identifier: string;
  /** Empty where the survey gives none. */
  readonly title: string;
  /** What cautions go by beside the sizes. */
  readonly said: SaidOfRow;
  readonly cells: Readonly<Partial<Record<Field, unknown>>>;
  /** Where the enclosure was read from an everyday word: the formulas of the row say so too. */
  readonly meant?: Meant;
  /** The enclosure is a known structure that is none of our kinds. */
  readonly notMade?: true;
  /** Fields whose texts had points before thousands, which are taken out of `cells`. */
  readonly thousands?: readonly Field[];
  readonly quantity: number | InputError;
  /** Rows that share it are one enclosure; empty when the row has its own. */
  readonly box: string;
  readonly own: readonly GivenValue[];
  /** Why it is no item: a row of totals, headings again; empty when it is one. */
  readonly leftOut: string;
}

export interface Survey {
  readonly recognition: Recognition;
  readonly items: readonly SurveyItem[];
  /** Units that headings give, by field. */
  readonly units: Readonly<Partial<Record<Field, string>>>;
  /** What words in the unit column mean, as the user said. */
  readonly unitWords: ReadonlyMap<string, LengthUnit>;
  /** Everyday words that could mean two kinds: commands ask, a cell function shows the row's problem. */
  readonly questions: readonly Question[];
  /** Messages for the user of a command or the pane; none where a cell function asks, which shows no notes. */
  readonly notes: readonly string[];
  /** Words of the survey's own for what items are made of. */
  readonly materialWords: readonly MaterialWord[];
  /** Read for a command or the pane. */
  readonly asks: boolean;
}

/**
 * Sorts out a table of cells: its heading row, its columns, and a row for each item, none dropped.
 *
 * @throws Unanswered when a column that sizes depend on is missing or in doubt
 */
export function surveyItems(cells: readonly (readonly unknown[])[], options: SurveyOptions = {}): Survey {
  // A setting that is a measure of the item itself has its own column.
  const settings = [...SETTING_NAMES.filter((name) => !OWN_COLUMNS.has(name)), PREFERRED_BOARD];
  const recognition = recogniseColumns(cells, { ...options, settings });
  refuseDoubt(recognition, cells, options.asks === true);
  const { columns, ticks } = recognition;
  refuseTooLong(recognition);
  const rows = surveyRows(cells, recognition);
  const last = rows.findLast(({ values }) => !isAllBlank(values));
  const { asks = false } = options;
  const words = enclosureWords(options.words ?? []);
  const isComma = options.words?.some(({ word, meaning }) => word === DECIMALS && meaning === "comma") === true;
  const materialWords = (options.words ?? []).flatMap(({ word, meaning = "" }) =>
    isItemMaterial(meaning) ? [{ word, material: meaning }] : [],
  );
  const keys = settingKeys(recognition);
  const items = rows.map(({ row, values, settings: own }): SurveyItem => {
    const identifier = identifierOf(values, row, columns.identifier?.column, options);
    const thousands = isComma ? pointedFields(values) : [];
    const leftOut = whyLeftOut(values, row === last?.row, recognition);
    const said = ticks.length === 0 ? values.enclosure : tickedKind(cells[row - 1] ?? [], ticks);
    const isRead = asks && leftOut === "" && !isAllBlank(values);
    const { enclosure, meant, notMade } = isRead ? words.read(said, row) : asItIs(said);
    const asTyped = enclosure === values.enclosure ? values : { ...values, enclosure };
    const item: SurveyItem = {
      row,
      identifier,
      title: cellText(values.title),
      said: saidOf(values),
      cells: thousands.length === 0 ? asTyped : { ...asTyped, ...withoutPoints(values, thousands) },
      quantity: readCopies(values.quantity),
      box: isBlank(values.box) ? "" : String(values.box).trim(),
      own: ownValues(own, keys, materialWords),
      leftOut,
    };
    // Copied only for the few rows that have one of these: a survey may have a hundred thousand.
    if (thousands.length === 0 && meant === undefined && notMade === undefined) return item;
    return {
      ...item,
      ...(thousands.length === 0 ? {} : { thousands }),
      ...(meant === undefined ? {} : { meant }),
      ...(notMade === undefined ? {} : { notMade }),
    };
  });
  const units = Object.fromEntries(
    Object.entries(columns).flatMap(([field, { unit }]) => (unit === undefined ? [] : [[field, unit]])),
  );
  const notes = asks ? [...words.notes(), ...surveyNotes(items, rows, recognition)] : [];
  const unitWords = unitWordsOf(options.words ?? []);
  return { recognition, items, units, unitWords, questions: words.questions(), notes, materialWords, asks };
}

function isAllBlank(values: SurveyItem["cells"]): boolean {
  for (const field in values) if (!isBlank(values[field as Field])) return false;
  return true;
}

function asItIs(enclosure: unknown): ReturnType<EnclosureWords["read"]> {
  return { enclosure };
}

/** Twice as many rows as the benches have. */
const MOST_ROWS = 200_000;

function refuseTooLong({ firstRow, lastRow }: Recognition): void {
  const rows = lastRow - firstRow + 1;
  if (rows <= MOST_ROWS) return;
  throw new InputError(
    "survey",
    `${rows} rows`,
    `one survey has up to ${MOST_ROWS}`,
    "divide it, or delete stray cells far below its last item",
  );
}

const OWN_COLUMNS = new Set(["weight", "unit"]);

/** The unit of a row's sizes: of its unit column, else of the heading; undefined where neither says. */
export function unitOf(
  item: SurveyItem,
  field: Field,
  { units, unitWords }: Pick<Survey, "units"> & Partial<Pick<Survey, "unitWords">>,
): LengthUnit | undefined {
  const own = item.cells.unit;
  const unit = isBlank(own) ? units[field] : (unitWord(String(own)) ?? unitWords?.get(wordsOf(String(own))));
  if (unit === undefined && isBlank(own)) return undefined;
  if (unit !== undefined && LENGTH_UNITS.has(unit)) return unit as LengthUnit;
  throw new InputError("unit", shown(own), "give mm, cm, m, in or ft");
}

/** `--word "tommer=in"`: a word that means a unit. */
function unitWordsOf(words: readonly Word[]): Survey["unitWords"] {
  return new Map(
    words.flatMap(({ word, meaning = "" }): [string, LengthUnit][] =>
      LENGTH_UNITS.has(meaning) ? [[wordsOf(word), meaning as LengthUnit]] : [],
    ),
  );
}

/** `H x W` in one column, and the thickness in another. */
export function isDepthApart({ recognition }: Pick<Survey, "recognition">): boolean {
  const { height, width, depth, dimensions } = recognition.columns;
  return dimensions !== undefined && depth !== undefined && height === undefined && width === undefined;
}

const LENGTH_UNITS: ReadonlySet<string> = new Set(["mm", "cm", "m", "in", "ft"]);

function identifierOf(
  values: SurveyItem["cells"],
  row: number,
  column: number | undefined,
  { displayed }: SurveyOptions,
): string {
  if (column === undefined || (isBlank(values.identifier) && values.identifier !== 0)) return `row ${row}`;
  return (displayed?.(row, column) ?? String(values.identifier)).trim();
}

/** The kind whose column is ticked; two ticks name both, which is the row's problem. */
function tickedKind(cells: readonly unknown[], ticks: readonly TickColumn[]): string {
  return ticks.flatMap(({ column, kind }) => (yesOrNo(cells[column - 1]) === "yes" ? [kind] : [])).join(BETWEEN_TICKS);
}

/** Between the kinds of a row with two ticks. */
export const BETWEEN_TICKS = " + ";

function saidOf({ hazard, height }: SurveyItem["cells"]): SaidOfRow {
  const said = { hazard: hazardIn(hazard), heightAsTyped: typedHeight(height) };
  return said.hazard === "" && said.heightAsTyped === "" ? NOTHING_SAID : said;
}
