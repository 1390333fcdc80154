import type { Part } from "../enclosure/part";
import type { Material } from "../settings/stock";
import { partFigure, PART_MEASURES, type Cell, type PartMeasure } from "./answers";
import { figure, times, type Figure, type FigureUnit, type Purpose, type SizedRow } from "./figure";
import { findPart, isPartName } from "./findPart";

/** How help and messages name the figures of parts, with an example. */
export const PART_FIGURES = { said: "a part with a measure", example: "side wall length" } as const;

/** Names that a misspelt one may have meant. */
export const PART_FIGURE_NAMES: readonly string[] = [
  ...PART_MEASURES.flatMap((measure) =>
    ["base", "side wall", "head wall", "wall strip"].map((part) => `${part} ${measure}`),
  ),
  "side wall height",
];

/** The figure of a part and a measure in plain words; undefined when they name none. */
export function figureOfPart(words: string): Figure | undefined {
  const space = words.lastIndexOf(" ");
  const [part, end] = [words.slice(0, Math.max(space, 0)), words.slice(space + 1)];
  // The cut height of a wall is the width of the piece.
  const measure = end === "height" && part.endsWith("wall") ? "width" : PART_MEASURES.find((each) => each === end);
  if (measure === undefined || !isPartName(part)) return undefined;
  return figure({
    name: words,
    purpose: "cutBoard",
    meaning: `${part}, ${end}`,
    unit: UNITS[measure],
    formula: ["PART", part, measure],
    ofAllCopies: measure === "count",
    of: (row) => cellOf(row, part, measure),
  });
}

/** The two sizes of a part, for the pane: of a wall its cut height instead of its width. */
export function partSizes({ name, material, placed }: Part): readonly Figure[] {
  const purpose = PURPOSE_OF[material];
  if (purpose === undefined) return [];
  return ["length", placed?.role === "wall" ? "height" : "width"].map((end) => ({
    ...figureOfPart(`${name} ${end}`)!,
    purpose,
  }));
}

const PURPOSE_OF: Readonly<Partial<Record<Material, Purpose>>> = {
  board: "cutBoard",
  card: "cutBoard",
  covering: "cutCovering",
  lining: "cutCovering",
};

const UNITS: Readonly<Record<PartMeasure, FigureUnit>> = {
  length: "length",
  width: "length",
  caliper: "length",
  count: "count",
  grain: "text",
  material: "text",
  stock: "text",
  folds: "text",
};

function cellOf({ sized, quantity, boards, parts }: SizedRow, part: string, measure: PartMeasure): Cell {
  const among = boards().some(({ name, fullName }) => name === part || fullName === part) ? boards() : parts();
  const cell = partFigure(findPart(among, part, sized, "part"), measure, sized.settings);
  return measure === "count" ? times(cell, quantity) : cell;
}
