import { partList } from "../covering/partList";
import { benchInstruction } from "../enclosure/benchInstruction";
import { KINDS } from "../enclosure/registry";
import { InputError, NoAnswer } from "../measure/errors";
import { benchLength } from "../measure/benchLength";
import { boardAreaAnswer, type Cell } from "../item/answers";
import { massAnswer } from "../item/boardAnswers";
import { onlyCell } from "../item/figure";
import { problemText, sizeItem, type Sized } from "../item/sizeItem";
import { cautionsOfRow, type Outcome, type SizedSurvey } from "../survey/sizeSurvey";

/** What the pane shows of one row. */
export interface ItemFacts {
  readonly identifier: string;
  readonly title: string;
  /** Why there is no enclosure; shown in its place. */
  readonly instead: string | undefined;
  readonly sized: Sized | undefined;
  readonly quantity: number;
  readonly cautions: readonly string[];
}

/** One kind of enclosure for the same object. */
export interface KindCompared {
  readonly kind: string;
  readonly chosen: boolean;
  readonly outside: string;
  readonly boardArea: Cell;
  readonly mass: Cell;
  /** Why this kind cannot hold it. */
  readonly why: string | undefined;
}

/** The item of a row of the sheet; of a row in another's box, the first of that box. */
export function itemAt({ survey, outcomes }: SizedSurvey, row: number): number | undefined {
  const index = survey.items.findIndex((item) => item.row === row);
  if (index < 0) return undefined;
  const outcome = outcomes[index]!;
  if (outcome.state !== "in box") return index;
  return survey.items.findIndex((item) => item.box === outcome.box && item.leftOut === "");
}

export function itemFacts({ survey, outcomes }: SizedSurvey, index: number): ItemFacts {
  const item = survey.items[index]!;
  const outcome = outcomes[index]!;
  return {
    identifier: item.identifier,
    title: item.title,
    instead: insteadOf(outcome),
    sized: outcome.state === "sized" ? outcome.sized : undefined,
    quantity: outcome.state === "sized" ? outcome.quantity : 0,
    cautions: cautionsOfRow(outcome),
  };
}

/** The same object in each kind of enclosure, with the settings that all rows share and its own sizes. */
export function comparedKinds({ item, weightKg, requested, kind }: Sized): readonly KindCompared[] {
  // An option that the row sets for its own kind is not an error in another kind.
  const settings = { ...requested, ownOfRow: new Set<never>() };
  return KINDS.map(({ name }) => {
    const about = { kind: name, chosen: name === kind.name };
    try {
      const sized = sizeItem(item, name, weightKg, settings);
      const { outside } = sized.assembly;
      const size = [outside[1], outside[0], outside[2]].map((mm) => benchLength(mm, settings.unit));
      return {
        ...about,
        outside: size.join(" × "),
        boardArea: onlyCell(boardAreaAnswer(sized, "all")),
        mass: onlyCell(massAnswer(sized)),
        why: undefined,
      };
    } catch (error) {
      if (!(error instanceof InputError) && !(error instanceof NoAnswer)) throw error;
      return { ...about, outside: "", boardArea: "", mass: "", why: error.message };
    }
  });
}

/** A line of the cut list. */
export interface PartToCut {
  readonly part: string;
  readonly count: number;
  readonly size: string;
  readonly stock: string;
  readonly grain: string;
  readonly how: string;
}

/** Every part of one enclosure, in cutting order. */
export function partsToCut({ assembly, settings }: Sized): readonly PartToCut[] {
  return partList(assembly, settings).map((part) => ({
    part: part.fullName,
    count: part.count,
    size: `${benchLength(part.length, settings.unit)} × ${benchLength(part.width, settings.unit)}`,
    stock: part.stock,
    grain: part.grain,
    how: benchInstruction(part, assembly, settings.unit),
  }));
}

function insteadOf(outcome: Outcome): string | undefined {
  switch (outcome.state) {
    case "problem":
      return problemText(outcome.error);
    case "nothing":
      return "No enclosure: the row is blank, or says none.";
    case "left out":
      return outcome.why;
    default:
      return undefined;
  }
}
