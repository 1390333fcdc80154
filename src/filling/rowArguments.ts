import { DEFINITIONS, type SettingKey } from "../settings/schema";
import { PREFERRED_BOARD } from "../settings/definitions/materialSettings";
import { settingKey } from "../settings/given";
import type { TickColumn } from "../headings/recognition";
import { quoted } from "../workbook/formulaText";
import { boxMeasures } from "./boxMeasures";
import { sizeFormulas, weightFormula, withPoint, type FormulaPlace } from "./rowMeasures";
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
export const NOTHING = '""';

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
