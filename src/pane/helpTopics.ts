import { KIND_PURPOSES } from "../application/kindPurposes";
import { KINDS } from "../enclosure/registry";
import { FIGURES } from "../item/figureCatalogue";
import { SETTING_KEYS } from "../settings/given";
import { DEFINITIONS } from "../settings/schema";
import type { ViewName } from "./viewProps";

/** Something to know, with the view that it belongs to. */
export interface HelpTopic {
  readonly about: ViewName | "kind" | "setting" | "figure";
  readonly title: string;
  readonly text: string;
}

/** What each view is for and how to use it. */
const VIEWS: Readonly<Record<ViewName, readonly (readonly [title: string, text: string])[]>> = {
  "This item": [
    ["See an enclosure", "Select a row of the survey. Its enclosure is drawn, with the parts to cut and how."],
    [
      "Decide on a row",
      "Choose kind, board, fit, construction or closure from the lists: the choice is written into the row. A column that the survey lacks is added. “Usual” leaves it to the kind and to your settings.",
    ],
    ["Take something back", "Undo at the foot of the pane takes back what the pane wrote last."],
    [
      "Cost and hours",
      "Material is counted by its area, without the waste of sheets. Hours come from the setting labour hours. Prices marked as examples are not quotes.",
    ],
    ["Other kinds", "The table at the end compares the same object in every kind. “Use this” writes the kind."],
  ],
  Columns: [
    [
      "What was recognised",
      "Each column of the survey, with what it was taken for and its unit. Change what is wrong; the workbook remembers it.",
    ],
    ["Add columns", "Tick figures, then press the button at the foot. Each becomes a column of formulas."],
    [
      "Everything to cut",
      "One tick chooses length and width of every board, card, covering and lining piece of the kinds in your survey.",
    ],
    ["Columns again", "After you add rows or answer a question, write the columns again: they keep their places."],
  ],
  Problems: [
    ["Rows that cannot be sized", "Press a row to go to its cell. Rows with the same problem are listed together."],
    ["One answer for many rows", "Where many rows use the same word, choose once what it means."],
    ["Cautions", "A row with a caution is sized. Read it before you cut."],
  ],
  "Board and cost": [
    [
      "The total",
      "It holds whole sheets, work and the share for the unexpected. Put your own prices on the stock sheet, and a currency under Set up.",
    ],
    [
      "Plans",
      "The sheets are planned when you open this view. A longer search may need fewer sheets; you can stop it, and the best plan is kept.",
    ],
    ["Least possible", "No plan can use fewer sheets than this. “Cannot be fewer” means that it is proved."],
    ["Print", "Budget, bench tickets, cutting plans, labels and templates come as PDF. Print at 100 %."],
  ],
  Store: [
    ["Room in the store", "Metres of shelf now and when boxed. Give the shelves in a column headed shelf."],
    ["Standard sizes", "The curve shows what fewer sizes would take of board, money and shelf."],
  ],
  "Set up": [
    [
      "Change a setting",
      "Choose a value from its list or write one: it goes into the settings sheet, and every column follows.",
    ],
    [
      "Change the unit",
      "The setting unit is what plain sizes mean. When you change it you are asked: only the answers, convert the sizes, or the sizes are in that unit already.",
    ],
    [
      "Board guide",
      "The first row that covers an item gives its board. The last row has no limits. There is no published table of board by weight: put in your own habit.",
    ],
    ["Prices", "Prices are on the stock sheet. Write your own, and clear the column example price."],
  ],
};

/** Everything that help can answer: the views first, then kinds, settings and figures. */
export function helpTopics(): readonly HelpTopic[] {
  return [
    ...(Object.keys(VIEWS) as ViewName[]).flatMap((about) =>
      VIEWS[about].map(([title, text]): HelpTopic => ({ about, title, text })),
    ),
    ...KINDS.map(({ name, otherNames }): HelpTopic => ({
      about: "kind",
      title: name,
      text: kindText(name, otherNames),
    })),
    ...SETTING_KEYS.map((key) => DEFINITIONS[key])
      .filter(({ retired }) => !retired)
      .map(({ name, meaning, accepts }): HelpTopic => ({
        about: "setting",
        title: name,
        text: `${meaning}. It takes ${accepts}.`,
      })),
    ...FIGURES.map(({ name, meaning }): HelpTopic => ({ about: "figure", title: name, text: `${meaning}.` })),
  ];
}

/** The topics in which every word of a question stands; those with it in their title first. */
export function topicsFor(question: string, topics: readonly HelpTopic[]): readonly HelpTopic[] {
  const words = question
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== "");
  const holds = (text: string) => words.every((word) => text.toLowerCase().includes(word));
  const found = topics.filter(({ title, text }) => holds(`${title} ${text}`));
  return [...found.filter(({ title }) => holds(title)), ...found.filter(({ title }) => !holds(title))];
}

function kindText(name: string, otherNames: readonly string[]): string {
  const also = otherNames.length === 0 ? "" : ` Also: ${otherNames.join(", ")}.`;
  return `${KIND_PURPOSES.get(name) ?? name}.${also}`;
}
