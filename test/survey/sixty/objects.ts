/** An object of the surveys: mm, kg and the kind that it gets. */
export interface SurveyObject {
  readonly id: string;
  readonly title: string;
  readonly size: readonly [height: number, width: number, depth: number];
  readonly kg: number;
  readonly kind: Kind;
}

export type Kind = "clamshell box" | "four-flap wrapper" | "slipcase" | "lidded box";

/** Invented, as a shelf of books is. */
export const OBJECTS: readonly SurveyObject[] = [
  object("A 1", "Herbal", [300, 210, 40], 1.6, "clamshell box"),
  object("A 2", "Ledger", [255, 180, 32], 0.95, "four-flap wrapper"),
  object("A 3", "Hymns", [220, 150, 25], 0.55, "slipcase"),
  object("A 4", "Atlas", [340, 250, 60], 3.1, "clamshell box"),
  object("A 5", "Almanac", [190, 130, 18], 0.3, "four-flap wrapper"),
  object("A 6", "Letters", [280, 200, 45], 1.7, "lidded box"),
  object("A 7", "Chronicle", [310, 230, 50], 2.2, "clamshell box"),
  object("A 8", "Plays", [240, 170, 28], 0.8, "slipcase"),
  object("A 9", "Maps", [265, 195, 36], 1.2, "four-flap wrapper"),
  object("A 10", "Charters", [400, 280, 55], 4, "lidded box"),
  object("A 11", "Songs", [210, 140, 22], 0.45, "four-flap wrapper"),
  object("A 12", "Drawings", [330, 240, 48], 2.5, "clamshell box"),
];

function object(id: string, title: string, size: SurveyObject["size"], kg: number, kind: Kind): SurveyObject {
  return { id, title, size, kg, kind };
}
