import type { Kind } from "../enclosure/kind";
import { choicesText, type Choice } from "../settings/choices";
import { DEFINITIONS, type SettingKey } from "../settings/schema";
import type { StockRow } from "../settings/stock";
import type { Option } from "./ChoiceField";

/** What a setting offers to choose from: its words, and the names of the stock that it takes. */
export function choiceOptions(key: SettingKey, stock: readonly StockRow[], kind?: Kind): readonly Option[] {
  const offered = DEFINITIONS[key].takes.choices.flatMap((choice) => words(choice, stock));
  const ofKind = key === "construction" && kind !== undefined ? kind.constructions : undefined;
  const all = ofKind === undefined ? offered : offered.filter((word) => (ofKind as readonly string[]).includes(word));
  return [...new Set(all)].map((word) => ({ value: word, label: word }));
}

/** What it takes beside them, in words. */
export function otherChoice(key: SettingKey): { readonly other?: string } {
  const measures = DEFINITIONS[key].takes.choices.filter(({ is }) => is === "measure");
  return measures.length === 0 ? {} : { other: choicesText(measures) };
}

function words(choice: Choice, stock: readonly StockRow[]): readonly string[] {
  switch (choice.is) {
    case "word":
      return [choice.word];
    case "none":
      return ["none"];
    case "stock": {
      const { materials } = choice;
      return stock.filter(({ material }) => materials?.includes(material) ?? true).map((row) => row.stock);
    }
    default:
      return [];
  }
}
