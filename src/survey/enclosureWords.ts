import { kindNamed } from "../enclosure/kindNamed";
import { KINDS } from "../enclosure/registry";
import { kindMeaning, NO_LETTERS, yesOrNo } from "../headings/kindWords";
import { wordsOf } from "../headings/lexicon";
import { ALL_ROWS, choice, NOT_USED, UNDECIDED, type Question, type Word } from "../headings/questions";
import { rowsText } from "../headings/rowsText";
import { OFFERED_KINDS } from "../headings/columnQuestions";
import { InputError, shown } from "../measure/errors";
import { listed } from "../settings/names";
import { isNoEnclosure, NO_ENCLOSURE } from "../item/sizeItem";
import { isBlank } from "../measure/blank";

/** What a word for an enclosure was read as, beside the cell itself. */
export interface Meant {
  /** The cell as it stands; null where it is blank and all rows get one kind. */
  readonly word: string | number | boolean | null;
  /** The name of a kind, or `none`. */
  readonly kind: string;
}

/** What the cells of the enclosure column mean, asked cell by cell. */
export interface EnclosureWords {
  /** The cell as it is sized, and how it was read where that is another. */
  readonly read: (
    cell: unknown,
    row: number,
  ) => { readonly enclosure: unknown; readonly meant?: Meant; readonly notMade?: true };
  readonly questions: () => readonly Question[];
  readonly notes: () => readonly string[];
}

function isPlain(cell: unknown): cell is number | boolean {
  return typeof cell === "number" || typeof cell === "boolean";
}

/** Everyday words become kinds; what could be two is kept for a question. */
export function enclosureWords(words: readonly Word[]): EnclosureWords {
  const answers = new Map(
    words.flatMap(({ word, meaning }) => (meaning === undefined ? [] : [[wordsOf(word), meaning]])),
  );
  const forAll = kindForAll(words.findLast(({ word }) => word === ALL_ROWS)?.meaning, answers);
  const known = new Map<string, Known>();
  const seen = new Map<Known, { readonly word: string; readonly rows: number[] }>();
  const lookUp = (text: string): Known => {
    const before = known.get(text);
    if (before !== undefined) return before;
    const found = meaningOf(text, answers);
    known.set(text, found);
    return found;
  };
  return {
    read: (cell, row) => {
      if (isBlank(cell) && typeof cell !== "boolean")
        return forAll === undefined ? { enclosure: cell } : { enclosure: forAll, meant: { word: null, kind: forAll } };
      const text = cell === true ? "yes" : cell === false ? "no" : String(cell);
      const found = lookUp(text);
      if (found.tell !== undefined) {
        const rows = seen.get(found)?.rows;
        if (rows === undefined) seen.set(found, { word: text.trim(), rows: [row] });
        else rows.push(row);
      }
      if (found.notMade === true) return { enclosure: cell, notMade: true };
      return found.kind === undefined
        ? { enclosure: cell }
        : { enclosure: found.kind, meant: { word: isPlain(cell) ? cell : text, kind: found.kind } };
    },
    questions: () => [...seen].flatMap(([{ unsure }, at]) => (unsure === undefined ? [] : [wordQuestion(unsure, at)])),
    notes: () =>
      [...seen].flatMap(([{ tell }, { word, rows }]) =>
        tell === undefined || tell === "" ? [] : [`${shown(word)} in ${rowsText(rows)}: ${tell}`],
      ),
  };
}

interface Known {
  readonly kind?: string;
  readonly unsure?: readonly string[];
  /** It is known, and none of our kinds. */
  readonly notMade?: true;
  /** What is said of it; empty text where it is counted for a question. */
  readonly tell?: string;
}

function meaningOf(text: string, answers: ReadonlyMap<string, string>): Known {
  const words = wordsOf(text);
  const answer = answers.get(words) ?? (yesOrNo(text) === "yes" ? answers.get("yes") : undefined);
  if (answer !== undefined && (answer === NO_ENCLOSURE || isKind(answer))) return { kind: answer };
  if (answer === NOT_USED) return { kind: NO_ENCLOSURE };
  if (isKind(text) || isNoEnclosure(text)) return {};
  if (NO_LETTERS.test(text.trim())) return { kind: NO_ENCLOSURE };
  const meaning = kindMeaning(words);
  if (meaning === undefined) return {};
  if ("none" in meaning) return { kind: NO_ENCLOSURE };
  if ("notMade" in meaning) return { notMade: true };
  if ("kind" in meaning) {
    if (!isKind(meaning.kind)) return {};
    return meaning.near ? { kind: meaning.kind, tell: `read as ${meaning.kind}` } : { kind: meaning.kind };
  }
  return { unsure: meaning.unsure.filter(isKind), tell: "" };
}

function kindForAll(text: string | undefined, answers: ReadonlyMap<string, string>): string | undefined {
  if (text === undefined || text === UNDECIDED) return undefined;
  const kind = isKind(text) || isNoEnclosure(text) ? text : meaningOf(text, answers).kind;
  if (kind === undefined)
    throw new InputError(
      "all",
      shown(text),
      `give ${listed(
        KINDS.map(({ name }) => name),
        "or",
      )}`,
    );
  return kind;
}

function isKind(text: string): boolean {
  try {
    kindNamed(text);
    return true;
  } catch {
    return false;
  }
}

function wordQuestion(
  kinds: readonly string[],
  { word, rows }: { readonly word: string; readonly rows: readonly number[] },
) {
  const others = KINDS.map(({ name }) => name).filter((name) => !kinds.includes(name));
  return {
    about: "enclosure",
    text: `${rows.length} row${rows.length === 1 ? " says" : "s say"} ${shown(word)} (${rowsText(rows)}). Which kind is meant?`,
    rows,
    choices: [...kinds, ...others, NO_ENCLOSURE].map((kind) => choice(kind, { words: [{ word, meaning: kind }] })),
  } satisfies Question;
}

/** Asks for a kind where the survey has no column for it. */
export function noColumnQuestion(candidates: readonly { readonly word: string }[]): Question {
  return {
    about: "enclosure",
    text: "No column says which enclosure each object gets. Which column is it, or which kind do all get?",
    rows: [],
    choices: [
      ...candidates.map(({ word }) => choice(`column ${word}`, { words: [{ word, meaning: "enclosure" }] })),
      ...OFFERED_KINDS.map((kind) => choice(`all get a ${kind}`, { words: [{ word: ALL_ROWS, meaning: kind }] })),
      choice("not decided yet: each row says so", { words: [{ word: ALL_ROWS, meaning: UNDECIDED }] }),
    ],
  };
}
