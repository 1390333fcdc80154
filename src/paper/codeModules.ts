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

/** @returns undefined for a text too long to scan from a label */
export function codeModules(text: string): CodeModules | undefined {
  if (text === "" || new TextEncoder().encode(text).length > LONGEST_BYTES) return undefined;
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
