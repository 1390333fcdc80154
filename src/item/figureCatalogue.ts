import { coveringParts } from "../covering/partList";
import { boardParts, type Part } from "../enclosure/part";
import { InputError, shown } from "../measure/errors";
import { didYouMean, plainName } from "../settings/names";
import {
  boardAreaAnswer,
  DIRECTIONS,
  insideAnswer,
  outsideAnswer,
  partFigure,
  PART_MEASURES,
  type Answer,
  type Cell,
  type PartMeasure,
} from "./answers";
import { boardStockAnswer, caliperAnswer, cautionsAnswer, massAnswer } from "./boardAnswers";
import { findPart, isPartName } from "./findPart";
import type { Sized } from "./sizeItem";

/** A column of a whole survey. */
export interface Figure {
  /** As asked for, which heads its column. */
  readonly name: string;
  readonly kind: "length" | "area" | "count" | "mass" | "text";
  /** The cell function that answers it, and its selectors. */
  readonly formula: readonly [fn: string, ...selectors: string[]];
  /** It grows with the number of copies. */
  readonly ofAllCopies: boolean;
  /** Of one row that is sized. Counts and areas are those of all its copies. */
  readonly of: (row: SizedRow) => Cell;
}

/** A sized row with its part list, worked out when it is first asked for. */
export interface SizedRow {
  readonly sized: Sized;
  readonly quantity: number;
  /** What the survey says beside the sizes. */
  readonly hazard: string;
  readonly heightAsTyped: string;
  readonly boards: () => readonly Part[];
  readonly parts: () => readonly Part[];
}

export function sizedRow(sized: Sized, quantity: number, { hazard = "", heightAsTyped = "" } = {}): SizedRow {
  let boards: readonly Part[] | undefined;
  let parts: readonly Part[] | undefined;
  const allBoards = () => (boards ??= boardParts(sized.assembly));
  return {
    sized,
    quantity,
    hazard,
    heightAsTyped,
    boards: allBoards,
    parts: () => (parts ??= [...allBoards(), ...coveringParts(sized.assembly, sized.settings)]),
  };
}

/** The figure of a row that says why the row cannot be sized. */
export const PROBLEM = "problem";

export const DEFAULT_FIGURES = [
  "outside height",
  "outside width",
  "outside depth",
  "caliper",
  "board area",
  PROBLEM,
] as const;

/**
 * The figure that some words name: `inside` or `outside` with a direction, a part with a measure (`lid side wall
 * length`), `board area`, `problem`.
 *
 * @throws InputError with the nearest figures
 */
export function figureNamed(name: string): Figure {
  const figure = figureOf(name);
  if (figure !== undefined) return figure;
  throw new InputError(
    "columns",
    shown(name),
    "give inside or outside with a direction, a part with a measure (side wall length), caliper, board, board area, mass, cautions or problem",
    didYouMean(name, [...EXAMPLES]),
  );
}

/** The same, undefined when the words name none. */
export function figureOf(name: string): Figure | undefined {
  const wanted = plainName(name);
  const one = { name, ofAllCopies: false };
  const plain = PLAIN[wanted];
  if (plain !== undefined) return { ...one, ...plain };
  if (wanted === PROBLEM) return { ...one, kind: "text", formula: ["PROBLEM"], of: () => "" };
  if (wanted === "board area")
    return {
      ...one,
      kind: "area",
      formula: ["BOARD.AREA", "all"],
      ofAllCopies: true,
      of: ({ sized, quantity }) => times(only(boardAreaAnswer(sized, "all")), quantity),
    };
  const [start = "", end = ""] = splitLast(wanted);
  const direction = DIRECTIONS.find((each) => each === end || (each === "depth" && end === "thickness"));
  if (direction !== undefined && (start === "inside" || start === "outside")) {
    const answer = start === "inside" ? insideAnswer : outsideAnswer;
    return {
      ...one,
      kind: "length",
      formula: [start.toUpperCase(), direction],
      of: ({ sized }) => only(answer(sized, direction)),
    };
  }
  // The cut height of a wall is the width of the piece.
  const measure = end === "height" && start.endsWith("wall") ? "width" : PART_MEASURES.find((each) => each === end);
  if (measure === undefined || !isPartName(start)) return undefined;
  return {
    ...one,
    kind: MEASURE_KINDS[measure] ?? "text",
    formula: ["PART", start, measure],
    ofAllCopies: measure === "count",
    of: (row) => partFigureOf(row, start, measure),
  };
}

/** Figures of one word. */
const PLAIN: Readonly<Record<string, Pick<Figure, "kind" | "formula" | "of">>> = {
  caliper: { kind: "text", formula: ["BOARD.CALIPER"], of: ({ sized }) => only(caliperAnswer(sized)) },
  board: { kind: "text", formula: ["BOARD.STOCK"], of: ({ sized }) => only(boardStockAnswer(sized)) },
  mass: { kind: "mass", formula: ["MASS"], of: ({ sized }) => only(massAnswer(sized)) },
  cautions: {
    kind: "text",
    formula: ["CAUTIONS"],
    of: ({ sized, hazard, heightAsTyped }) => only(cautionsAnswer(sized, { hazard, heightAsTyped })),
  },
};

const EXAMPLES = [
  "caliper",
  "board",
  "mass",
  "cautions",
  ...DIRECTIONS.flatMap((each) => [`inside ${each}`, `outside ${each}`]),
  ...PART_MEASURES.flatMap((each) => ["base", "side wall", "head wall", "wall strip"].map((part) => `${part} ${each}`)),
  "side wall height",
  "board area",
  PROBLEM,
];

const MEASURE_KINDS: Readonly<Partial<Record<PartMeasure, Figure["kind"]>>> = {
  length: "length",
  width: "length",
  caliper: "length",
  count: "count",
};

function partFigureOf({ sized, quantity, boards, parts }: SizedRow, part: string, measure: PartMeasure): Cell {
  const among = boards().some(({ name, fullName }) => name === part || fullName === part) ? boards() : parts();
  const cell = partFigure(findPart(among, part, sized, "part"), measure, sized.settings);
  return measure === "count" ? times(cell, quantity) : cell;
}

function times(cell: Cell, quantity: number): Cell {
  return typeof cell === "number" ? cell * quantity : cell;
}

/** The one cell of an answer that was not asked to spill. */
function only(answer: Answer): Cell {
  return typeof answer === "object" && "map" in answer ? answer[0]![0]! : answer;
}

function splitLast(words: string): readonly [string, string] | readonly [] {
  const space = words.lastIndexOf(" ");
  return space < 0 ? [] : [words.slice(0, space), words.slice(space + 1)];
}
