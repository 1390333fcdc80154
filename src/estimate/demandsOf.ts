import { joinParts } from "../covering/joinParts";
import { sizedRow } from "../item/figure";
import { byBenchOrder } from "../survey/benchOrder";
import { cellText } from "../measure/blank";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { cutFactsOf } from "./cutFacts";
import { relativeSize } from "./relativeSize";
import type { Demand } from "./stockJobs";

const known = new WeakMap<SizedSurvey, readonly Demand[]>();

/** What a sized survey asks of the stock: one demand for each enclosure that is sized. Plans and budget ask for the same. */
export function demandsOf(survey: SizedSurvey): readonly Demand[] {
  const demands = known.get(survey) ?? demandsIn(survey);
  known.set(survey, demands);
  return demands;
}

function demandsIn({ survey, outcomes, settings }: SizedSurvey): readonly Demand[] {
  const turns = new Map([...survey.items].sort(byBenchOrder).map((item, turn) => [item, turn]));
  return survey.items.flatMap((item, index) => {
    const outcome = outcomes[index]!;
    if (outcome.state !== "sized") return [];
    const { sized, quantity } = outcome;
    const parts = joinParts(sizedRow(sized, quantity).parts(), sized.settings);
    const facts = cutFactsOf(sized.assembly);
    return [
      {
        item: item.identifier,
        row: item.row,
        enclosure: sized.kind.name,
        quantity,
        batch: cellText(item.cells.batch),
        relativeSize: relativeSize(sized, settings),
        parts,
        facts,
        turn: turns.get(item)!,
      },
    ];
  });
}
