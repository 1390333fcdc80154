import { coveringParts } from "../covering/partList";
import { boardParts, type Part } from "../enclosure/part";
import type { Answer, Cell } from "./answers";
import type { ItemFunctionId } from "./cellFunctions";
import { NOTHING_SAID, type SaidOfRow } from "./saidOfRow";
import type { Sized } from "./sizeItem";

/** What a figure is wanted for, in the order in which purposes are shown. */
export const PURPOSES = {
  shelf: "The shelf: what the closed enclosure takes up",
  room: "Room for the object",
  board: "Choosing and buying board",
  cutBoard: "Cutting board and card",
  cutCovering: "Cutting coverings and linings",
  look: "What to look at before cutting",
} as const;

export type Purpose = keyof typeof PURPOSES;

/** A column of a whole survey: all that pane, help, messages and formulas need to know of it. */
export interface Figure {
  /** As asked for, which heads its column. */
  readonly name: string;
  readonly purpose: Purpose;
  /** In plain words. */
  readonly meaning: string;
  /** What it is in: lengths, areas and masses in the units of the workbook. */
  readonly unit: FigureUnit;
  /** The cell function that answers it, and its selectors. */
  readonly formula: readonly [fn: ItemFunctionId, ...selectors: string[]];
  /** It grows with the number of copies. */
  readonly ofAllCopies: boolean;
  /** Among the columns of `default`. */
  readonly byDefault: boolean;
  /** It says why a row cannot be sized, and nothing of a row that can. */
  readonly saysWhy: boolean;
  /** The row's hazard stands before what the cell function answers, which has no argument for it. */
  readonly withHazard: boolean;
  /** Of one row that is sized. Counts and areas are those of all its copies. */
  readonly of: (row: SizedRow) => Cell;
}

export type FigureUnit = "length" | "area" | "mass" | "count" | "text";

/** What is written down of a figure; what is not said is not so. */
export type FigureRecord = Pick<Figure, "name" | "purpose" | "meaning" | "unit" | "formula" | "of"> & Partial<Figure>;

export function figure(record: FigureRecord): Figure {
  return { ofAllCopies: false, byDefault: false, saysWhy: false, withHazard: false, ...record };
}

/** A sized row with its part list, worked out when it is first asked for. */
export interface SizedRow {
  readonly sized: Sized;
  readonly quantity: number;
  readonly said: SaidOfRow;
  readonly boards: () => readonly Part[];
  readonly parts: () => readonly Part[];
}

export function sizedRow(sized: Sized, quantity: number, said = NOTHING_SAID): SizedRow {
  let boards: readonly Part[] | undefined;
  let parts: readonly Part[] | undefined;
  const allBoards = () => (boards ??= boardParts(sized.assembly));
  return {
    sized,
    quantity,
    said,
    boards: allBoards,
    parts: () => (parts ??= [...allBoards(), ...coveringParts(sized.assembly, sized.settings)]),
  };
}

/** The one cell of an answer that was not asked to spill. */
export function onlyCell(answer: Answer): Cell {
  return typeof answer === "object" && "map" in answer ? answer[0]![0]! : answer;
}

/** Of all copies; an error or a text is that of one. */
export function times(cell: Cell, quantity: number): Cell {
  return typeof cell === "number" ? cell * quantity : cell;
}
