import { InputError } from "../measure/errors";
import { readGiven, type Given, type GivenValue } from "../settings/given";
import { settingsConstant } from "./rowFormula";
import { SETTINGS_NAME, STOCK_NAME } from "./keptRanges";
import { quoted } from "../workbook/formulaText";
import type { Settings } from "../settings/schema";

/**
 * Settings of this run are written in each formula only where a settings sheet was there before, which is the user's. As a
 * table, not as a text: they are shared by all rows, so that a kind that has no use for one passes it over.
 */
export function sharedArguments(
  hadSettings: boolean,
  settings: readonly unknown[],
  { surveyUnit, answerUnit }: Settings,
): readonly string[] {
  // The heading of each answer names its unit, so a later change of the setting must not change the answer.
  const answers = answerUnit === surveyUnit ? "" : `; answer unit=${answerUnit}`;
  const ranges = [SETTINGS_NAME, STOCK_NAME, quoted(`unit=${surveyUnit}${answers}`)];
  const values = hadSettings
    ? settings.flatMap((each, place) => valuesOf(readGiven(each, `settings ${place + 1}`)))
    : [];
  return values.length === 0 ? ranges : [...ranges, settingsConstant(values)];
}

/** Formulas read the workbook's own stock: figures by another would change at the next calculation. */
export function refuseOtherStock(settings: readonly unknown[]): void {
  if (!settings.some((each, place) => readGiven(each, `settings ${place + 1}`).holds === "stock")) return;
  throw new InputError(
    "stock",
    `a stock table beside the workbook's own, called ${STOCK_NAME}`,
    "formulas read the workbook's own",
    "change it there, or ask for plain values",
  );
}

function valuesOf(given: Given): readonly GivenValue[] {
  return given.holds === "values" ? given.values : [];
}
