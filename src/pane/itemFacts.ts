import { enclosureMass } from "../board/mass";
import { partList } from "../covering/partList";
import { benchInstruction } from "../enclosure/benchInstruction";
import { KINDS } from "../enclosure/registry";
import { InputError, NoAnswer } from "../measure/errors";
import { benchLength, nearestMark } from "../measure/benchLength";
import { labourHours } from "../estimate/labourHours";
import { scaledHours } from "../estimate/labour";
import { relativeSize } from "../estimate/relativeSize";
import { materialCost } from "../estimate/materialCost";
import { boardAreaAnswer, plainCell } from "../item/answers";
import { cautionsIn } from "../item/boardAnswers";
import { NOTHING_SAID, type SaidOfRow } from "../item/saidOfRow";
import { boardName } from "../settings/boards";
import type { Settings } from "../settings/schema";
import { onlyCell } from "../item/figure";
import { problemText, sizeItem, type Sized } from "../item/sizeItem";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { cautionsOfRow, type Outcome } from "../survey/outcome";

/** What the pane shows of one row. */
export interface ItemFacts {
  readonly identifier: string;
  readonly title: string;
  /** Why there is no enclosure; shown in its place. */
  readonly instead: string | undefined;
  readonly sized: Sized | undefined;
  readonly quantity: number;
  readonly said: SaidOfRow;
  readonly cautions: readonly string[];
}

/** What one enclosure takes, without the waste of sheets. */
export interface ItemTotals {
  readonly boardArea: number | string;
  /** Of the material by area; blank where the stock table lacks a price. */
  readonly cost: number | "";
  /** Blank where the setting `labour hours` says none of this kind. */
  readonly hours: number | "";
  readonly massKg: number | undefined;
}

/** One kind of enclosure for the same object. */
export interface KindCompared extends ItemTotals {
  readonly kind: string;
  readonly chosen: boolean;
  readonly outside: string;
  /** What it takes of a shelf, its spine outwards. */
  readonly shelfWidth: string;
  readonly board: string;
  readonly cautions: readonly string[];
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
    said: outcome.state === "sized" ? outcome.said : NOTHING_SAID,
    cautions: cautionsOfRow(outcome),
  };
}

/** The same object in each kind of enclosure, with the settings that all rows share and its own sizes. */
export function comparedKinds(
  { item, weightKg, requested, kind }: Sized,
  said: SaidOfRow = NOTHING_SAID,
): readonly KindCompared[] {
  // An option that the row sets for its own kind is not an error in another kind.
  const settings = { ...requested, size: "", ownOfRow: new Set<never>() };
  return KINDS.map(({ name }) => {
    const about = { kind: name, chosen: name === kind.name };
    try {
      const sized = sizeItem(item, name, weightKg, settings);
      const { outside } = sized.assembly;
      const size = [outside[1], outside[0], outside[2]].map((mm) => nearestMark(mm, settings.answerUnit));
      return {
        ...about,
        outside: size.join(" × "),
        shelfWidth: size[2]!,
        board: boardName(sized.board),
        ...itemTotals(sized, requested),
        cautions: cautionsIn(sized, said),
        why: undefined,
      };
    } catch (error) {
      if (!(error instanceof InputError) && !(error instanceof NoAnswer)) throw error;
      return { ...about, ...NOTHING, why: error.message };
    }
  });
}

const NOTHING = {
  outside: "",
  shelfWidth: "",
  board: "",
  boardArea: "",
  cost: "",
  hours: "",
  massKg: undefined,
  cautions: [],
} as const;

/**
 * What one enclosure takes in all.
 *
 * @param shared the settings that all rows share, by which sizes are compared
 */
export function itemTotals(sized: Sized, shared: Settings = sized.requested): ItemTotals {
  const parts = partList(sized.assembly, sized.settings);
  const usual = hoursOf(shared).get(sized.kind.name);
  return {
    boardArea: plainCell(onlyCell(boardAreaAnswer(sized, "all"))),
    cost: hundredths(materialCost(parts, sized.settings)),
    hours: usual === undefined ? "" : scaledHours(usual, relativeSize(sized, shared), shared),
    massKg: enclosureMass(parts, sized.settings),
  };
}

/** Hours by kind; none where the setting cannot be used, which the estimate says. */
function hoursOf(settings: Settings): ReadonlyMap<string, number> {
  try {
    return labourHours(settings);
  } catch (error) {
    if (error instanceof InputError) return new Map();
    throw error;
  }
}

function hundredths(cost: number | undefined): number | "" {
  return cost === undefined ? "" : Math.round(cost * 100) / 100;
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
    size: `${benchLength(part.length, settings.answerUnit)} × ${benchLength(part.width, settings.answerUnit)}`,
    stock: part.stock,
    grain: part.grain,
    how: benchInstruction(part, assembly, settings.answerUnit),
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
