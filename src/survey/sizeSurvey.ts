import { isBlank } from "../measure/blank";
import { InputError, NoAnswer } from "../measure/errors";
import type { Settings } from "../settings/schema";
import { settingsForRows } from "../settings/settingsForRows";
import { settingKey } from "../settings/given";
import type { SharedSettings } from "../settings/readSettings";
import { asOne, isNoEnclosure, sizeItem, weightSet } from "../item/sizeItem";
import { surveyItems, type Survey, type SurveyItem, type SurveyOptions } from "./surveyItems";
import { type Outcome, NO_MEASURES, notMadeHere } from "./outcome";
import { readItem, isBlankItem, copiesOf } from "./readItem";
import { groupBoxes, readBox, ownOfBox, hazardsOf } from "./sharedBox";

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
 * @param kept what became of the row at that place before, where it reads as it did
 */
export function readingOf(
  survey: Survey,
  forRow: ForRow,
  leftOut: ReadonlyMap<number, string> = new Map(),
  kept: (index: number) => Outcome | undefined = () => undefined,
): SurveyReading {
  const boxes = groupBoxes(survey.items);
  const outcomeAt = (index: number): Outcome => {
    const item = survey.items[index]!;
    const why = item.leftOut === "" ? leftOut.get(item.row) : item.leftOut;
    if (why !== undefined) return { state: "left out", why };
    const known = kept(index);
    if (known !== undefined) return known;
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
  const quantity = set.length === 1 ? copiesOf(first) : 1;
  return {
    state: "sized",
    sized: sizeItem(item, first.cells.enclosure, weightKg, settings),
    quantity,
    said: set.length === 1 ? first.said : { ...first.said, hazard: hazardsOf(set) },
  };
}
