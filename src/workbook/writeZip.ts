import { crc32, deflater } from "#deflate";
import type { ZipEntry } from "./zip";

/** A part being written: text is added in pieces, so that a large sheet is never in memory twice. */
export interface Packer {
  readonly push: (text: string) => void;
  readonly done: () => ZipEntry;
}

/** Packs a new or changed part. The stored time is constant, so that the same edit gives the same file. */
export function packer(name: string): Packer {
  const packed: Uint8Array[] = [];
  const deflate = deflater((chunk) => packed.push(chunk));
  const encoder = new TextEncoder();
  let waiting: string[] = [];
  let waitingLength = 0;
  let size = 0;
  let crc = 0;
  const flush = (final: boolean): void => {
    const bytes = encoder.encode(waiting.join(""));
    size += bytes.length;
    crc = crc32(bytes, crc);
    deflate.push(bytes, final);
    waiting = [];
    waitingLength = 0;
  };
  return {
    push: (text) => {
      waiting.push(text);
      waitingLength += text.length;
      if (waitingLength > FLUSH_AT) flush(false);
    },
    done: () => {
      flush(true);
      const nameBytes = encoder.encode(name);
      return {
        name,
        nameBytes,
        method: 8,
        utf8: true,
        time: FIRST_DOS_TIME,
        attributes: 0,
        crc,
        size,
        packed: joined(packed),
      };
    },
  };
}

/** Packs a part whose text is at hand. */
export function packText(name: string, text: string): ZipEntry {
  const pack = packer(name);
  pack.push(text);
  return pack.done();
}

/** A zip archive of the entries in order; packed bytes, names and times as they are. */
export function writeZip(entries: Iterable<ZipEntry>): Uint8Array {
  const list = [...entries];
  const length = list.reduce(
    (sum, e) => sum + LOCAL_LENGTH + CENTRAL_LENGTH + 2 * e.nameBytes.length + e.packed.length,
    END_LENGTH,
  );
  const bytes = new Uint8Array(length);
  const view = new DataView(bytes.buffer);
  let at = 0;
  const places = list.map((entry) => {
    const place = at;
    view.setUint32(at, LOCAL, true);
    common(view, at + 4, entry);
    bytes.set(entry.nameBytes, at + LOCAL_LENGTH);
    bytes.set(entry.packed, at + LOCAL_LENGTH + entry.nameBytes.length);
    at += LOCAL_LENGTH + entry.nameBytes.length + entry.packed.length;
    return place;
  });
  const directory = at;
  list.forEach((entry, i) => {
    view.setUint32(at, CENTRAL, true);
    view.setUint16(at + 4, VERSION, true);
    common(view, at + 6, entry);
    view.setUint32(at + 38, entry.attributes, true);
    view.setUint32(at + 42, places[i]!, true);
    bytes.set(entry.nameBytes, at + CENTRAL_LENGTH);
    at += CENTRAL_LENGTH + entry.nameBytes.length;
  });
  view.setUint32(at, END, true);
  view.setUint16(at + 8, list.length, true);
  view.setUint16(at + 10, list.length, true);
  view.setUint32(at + 12, at - directory, true);
  view.setUint32(at + 16, directory, true);
  return bytes;
}

const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
const LOCAL_LENGTH = 30;
const CENTRAL_LENGTH = 46;
const END_LENGTH = 22;
/** 2.0: deflate. */
const VERSION = 20;
/** 1 January 1980, the first that a zip can hold. */
const FIRST_DOS_TIME = 0x00210000;
const FLUSH_AT = 1_000_000;

/** The 26 bytes that the local and the central header share: version to extra length. */
function common(view: DataView, at: number, entry: ZipEntry): void {
  view.setUint16(at, VERSION, true);
  view.setUint16(at + 2, entry.utf8 ? 0x800 : 0, true);
  view.setUint16(at + 4, entry.method, true);
  view.setUint32(at + 6, entry.time, true);
  view.setUint32(at + 10, entry.crc, true);
  view.setUint32(at + 14, entry.packed.length, true);
  view.setUint32(at + 18, entry.size, true);
  view.setUint16(at + 22, entry.nameBytes.length, true);
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}
