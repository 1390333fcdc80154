import * as zlib from "node:zlib";
import { crc32 as ownCrc32 } from "./crc32";
import type { Deflater, Unpacked } from "./deflate";

/**
 * Node's own deflater, some six times as fast as one in JavaScript. It has no stream that answers at once, so every
 * piece is packed alone, ended at a whole byte, with the letters before it as its dictionary.
 */
export function deflater(take: (packed: Uint8Array) => void): Deflater {
  let before = new Uint8Array(0);
  return {
    push: (bytes, last) => {
      const dictionary = before.length === 0 ? {} : { dictionary: before };
      take(
        zlib.deflateRawSync(bytes, {
          level: LEVEL,
          finishFlush: last ? zlib.constants.Z_FINISH : zlib.constants.Z_SYNC_FLUSH,
          ...dictionary,
        }),
      );
      before = bytes.slice(-WINDOW);
    },
  };
}

/** Unpacks at once, never more than `size` bytes, and hands it on by pieces while `take` says true. */
export function inflate(packed: Uint8Array, size: number, take: (piece: Uint8Array) => boolean): Unpacked {
  let whole: Uint8Array;
  try {
    whole = zlib.inflateRawSync(packed, { maxOutputLength: size + 1, chunkSize: Math.max(LEAST_CHUNK, size + 1) });
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "ERR_BUFFER_TOO_LARGE" ? "longer" : "broken";
  }
  if (whole.length > size) return "longer";
  for (let at = 0; at < size && take(whole.subarray(at, at + PIECE)); at += PIECE);
  return "done";
}

/** Node's own, where it has one: from 20.15 on. */
export const crc32: typeof ownCrc32 = (zlib as Partial<typeof zlib>).crc32 ?? ownCrc32;

/** As small as fflate packs at its level 6, and twice as fast as zlib's own 6. */
const LEVEL = 4;
/** Bytes that deflate looks back. */
const WINDOW = 32_768;
const PIECE = 65_536;
/** The least that zlib takes for its output. */
const LEAST_CHUNK = 64;
