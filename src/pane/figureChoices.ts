import { partList } from "../covering/partList";
import type { SizedSurvey } from "../survey/sizeSurvey";

/** A figure to choose, in plain words; `name` is what the column is called and what `figureNamed` reads. */
export interface FigureChoice {
  readonly name: string;
  readonly meaning: string;
}

/** Figures for one purpose. */
export interface FigureGroup {
  readonly purpose: string;
  readonly choices: readonly FigureChoice[];
}

/** Rows that are looked through for the parts that a survey asks for. */
const LOOKED_AT = 400;

const DIRECTIONS = [
  ["height", "head to tail"],
  ["width", "spine to fore-edge"],
  ["depth", "thickness"],
] as const;

/** What can be had of a survey, by purpose: its walls, bases and coverings are those of its own enclosures. */
export function figureChoices({ outcomes }: SizedSurvey): readonly FigureGroup[] {
  const parts = new Map<string, string>();
  for (const outcome of outcomes.slice(0, LOOKED_AT)) {
    if (outcome.state !== "sized") continue;
    const { assembly, settings } = outcome.sized;
    for (const { name, material } of partList(assembly, settings)) if (!parts.has(name)) parts.set(name, material);
  }
  const ofMaterial = (...wanted: readonly string[]) =>
    [...parts].flatMap(([name, material]) => (wanted.includes(material) ? [name] : []));
  return [
    {
      purpose: "The shelf: what the closed enclosure takes up",
      choices: [
        ...DIRECTIONS.map(([way, words]) => ({ name: `outside ${way}`, meaning: `outside, ${words}` })),
        { name: "mass", meaning: "mass of the empty enclosure" },
      ],
    },
    {
      purpose: "Room for the object",
      choices: DIRECTIONS.map(([way, words]) => ({ name: `inside ${way}`, meaning: `inside, ${words}` })),
    },
    {
      purpose: "Choosing and buying board",
      choices: [
        { name: "caliper", meaning: "board caliper that the weight asks for" },
        { name: "board", meaning: "name of that stock board" },
        { name: "board area", meaning: "net area of board, all copies" },
      ],
    },
    { purpose: "Cutting board and card", choices: ofMaterial("board", "card").flatMap(sizesOf) },
    { purpose: "Cutting coverings and linings", choices: ofMaterial("covering", "lining").flatMap(sizesOf) },
    {
      purpose: "What to look at before cutting",
      choices: [
        { name: "cautions", meaning: "weight, sag, hazards and the like" },
        { name: "problem", meaning: "why a row cannot be sized" },
      ],
    },
  ].filter(({ choices }) => choices.length > 0);
}

function sizesOf(part: string): readonly FigureChoice[] {
  const second = part.endsWith("wall") ? "height" : "width";
  return ["length", second].map((measure) => ({ name: `${part} ${measure}`, meaning: `${part}, ${measure}` }));
}
