import { InputError, shown } from "../measure/errors";
import { didYouMean, listed, plainName } from "../settings/names";
import { boardAreaAnswer, boardsOf, DIRECTIONS, insideAnswer, outsideAnswer, SHELF_WIDTH } from "./answers";
import { boardStockAnswer, caliperAnswer, cautionsAnswer, massAnswer } from "./boardAnswers";
import { figure, onlyCell, times, type Figure } from "./figure";
import { figureOfPart, PART_FIGURE_NAMES, PART_FIGURES } from "./figureOfPart";

const DIRECTION_WORDS = { height: "head to tail", width: "spine to fore-edge", depth: "thickness" } as const;

/** Figures that a direction follows: `inside height`. */
const SIZES = [
  { name: "inside", fn: "INSIDE", answer: insideAnswer, purpose: "room", byDefault: false },
  { name: "outside", fn: "OUTSIDE", answer: outsideAnswer, purpose: "shelf", byDefault: true },
] as const;

const SIZE_FIGURES = SIZES.flatMap(({ name, fn, answer, purpose, byDefault }) =>
  DIRECTIONS.map((direction) =>
    figure({
      name: `${name} ${direction}`,
      purpose,
      meaning: `${name}, ${DIRECTION_WORDS[direction]}`,
      unit: "length",
      formula: [fn, direction],
      byDefault,
      of: ({ sized }) => onlyCell(answer(sized, direction)),
    }),
  ),
);

const OTHER_FIGURES: readonly Figure[] = [
  figure({
    name: SHELF_WIDTH,
    purpose: "shelf",
    meaning: "room along the shelf: the thickness of what stands; of what lies flat, from head to tail",
    unit: "length",
    formula: ["OUTSIDE", SHELF_WIDTH],
    of: ({ sized }) => onlyCell(outsideAnswer(sized, SHELF_WIDTH)),
  }),
  figure({
    name: "caliper",
    purpose: "board",
    meaning: "caliper of the board in force",
    unit: "text",
    formula: ["BOARD.CALIPER"],
    byDefault: true,
    of: ({ sized }) => onlyCell(caliperAnswer(sized)),
  }),
  figure({
    name: "board",
    purpose: "board",
    meaning: "board in force: your preference, else the settings', else the board guide's",
    unit: "text",
    formula: ["BOARD.STOCK"],
    of: ({ sized }) => onlyCell(boardStockAnswer(sized)),
  }),
  figure({
    name: "board area",
    purpose: "board",
    meaning: "net area of board, or of the card that it is folded from; all copies",
    unit: "area",
    formula: ["BOARD.AREA", "all"],
    ofAllCopies: true,
    byDefault: true,
    of: ({ sized, boards, quantity }) =>
      times(onlyCell(boardAreaAnswer(sized, "all", boardsOf(sized.assembly, boards()))), quantity),
  }),
  figure({
    name: "mass",
    purpose: "shelf",
    meaning: "mass of the empty enclosure",
    unit: "mass",
    formula: ["MASS"],
    of: ({ sized }) => onlyCell(massAnswer(sized)),
  }),
  figure({
    name: "cautions",
    purpose: "look",
    meaning: "weight, sag, hazards and the like",
    unit: "text",
    formula: ["CAUTIONS"],
    withHazard: true,
    of: ({ sized, said }) => onlyCell(cautionsAnswer(sized, said)),
  }),
  figure({
    name: "problem",
    purpose: "look",
    meaning: "why a row cannot be sized",
    unit: "text",
    formula: ["PROBLEM"],
    byDefault: true,
    saysWhy: true,
    of: () => "",
  }),
];

/** Every figure but those of parts, which have as many names as there are parts and measures. */
export const FIGURES: readonly Figure[] = [...SIZE_FIGURES, ...OTHER_FIGURES];

/** The columns of `default`. */
export const DEFAULT_FIGURES: readonly string[] = FIGURES.filter(({ byDefault }) => byDefault).map(({ name }) => name);

/** How help and messages name what can be asked for. */
export const FIGURE_WORDS: readonly string[] = [
  `${listed(
    SIZES.map(({ name }) => name),
    "or",
  )} with a direction`,
  PART_FIGURES.said,
  ...OTHER_FIGURES.map(({ name }) => name),
];

/**
 * The figure that some words name: `inside` or `outside` with a direction, a part with a measure (`lid side wall
 * length`), or one of the others.
 *
 * @throws InputError with the nearest figures
 */
export function figureNamed(name: string): Figure {
  const found = figureOf(name);
  if (found !== undefined) return found;
  const words = FIGURE_WORDS.map((each) => (each === PART_FIGURES.said ? `${each} (${PART_FIGURES.example})` : each));
  throw new InputError("columns", shown(name), `give ${listed(words, "or")}`, nearFigures(name));
}

/** The same, undefined when the words name none. */
export function figureOf(name: string): Figure | undefined {
  const wanted = plainName(name);
  const found = BY_NAME.get(wanted) ?? figureOfPart(wanted);
  return found === undefined ? undefined : { ...found, name };
}

/** The figures asked for, with the one among them that says why a row has none, so that no row is lost silently. */
export function withProblem(names: readonly string[]): readonly string[] {
  if (names.some((name) => figureOf(name)?.saysWhy === true)) return names;
  return [...names, ...FIGURES.filter(({ saysWhy }) => saysWhy).map(({ name }) => name)];
}

const BY_NAME: ReadonlyMap<string, Figure> = new Map([
  ...FIGURES.map((each) => [each.name, each] as const),
  // The other word for depth.
  ...SIZES.map(({ name }) => [`${name} thickness`, FIGURES.find((each) => each.name === `${name} depth`)!] as const),
]);

function nearFigures(name: string): string {
  return didYouMean(name, [...FIGURES.map((each) => each.name), ...PART_FIGURE_NAMES]);
}
