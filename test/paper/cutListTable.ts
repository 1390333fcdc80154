import { benchLength } from "../../src/measure/benchLength";
import { MM_PER } from "../../src/measure/units";
import { partsAnswer } from "../../src/item/partsAnswer";
import type { SizedSurvey } from "../../src/survey/sizeSurvey";

/** What `ENC.PARTS` answers for each row, as a ticket prints it. */
export function cutListTable({ outcomes, settings: { answerUnit: unit } }: SizedSurvey) {
  return outcomes.flatMap((outcome) => {
    if (outcome.state !== "sized") return [];
    const [, ...rows] = partsAnswer(outcome.sized) as readonly (readonly (number | string)[])[];
    return rows.map(([, count, length, width]) => ({
      count: Number(count) * outcome.quantity,
      length: benchLength(Number(length) * MM_PER[unit], unit),
      width: benchLength(Number(width) * MM_PER[unit], unit),
    }));
  });
}
