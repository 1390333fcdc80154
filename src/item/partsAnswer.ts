import { joinParts } from "../covering/joinParts";
import { partList } from "../covering/partList";
import { benchInstruction } from "../enclosure/benchInstruction";
import type { Part } from "../enclosure/part";
import { partFigure, type Answer, type Cell, type PartMeasure } from "./answers";
import type { Sized } from "./sizeItem";

export const PARTS_HEADINGS = [
  "part",
  "count",
  "length",
  "width",
  "material",
  "stock",
  "caliper",
  "grain",
  "folds",
  "how to cut it",
] as const;

const PART_ORDER = PARTS_HEADINGS.slice(1, -1) as readonly PartMeasure[];

/** Every part to cut, a row each. */
export function partsAnswer(sized: Sized): Answer {
  const parts = joinParts(partList(sized.assembly, sized.settings), sized.settings);
  return [PARTS_HEADINGS, ...parts.map((part) => partsRow(part, sized))];
}

/** What stands of a part under `PARTS_HEADINGS`, its count that of all copies. */
export function partsRow(part: Part, { assembly, settings }: Sized, copies = 1): readonly Cell[] {
  return [
    part.fullName,
    ...PART_ORDER.map((measure) => (measure === "count" ? part.count * copies : partFigure(part, measure, settings))),
    benchInstruction(part, assembly, settings.answerUnit),
  ];
}
