import { partList } from "../covering/partList";
import { examplesAmong } from "../estimate/examplePrices";
import type { Sized } from "../item/sizeItem";
import { massText } from "../measure/massText";
import { areaUnitOf } from "../survey/summary";
import { itemTotals } from "./itemFacts";
import { figureText, hoursText, moneyText } from "./numbers";

/** What one enclosure takes: material, hours, board, mass. */
export function ItemCost({ sized, quantity }: { readonly sized: Sized; readonly quantity: number }) {
  const { cost, hours, boardArea, massKg } = itemTotals(sized);
  const { settings, assembly } = sized;
  const stocks = partList(assembly, settings).map(({ stock }) => stock);
  const isExample = examplesAmong(stocks, settings).length > 0;
  return (
    <dl class="facts" aria-label={quantity > 1 ? "What each takes" : "What it takes"}>
      <div>
        <dt>Material</dt>
        <dd>
          {cost === "" ? "no price" : moneyText(cost, settings.currency)}
          {isExample && cost !== "" && <span class="example">example prices</span>}
        </dd>
      </div>
      <div>
        <dt>Work</dt>
        <dd>{hours === "" ? "not given" : hoursText(hours)}</dd>
      </div>
      <div>
        <dt>Board</dt>
        <dd>{figureText(boardArea, areaUnitOf(settings.answerUnit))}</dd>
      </div>
      <div>
        <dt>Empty</dt>
        <dd>{massKg === undefined ? "" : massText(massKg, settings.answerUnit)}</dd>
      </div>
    </dl>
  );
}
