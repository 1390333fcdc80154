import { benchLength } from "../../src/measure/benchLength";
import { partsAnswer } from "../../src/item/partsAnswer";
import type { SizedSurvey } from "../../src/survey/sizeSurvey";

/** What `ENC.PARTS` answers for each row, as a ticket prints it. */
export function cutListTable({ outcomes }: SizedSurvey) {
  return outcomes.flatMap((outcome) => {
    if (outcome.state !== "sized") return [];
    const [, ...rows] = partsAnswer(outcome.sized) as readonly (readonly (number | string)[])[];
    return rows.map(([, count, length, width]) => ({
      count: Number(count) * outcome.quantity,
      length: benchLength(Number(length), "mm"),
      width: benchLength(Number(width), "mm"),
    }));
  });
}
