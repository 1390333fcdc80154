import { opened, type Place } from "./scan";

/** A piece of text to put in the place of another. */
export interface Splice {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** The text with every splice made; they may not overlap. Several at one place stay in order. */
export function spliced(text: string, splices: readonly Splice[]): string {
  const sorted = [...splices].sort((a, b) => a.start - b.start || a.end - b.end);
  let at = 0;
  const pieces: string[] = [];
  for (const splice of sorted) {
    pieces.push(text.slice(at, splice.start), splice.text);
    at = splice.end;
  }
  pieces.push(text.slice(at));
  return pieces.join("");
}

/** Puts text at the end of an element's content, opening the element when it closes itself. */
export function append(xml: string, place: Place, text: string): Splice {
  const start = xml.slice(place.start, place.openEnd);
  if (!start.endsWith("/>")) return { start: place.closeStart, end: place.closeStart, text };
  return {
    start: place.start,
    end: place.end,
    text: `${opened(start)}${text}</${place.prefix}${place.name}>`,
  };
}

export function insert(at: number, text: string): Splice {
  return { start: at, end: at, text };
}

export function remove(place: Place): Splice {
  return { start: place.start, end: place.end, text: "" };
}
