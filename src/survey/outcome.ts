import { InputError, shown, type NoAnswer } from "../measure/errors";
import { cautionsIn } from "../item/boardAnswers";
import type { SaidOfRow } from "../item/saidOfRow";
import type { Sized } from "../item/sizeItem";

/** What became of a row. One row in, one outcome out. */
export type Outcome =
  | {
      readonly state: "sized";
      readonly sized: Sized;
      readonly quantity: number;
      /** Of all that share the enclosure. */
      readonly said: SaidOfRow;
    }
  /** Nothing to size: a blank row, or enclosure `none`. */
  | { readonly state: "nothing" }
  /** No item, or left out by the user; `why` says it. */
  | { readonly state: "left out"; readonly why: string }
  /** Answered on the first row of its box. */
  | { readonly state: "in box"; readonly box: string }
  | {
      readonly state: "problem";
      readonly error: InputError | NoAnswer;
      /** It has an enclosure and no measure at all: a cell function answers such a row with nothing. */
      readonly unmeasured?: true;
    };

/** What to watch with what a row makes, gravest first; the one reading for columns, pane and paper. */
export function cautionsOfRow(outcome: Outcome): readonly string[] {
  return outcome.state === "sized" ? cautionsIn(outcome.sized, outcome.said) : [];
}

/** An enclosure, and nothing to size it by. */
export const NO_MEASURES = new InputError(
  "height",
  "no measures",
  "give height, width and depth",
  "or none as its enclosure",
);

/** A known structure that is none of our kinds. */
export function notMadeHere(enclosure: unknown): InputError {
  return new InputError(
    "enclosure",
    shown(enclosure),
    "a structure that is not made here",
    "choose another kind, or none",
  );
}
