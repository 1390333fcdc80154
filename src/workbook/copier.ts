/** How much is handed on at a time: a whole sheet in one text takes its memory twice. */
const COPY_STEP = 1_000_000;

/** Writes a text in order: what is not replaced is copied letter for letter. */
export interface Copier {
  readonly copy: (to: number) => void;
  readonly insert: (at: number, text: string) => void;
  readonly replace: (from: number, to: number, text: string) => void;
}

/** @param push receives the text, piece by piece */
export function copier(xml: string, push: (text: string) => void): Copier {
  let at = 0;
  const copy = (to: number): void => {
    while (at < to) {
      let end = Math.min(at + COPY_STEP, to);
      // Both halves of a letter beyond 16 bits must go out together.
      if (end < to && (xml.charCodeAt(end - 1) & 0xfc00) === 0xd800) end++;
      push(xml.slice(at, end));
      at = end;
    }
  };
  return {
    copy,
    insert: (place, text) => {
      copy(place);
      push(text);
    },
    replace: (from, to, text) => {
      copy(from);
      push(text);
      at = to;
    },
  };
}
