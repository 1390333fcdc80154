import type { Row } from "../src/item/sizeItem";
import { partsAnswer } from "../src/item/partsAnswer";
import { errorCode, unwrapped } from "../src/settings/errorCell";
import { sizeNamed } from "../src/survey/standardSizes/sizesTable";
import { askBeside } from "./askBeside";
import { type CellResult, cellsOfReply, itemAnswer, oneValue, plainCell } from "./cells";
import type { SurveyAsk } from "./surveyAsks";

/**
 * A function of a whole survey, answered on a thread beside this one.
 *
 * @param choice the argument between the survey and the settings, where there is one
 * @throws CustomFunctions.Error where there is no answer
 */
export async function surveyCells(
  name: SurveyAsk["name"],
  items: unknown,
  settings: unknown,
  choice?: unknown,
): Promise<CellResult> {
  const reply = await askBeside({
    name,
    items: (items as readonly (readonly unknown[])[]).map((row) => row.map(plainCell)),
    settings: sent(Array.isArray(settings) ? settings : []) as readonly unknown[],
    choice: sent(choice),
  });
  return cellsOfReply(reply);
}

export function partsCells(row: Row, settings: unknown): CellResult {
  return itemAnswer(row, settings, partsAnswer);
}

export function sizeCell(row: Row, sizes: unknown, settings: unknown): CellResult[number][number] {
  return oneValue(itemAnswer(row, settings, (sized) => sizeNamed(sized, sizes)));
}

/** Ranges as another thread can read them: an error keeps its code alone. */
function sent(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sent);
  const plain = unwrapped(value);
  const code = errorCode(plain);
  return code === undefined ? plain : { code };
}
