import { encode } from "uqr";

/**
 * The dark squares of a QR code as runs along its rows, in squares from its upper left corner. Any text: its bytes are
 * UTF-8.
 */
export interface CodeModules {
  readonly side: number;
  readonly runs: readonly { readonly x: number; readonly y: number; readonly length: number }[];
}

/** Free squares that a scanner needs around a code. Source: ISO/IEC 18004. */
export const QUIET_SQUARES = 4;

/** Longer texts make squares too small for a label. */
const LONGEST_BYTES = 200;

/** Whether a text has a code: it is not empty, and not too long to scan from a label. */
export function hasCode(text: string): boolean {
  return text !== "" && new TextEncoder().encode(text).length <= LONGEST_BYTES;
}

/** @param text one that has a code */
export function codeModules(text: string): CodeModules {
  const { data } = encode(text, { ecc: "M", border: 0 });
  const runs = data.flatMap((row, y) =>
    row.flatMap((dark, x) => {
      if (!dark || row[x - 1] === true) return [];
      let length = 1;
      while (row[x + length] === true) length++;
      return [{ x, y, length }];
    }),
  );
  return { side: data.length, runs };
}
