import { InputError } from "../measure/errors";
import { areaName, type Area } from "../workbook/cellRef";

/**
 * The cells that a filter spans when it is to reach all columns of a survey: those of the filter that stands, where it does.
 *
 * @param standing the filter of the sheet, which has but one
 * @throws InputError when that filter is of other rows, and would be lost
 */
export function filterWith(survey: Area, standing: Area | undefined): Area {
  if (standing === undefined) return survey;
  if (standing.top !== survey.top)
    throw new InputError(
      "filter",
      `the filter of the sheet over ${areaName(standing)}`,
      "a sheet has one filter, and that one is not of the survey",
      "take it away first, if you can do without it",
    );
  const left = Math.min(survey.left, standing.left);
  const right = Math.max(survey.right, standing.right);
  const bottom = Math.max(survey.bottom, standing.bottom);
  const reaches = left === standing.left && right === standing.right && bottom === standing.bottom;
  return reaches ? standing : { top: standing.top, left, right, bottom };
}
