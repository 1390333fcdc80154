import { InputError, shown } from "../measure/errors";
import { ALL_ROWS, DECIMALS, FIELD_OPTIONS, NOT_USED, ODD_SIZES, TICKS, type Word } from "../headings/questions";

type Given = Readonly<Record<string, unknown>>;

/** What the options say of headings and values: `--height C`, `--not "Box no."`, `--word "box=lidded box"`. */
export function wordsOfOptions(given: Given): readonly Word[] {
  const words: Omit<Word, "given">[] = [
    ...[...FIELD_OPTIONS].flatMap((field) => manyOf(given[field]).map((word) => ({ word, meaning: field }))),
    ...manyOf(given["not"]).map((word) => ({ word, meaning: NOT_USED })),
    ...manyOf(given["word"]).map((text) => {
      const [word, meaning] = halves("word", text, "box=lidded box");
      return { word, meaning };
    }),
    ...manyOf(given["unit"])
      .filter((text) => text.includes("="))
      .map((text) => {
        const [word, unit] = halves("unit", text, "Weight=g");
        return { word, unit };
      }),
    ...manyOf(given["all"]).map((meaning) => ({ word: ALL_ROWS, meaning })),
    ...manyOf(given["odd"]).map((meaning) => ({
      word: ODD_SIZES,
      meaning: oneOf("odd", meaning, ["keep", "leave-out"]),
    })),
    ...manyOf(given["decimals"]).map((meaning) => ({
      word: DECIMALS,
      meaning: oneOf("decimals", meaning, ["comma", "point"]),
    })),
    ...(given["ticks"] === true ? [{ word: TICKS, meaning: "ticks" }] : []),
  ];
  return words.map((word) => ({ ...word, given: true }));
}

/** The texts of an option that may be given more than once. */
export function manyOf(value: unknown): readonly string[] {
  if (typeof value === "string") return [value];
  return Array.isArray(value) ? value.filter((each): each is string => typeof each === "string") : [];
}

function halves(option: string, text: string, example: string): readonly [string, string] {
  const at = text.lastIndexOf("=");
  const [before, after] = [text.slice(0, at).trim(), text.slice(at + 1).trim()];
  if (at > 0 && before !== "" && after !== "") return [before, after];
  throw new InputError(
    option,
    shown(text),
    "give a heading or a value, =, and what it means",
    `such as --${option} "${example}"`,
  );
}

function oneOf(option: string, text: string, accepted: readonly string[]): string {
  if (accepted.includes(text)) return text;
  throw new InputError(option, shown(text), `give ${accepted.join(" or ")}`);
}
