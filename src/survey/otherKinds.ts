import { KINDS } from "../enclosure/registry";
import { onShelf } from "../item/onShelf";
import { sizeItem } from "../item/sizeItem";
import { InputError, NoAnswer } from "../measure/errors";
import { fromMm, type Mm } from "../measure/units";
import type { SizedSurvey } from "./sizeSurvey";

/** What comes before the table of other kinds. */
export const OTHER_KINDS = "If every row that is sized were of one kind, standing upright:";

/** What is said wherever boxes go onto shelves. */
export const HEAVY_BOXES =
  "Heavy boxes: the heaviest on the lowest shelves, and two people to lift them. Local manual-handling rules come first.";

/** Shelf length of all rows as each kind; a row that a kind cannot hold is counted, not left out silently. */
export function otherKinds({ outcomes, settings }: SizedSurvey): readonly (readonly (number | string)[])[] {
  const lines = KINDS.map(({ name }) => {
    let [rows, length, without] = [0, 0, 0];
    for (const outcome of outcomes) {
      if (outcome.state !== "sized") continue;
      const along = shelfWidthAs(outcome.sized, name);
      if (along === undefined) without++;
      else {
        rows++;
        length += along * outcome.quantity;
      }
    }
    const unit = settings.answerUnit === "in" ? "ft" : "m";
    return [name, rows, `${fromMm(length, unit).toFixed(2)} ${unit}`, without];
  });
  return [["enclosure", "rows", "shelf", "cannot be made"], ...lines];
}

function shelfWidthAs({ item, weightKg, requested }: Parameters<typeof onShelf>[0], kind: string): Mm | undefined {
  try {
    // What the row sets for its own kind may mean nothing to another.
    const settings = { ...requested, size: "", ownOfRow: new Set<never>(), orientation: "upright" as const };
    return onShelf(sizeItem(item, kind, weightKg, settings)).along;
  } catch (error) {
    if (error instanceof InputError || error instanceof NoAnswer) return undefined;
    throw error;
  }
}
