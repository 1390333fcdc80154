import { NAMESPACE } from "./functions/metadata";

/** Where the cursor is in a formula: in which argument of which function of ours, and what is typed of it. */
export interface ArgumentAtCursor {
  readonly name: string;
  /** Counted from 0. */
  readonly index: number;
  /** The arguments before it, as typed. */
  readonly before: readonly string[];
  /** What is typed of the argument up to the cursor, and where that begins. */
  readonly typed: string;
  readonly from: number;
}

/**
 * The argument that the cursor is in; undefined outside the functions of ours.
 *
 *     argumentAt('=ENC.INSIDE(A2,B2,C2,"tray","he', 31) // INSIDE, 4, typed "he
 */
export function argumentAt(text: string, cursor: number): ArgumentAtCursor | undefined {
  if (!text.startsWith("=")) return undefined;
  const open: { readonly name: string; readonly args: string[]; from: number }[] = [];
  let quoted = false;
  for (let at = 1; at < cursor; at++) {
    const sign = text[at]!;
    if (sign === '"') quoted = !quoted;
    if (quoted) continue;
    const call = open.at(-1);
    if (sign === "(" || sign === "{")
      open.push({ name: nameAtEnd(text.slice(0, at)).toUpperCase(), args: [], from: at + 1 });
    else if (sign === ")" || sign === "}") open.pop();
    else if ((sign === "," || sign === ";") && call !== undefined) {
      call.args.push(text.slice(call.from, at).trim());
      call.from = at + 1;
    }
  }
  const call = open.at(-1);
  if (call === undefined || !call.name.startsWith(`${NAMESPACE}.`)) return undefined;
  const typed = text.slice(call.from, cursor);
  const blanks = typed.length - typed.trimStart().length;
  return {
    name: call.name.slice(NAMESPACE.length + 1),
    index: call.args.length,
    before: call.args,
    typed: typed.trimStart(),
    from: call.from + blanks,
  };
}

/** What no name of a function holds. */
const BETWEEN_NAMES = /[^\p{L}\p{N}_.]/u;

/** The name that a text ends with; empty where it ends with none. */
export function nameAtEnd(text: string): string {
  return text.split(BETWEEN_NAMES).at(-1) ?? "";
}

/** The text in quotes; empty where an argument is none. */
export function quotedText(argument: string | undefined): string {
  return /^"([^"]*)"?$/.exec(argument ?? "")?.[1] ?? "";
}

/** The values that go on from what is typed: in quotes, or nothing yet. */
export function goingOn(values: readonly string[], typed: string): readonly string[] {
  if (typed !== "" && !typed.startsWith('"')) return [];
  const wanted = typed.slice(1).toLowerCase();
  if (wanted.endsWith('"')) return [];
  const found = values.filter((value) => value.toLowerCase().includes(wanted));
  const starts = (value: string) => value.toLowerCase().startsWith(wanted);
  return [...found.filter(starts), ...found.filter((value) => !starts(value))];
}
