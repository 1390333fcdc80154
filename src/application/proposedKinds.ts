import { KINDS } from "../enclosure/registry";
import type { Item } from "../enclosure/restingItem";
import type { Cell } from "../item/answers";
import type { Sized } from "../item/sizeItem";
import { cellText } from "../measure/blank";
import { formatLength } from "../measure/formatLength";
import { massIn, massUnitOf, type Mm, type WorkbookUnit } from "../measure/units";
import type { SizedSurvey } from "../survey/sizeSurvey";
import type { SurveyCells } from "../survey/surveyAnswers";
import { KIND_PURPOSES } from "./kindPurposes";
import { conditionOf } from "./conditionOf";

interface Proposed {
  readonly sized: Sized;
  readonly quantity: number;
  readonly priority: string;
  readonly condition: string;
}

/** The enclosures by kind: how many, what the kind is for, and the size, weight, priority and condition of the objects. */
export function proposedKinds(
  survey: SizedSurvey,
  cells: SurveyCells,
): { readonly paragraphs: readonly string[]; readonly table: readonly (readonly Cell[])[] } {
  const condition = conditionOf(survey, cells);
  const all = survey.survey.items.flatMap((item, index): readonly Proposed[] => {
    const outcome = survey.outcomes[index]!;
    if (outcome.state !== "sized") return [];
    const { sized, quantity } = outcome;
    return [{ sized, quantity, priority: cellText(item.cells.priority), condition: condition(item.row) }];
  });
  const kinds = KINDS.flatMap((kind) => {
    const own = all.filter(({ sized }) => sized.kind === kind);
    return own.length === 0 ? [] : [{ kind, own, count: numberOf(own) }];
  });
  const { answerUnit: unit } = survey.settings;
  const range = (own: readonly Proposed[], side: keyof Item) => {
    const sizes = own.map(({ sized }) => sized.item[side]);
    return fromTo(about(Math.min(...sizes), unit), about(Math.max(...sizes), unit));
  };
  const weights = (own: readonly Proposed[]) => {
    const known = own.flatMap(({ sized: { weightKg } }) => (weightKg === undefined ? [] : [massIn(weightKg, unit)]));
    const shown = (mass: number) => String(Number(mass.toFixed(2)));
    return known.length === 0 ? "" : fromTo(shown(Math.min(...known)), shown(Math.max(...known)));
  };
  return {
    paragraphs: kinds.map(({ kind, own, count }) => {
      const weight = weights(own);
      const unweighed = own.filter(({ sized }) => sized.weightKg === undefined).length;
      const [are, weigh] = count === 1 ? ["The object is", "weighs"] : ["The objects are", "weigh"];
      const of = [
        `${are} ${range(own, "height")} ${unit} high, ${range(own, "width")} wide and ${range(own, "depth")} thick`,
        ...(weight === "" ? [] : [`${weigh} ${weight} ${massUnitOf(unit)}`]),
      ].join(", and ");
      const unknown = unweighed === 0 || weight === "" ? "" : ` (${unweighed} not weighed)`;
      const said = KIND_PURPOSES.get(kind.name);
      const purpose = said === undefined ? "" : `: ${said}`;
      return [
        `${kind.name[0]!.toUpperCase()}${kind.name.slice(1)}, ${count} of ${numberOf(all)}${purpose}. ${of}${unknown}.`,
        ...counted("Priority", own, (each) => each.priority),
        ...counted("Condition", own, (each) => each.condition),
      ].join(" ");
    }),
    table: [
      ["enclosure", "number", `height, ${unit}`, `width, ${unit}`, `depth, ${unit}`, `weight, ${massUnitOf(unit)}`],
      ...kinds.map(({ kind, own, count }) => [
        ...[kind.name, count, range(own, "height"), range(own, "width"), range(own, "depth")],
        weights(own),
      ]),
      ["total", numberOf(all), "", "", "", ""],
    ],
  };
}

/** Up to this, a thickness is written with its tenths of a millimetre. */
const THIN: Mm = 10;

/** To the millimetre, which is fine enough to tell why a kind was chosen. */
function about(mm: Mm, unit: WorkbookUnit): string {
  return formatLength(unit === "in" || mm < THIN ? mm : Math.round(mm), unit);
}

function numberOf(all: readonly Proposed[]): number {
  return all.reduce((sum, { quantity }) => sum + quantity, 0);
}

function fromTo(least: string, most: string): string {
  return least === most ? least : `${least} to ${most}`;
}

const MOST_VALUES = 8;

/** `Priority: 1 (6), 2 (3).`, in the order of the values; nothing where no object has one. */
function counted(name: string, own: readonly Proposed[], valueOf: (each: Proposed) => string): readonly string[] {
  const numbers = new Map<string, number>();
  for (const each of own) {
    const value = valueOf(each);
    if (value !== "") numbers.set(value, (numbers.get(value) ?? 0) + each.quantity);
  }
  if (numbers.size === 0) return [];
  const sorted = [...numbers].sort(([one], [other]) => one.localeCompare(other, "en", { numeric: true }));
  const listed = sorted.slice(0, MOST_VALUES).map(([value, number]) => `${value} (${number})`);
  const others = sorted.slice(MOST_VALUES).reduce((sum, [, number]) => sum + number, 0);
  return [`${name}: ${listed.join(", ")}${others === 0 ? "" : `, and others (${others})`}.`];
}
