import { cellText, isBlank } from "../measure/blank";
import { InputError } from "../measure/errors";
import { readLength } from "../measure/readLength";
import { readMass } from "../measure/readMass";
import { fromMm, massIn, massUnitOf, tidy, type LengthUnit, type WorkbookUnit } from "../measure/units";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { unitOf, type SurveyItem } from "../survey/surveyItems";
import type { CellEdit, WorkbookEdits } from "../workbook/edits";
import type { BookSurvey } from "./readBookSurvey";
import { settingEdits, type KeptBook } from "./settingEdits";

/** What another unit can mean: the sizes are written in it already, they are to be converted, or answers alone are in it. */
export type UnitMeaning = "written" | "convert" | "answers";

/** A survey and the units of its numbers, read before the unit was changed. */
export type UnitSurvey = KeptBook & Pick<BookSurvey, "chosen">;

const SIZES = ["height", "width", "depth"] as const;
type Size = (typeof SIZES)[number];

/** A number without a unit of its own, that another unit makes into another size. */
export interface PlainMeasure {
  readonly row: number;
  readonly column: number;
  readonly identifier: string;
  readonly field: Size | "weight";
  readonly text: string;
  /** What it is now: in mm, or in kg. */
  readonly amount: number;
  /** The unit that it is read in; undefined for a weight. */
  readonly readIn?: LengthUnit;
}

/**
 * The numbers of a survey whose meaning depends on the setting `unit`: neither cell, heading nor row names theirs. Those that
 * cannot be read are left out: they are problems in any unit.
 */
export function plainMeasures({ survey, settings }: Pick<SizedSurvey, "survey" | "settings">): readonly PlainMeasure[] {
  const { columns } = survey.recognition;
  const live = survey.items.filter(({ leftOut }) => leftOut === "");
  const plain = (
    field: PlainMeasure["field"],
    read: (item: SurveyItem, other?: true) => number,
    unitFor?: (item: SurveyItem) => LengthUnit,
  ): readonly PlainMeasure[] => {
    const column = columns[field];
    if (column === undefined || column.unit !== undefined) return [];
    return live.flatMap((item) => {
      const cell = item.cells[field];
      if (isBlank(cell) || (field !== "weight" && !isBlank(item.cells.unit))) return [];
      const amount = readOrNot(() => read(item));
      // A cell that names its unit is the same in any other.
      if (amount === undefined || amount === readOrNot(() => read(item, true))) return [];
      const { row, identifier } = item;
      const readIn = unitFor === undefined ? {} : { readIn: unitFor(item) };
      return [{ row, column: column.column, identifier, field, text: cellText(cell), amount, ...readIn }];
    });
  };
  const sizes = SIZES.flatMap((field) => {
    // A column's own texts may tell the unit of its numbers.
    const unitFor = (item: SurveyItem) => unitOf(item, field, survey) ?? settings.surveyUnit;
    const read = (item: SurveyItem, other?: true) => {
      const unit = unitFor(item);
      return readLength(item.cells[field], { argument: field, unit: other ? OTHER_UNIT[unit] : unit });
    };
    return plain(field, read, unitFor);
  });
  const mass = massUnitOf(settings.surveyUnit);
  const weights = plain("weight", (item, other) =>
    readMass(item.cells.weight, { argument: "weight", unit: other ? (mass === "kg" ? "lb" : "kg") : mass }),
  );
  return [...sizes, ...weights];
}

/** Only a number that names no unit is another length in this. */
const OTHER_UNIT: Readonly<Record<LengthUnit, LengthUnit>> = { mm: "cm", cm: "mm", m: "mm", in: "mm", ft: "mm" };

function readOrNot(read: () => number): number | undefined {
  try {
    return read();
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

/**
 * What gives the survey another unit in the sense that the user means. The settings sheet must be there.
 *
 * @param before the survey as it was read in its former unit, whose amounts are kept where sizes are converted
 * @throws InputError when sizes are to be converted that are formulas, or texts of all dimensions
 */
export function unitEdits(
  now: UnitSurvey,
  before: Pick<SizedSurvey, "survey" | "settings">,
  to: WorkbookUnit,
  meaning: UnitMeaning,
): Pick<WorkbookEdits, "cells" | "names"> {
  const { surveyUnit } = before.settings;
  if (meaning === "answers") {
    // Where the sheet says the new unit already, it says the former one again.
    const unit = now.sized.settings.surveyUnit === surveyUnit ? {} : { surveyUnit };
    return settingEdits(now, { ...unit, answerUnit: to === surveyUnit ? "" : to });
  }
  const { cells, names } = settingEdits(now, { surveyUnit: to });
  return { cells: [...cells, ...(meaning === "convert" ? converted(now, before, to) : [])], names };
}

function converted(
  { chosen }: UnitSurvey,
  before: Pick<SizedSurvey, "survey" | "settings">,
  to: WorkbookUnit,
): readonly CellEdit[] {
  const { columns } = before.survey.recognition;
  if (columns.dimensions !== undefined && columns.dimensions.unit === undefined)
    throw new InputError(
      "unit",
      `a column of dimension texts, "${columns.dimensions.heading}"`,
      "only numbers in columns of their own can be converted",
      "choose that only answers are in the new unit",
    );
  const sameMass = massUnitOf(before.settings.surveyUnit) === massUnitOf(to);
  const measures = plainMeasures(before).filter(({ field }) => field !== "weight" || !sameMass);
  return measures.map(({ row, column, field, amount }) => ({
    sheet: chosen.sheet.name,
    row,
    column,
    content: tidy(field === "weight" ? massIn(amount, to) : fromMm(amount, to)),
    format: field === "weight" ? "General" : FORMATS[to],
    typed: true,
  }));
}

/** Fine enough to show that a converted size is no whole number. */
const FORMATS: Readonly<Record<WorkbookUnit, string>> = { mm: "0.0", cm: "0.00", in: "0.000" };
