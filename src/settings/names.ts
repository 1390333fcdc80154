import { distance } from "fastest-levenshtein";

/** A name as it is compared: case, hyphens and extra spaces do not count. */
export function plainName(text: string): string {
  // Most names are plain already: this runs for many of every row.
  if (PLAIN_ALREADY.test(text)) return text;
  return text
    .toLowerCase()
    .replace(/[\s\u00a0_\-\u2010-\u2015]+/g, " ")
    .trim();
}

const PLAIN_ALREADY = /^[a-z\d]+(?: [a-z\d]+)*$/;

/**
 * The names a misspelt one may have meant, nearest first, at most three.
 * A name qualifies when no more than a third of its letters differ, or when it holds what was typed as a whole word.
 */
export function nearestNames(typed: string, names: Iterable<string>): readonly string[] {
  const wanted = plainName(typed);
  if (wanted === "") return [];
  return [...new Set(names)]
    .map((name) => ({ name, far: farness(wanted, plainName(name)) }))
    .filter(({ name, far }) => far <= Math.max(1, Math.ceil(name.length / 3)))
    .sort((a, b) => a.far - b.far)
    .slice(0, MOST_SUGGESTIONS)
    .map(({ name }) => name);
}

/** `did you mean side wall or head wall`, or the fallback when nothing is near. */
export function didYouMean(typed: string, names: Iterable<string>, otherwise = ""): string {
  const near = nearestNames(typed, names);
  return near.length === 0 ? otherwise : `did you mean ${listed(near, "or")}?`;
}

/** `a, b or c`. */
export function listed(names: readonly string[], joining: "and" | "or"): string {
  if (names.length < 2) return names.join("");
  return `${names.slice(0, -1).join(", ")} ${joining} ${names[names.length - 1]}`;
}

const MOST_SUGGESTIONS = 3;

function farness(wanted: string, name: string): number {
  return ` ${name} `.includes(` ${wanted} `) ? 0 : distance(wanted, name);
}
