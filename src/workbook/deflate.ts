import { Deflate, Inflate } from "fflate";

export { crc32 } from "./crc32";

/** Deflates by pieces (RFC 1951); `last` ends the stream. */
export interface Deflater {
  readonly push: (bytes: Uint8Array, last: boolean) => void;
}

/**
 * The deflater where there is no other; in Node `#deflate` is deflate.node.ts.
 *
 * @param take receives the packed bytes
 */
export function deflater(take: (packed: Uint8Array) => void): Deflater {
  const stream = new Deflate({ level: LEVEL }, take);
  return { push: (bytes, last) => stream.push(bytes, last) };
}

/** How an unpacking ended: `longer` than the part declares, or `broken` where it is no deflated stream. */
export type Unpacked = "done" | "longer" | "broken";

/** Unpacks piece by piece while `take` says true, and never much more than `size` bytes. */
export function inflate(packed: Uint8Array, size: number, take: (piece: Uint8Array) => boolean): Unpacked {
  let length = 0;
  let going = true;
  const stream = new Inflate((piece) => {
    length += piece.length;
    if (going && length <= size) going = take(piece);
  });
  try {
    for (let at = 0; at < packed.length && going && length <= size; at += STEP)
      stream.push(packed.subarray(at, at + STEP), at + STEP >= packed.length);
  } catch (error) {
    // fflate marks its own errors with a numeric code; those of `take` pass through.
    if (error instanceof Error && "code" in error) return "broken";
    throw error;
  }
  return length > size ? "longer" : "done";
}

const LEVEL = 6;
const STEP = 16_384;
