import type { Estimate } from "../estimate/estimate";
import type { SizedSurvey } from "../survey/sizeSurvey";

/** How much is requested, for how many enclosures of how many objects, and who pays the rest. */
export function fundsNeeded({ total, match, inKind, requested }: Estimate, survey: SizedSurvey): string {
  const { currency } = survey.settings;
  const sum = (amount: number) => `${currency} ${amount.toFixed(2)}`;
  const enclosures = survey.outcomes.reduce((all, each) => all + (each.state === "sized" ? each.quantity : 0), 0);
  const shares = [
    ...(match === 0 ? [] : [`${sum(match)} is paid by the applicant`]),
    ...(inKind === 0 ? [] : [`${sum(inKind)} is given in kind, as labour`]),
  ];
  const rest = shares.length === 0 ? "" : ` The whole cost is ${sum(total)}: ${shares.join(" and ")}.`;
  return `We request ${sum(requested)} to make ${enclosures} enclosures for ${objectsIn(survey)} objects.${rest}`;
}

/** Objects that get an enclosure: copies count, and each of those that share a box. */
export function objectsIn({ survey: { items }, outcomes }: SizedSurvey): number {
  return items.reduce((sum, { quantity }, index) => {
    const { state } = outcomes[index]!;
    const isHeld = state === "sized" || state === "in box";
    return sum + (isHeld && typeof quantity === "number" ? quantity : 0);
  }, 0);
}
