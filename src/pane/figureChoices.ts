import { partList } from "../covering/partList";
import { PURPOSES, type Figure, type Purpose } from "../item/figure";
import { FIGURES } from "../item/figureCatalogue";
import { partSizes } from "../item/figureOfPart";
import type { SizedSurvey } from "../survey/sizeSurvey";

/** A figure to choose, in plain words; `name` is what the column is called and what `figureNamed` reads. */
export type FigureChoice = Pick<Figure, "name" | "meaning">;

/** Figures for one purpose. */
export interface FigureGroup {
  readonly purpose: string;
  readonly choices: readonly FigureChoice[];
}

/** Rows that are looked through for the parts that a survey asks for. */
const LOOKED_AT = 400;

/** The figures that a survey offers, by purpose: walls, bases and coverings of the kinds that it uses. */
export function figureChoices({ outcomes }: SizedSurvey): readonly FigureGroup[] {
  const parts = new Map<string, readonly Figure[]>();
  for (const outcome of outcomes.slice(0, LOOKED_AT)) {
    if (outcome.state !== "sized") continue;
    const { assembly, settings } = outcome.sized;
    for (const part of partList(assembly, settings)) if (!parts.has(part.name)) parts.set(part.name, partSizes(part));
  }
  const all = [...FIGURES, ...[...parts.values()].flat()];
  return (Object.keys(PURPOSES) as Purpose[])
    .map((wanted) => ({ purpose: PURPOSES[wanted], choices: all.filter(({ purpose }) => purpose === wanted) }))
    .filter(({ choices }) => choices.length > 0);
}

/** Everything to cut: the figures of boards, cards, coverings and linings. */
export function figuresToCut(groups: readonly FigureGroup[]): readonly string[] {
  const cutting: readonly string[] = [PURPOSES.cutBoard, PURPOSES.cutCovering];
  return groups.flatMap(({ purpose, choices }) => (cutting.includes(purpose) ? choices.map(({ name }) => name) : []));
}
