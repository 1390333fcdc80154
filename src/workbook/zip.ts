import { crc32, inflate } from "#deflate";
import { InputError } from "../measure/errors";
import { damaged } from "./damaged";

/** One part of the file, still packed: an untouched part is written back from the same bytes. */
export interface ZipEntry {
  readonly name: string;
  readonly nameBytes: Uint8Array;
  /** 0 stored, 8 deflated. */
  readonly method: number;
  /** Bit 11 of the general flags: the name is UTF-8. */
  readonly utf8: boolean;
  /** DOS time and date, as stored. */
  readonly time: number;
  readonly attributes: number;
  readonly crc: number;
  /** Bytes when unpacked. */
  readonly size: number;
  readonly packed: Uint8Array;
}

export type Zip = ReadonlyMap<string, ZipEntry>;

/** Most bytes that one part may unpack to; a larger one no longer fits a JavaScript string. */
export const LARGEST_PART = 500_000_000;
/** Most bytes that all parts may unpack to. */
export const LARGEST_WHOLE = 1_000_000_000;
/** Sheets pack 5 to 60 times; deflate itself ends at 1032. Judged only above `RATIO_FROM` bytes. */
export const LARGEST_RATIO = 250;
export const RATIO_FROM = 10_000_000;
/** A workbook has some dozens of parts, some hundreds with pictures. */
export const MOST_PARTS = 20_000;

/**
 * The directory of a zip archive, read with suspicion: nothing is unpacked yet.
 *
 * @throws InputError for a cut-off archive, a password, unsafe or doubled names, overlapping parts, or sizes that no workbook has
 */
export function openZip(bytes: Uint8Array): Zip {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  refuseOtherFiles(bytes, view);
  const { count, start, end } = findDirectory(bytes, view);
  const entries = new Map<string, ZipEntry>();
  const lowered = new Set<string>();
  const spans: [number, number][] = [];
  let at = start;
  let whole = 0;
  for (let i = 0; i < count; i++) {
    if (at + CENTRAL_LENGTH > end || view.getUint32(at, true) !== CENTRAL)
      throw damaged("a zip archive with a broken directory");
    const { entry, span, next } = readEntry(bytes, view, at, start);
    whole += entry.size;
    if (whole > LARGEST_WHOLE) throw tooLarge(`parts that unpack to more than ${megabytes(LARGEST_WHOLE)}`);
    if (lowered.has(entry.name.toLowerCase())) throw damaged(`two parts with the name ${entry.name}`);
    lowered.add(entry.name.toLowerCase());
    entries.set(entry.name, entry);
    spans.push(span);
    at = next;
  }
  refuseOverlaps(spans);
  return entries;
}

/**
 * Unpacks a part piece by piece; `take` returns false to stop early.
 *
 * @throws InputError when the part is longer or other than its directory entry says
 */
export function eachChunk(entry: ZipEntry, take: (chunk: Uint8Array) => boolean | void): void {
  let length = 0;
  let crc = 0;
  let going = true;
  const receive = (chunk: Uint8Array): boolean => {
    length += chunk.length;
    crc = crc32(chunk, crc);
    if (chunk.length > 0) going = take(chunk) !== false;
    return going;
  };
  if (entry.method === STORED) receive(entry.packed);
  else {
    const ended = inflate(entry.packed, entry.size, receive);
    if (ended === "longer") throw tooLarge(`the part ${entry.name}, which unpacks to more than it declares`);
    if (ended === "broken") throw damaged(`the part ${entry.name}, which does not unpack`);
  }
  if (going && (length !== entry.size || crc !== entry.crc))
    throw damaged(`the part ${entry.name} with a wrong checksum`);
}

const STORED = 0;
const DEFLATED = 8;
const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
const LOCAL_LENGTH = 30;
const CENTRAL_LENGTH = 46;
const END_LENGTH = 22;
const LONGEST_COMMENT = 0xffff;
const IN_ZIP64 = 0xffffffff;
const OLE = 0xd0cf11e0;

function refuseOtherFiles(bytes: Uint8Array, view: DataView): void {
  if (bytes.length === 0) throw damaged("an empty file", "copy it again from where it came");
  if (bytes.length >= 8 && view.getUint32(0) === OLE) {
    throw damaged("an old .xls or a workbook locked with a password", "save it in Excel as .xlsx without a password");
  }
  if (bytes.length < 4 || view.getUint16(0) !== 0x504b) {
    throw damaged("a file that is not a workbook (no zip archive)", "for a text file, name it .csv");
  }
}

function findDirectory(bytes: Uint8Array, view: DataView): { count: number; start: number; end: number } {
  const lowest = Math.max(0, bytes.length - END_LENGTH - LONGEST_COMMENT);
  for (let at = bytes.length - END_LENGTH; at >= lowest; at--) {
    if (view.getUint32(at, true) !== END || at + END_LENGTH + view.getUint16(at + 20, true) > bytes.length) continue;
    const count = view.getUint16(at + 10, true);
    const length = view.getUint32(at + 12, true);
    const start = view.getUint32(at + 16, true);
    if (start + length > at) throw damaged("a zip archive cut short or joined to another file");
    if (count > MOST_PARTS) throw tooLarge(`${count} parts`);
    return { count, start, end: start + length };
  }
  throw damaged("a zip archive cut short (its directory is missing)", "copy it again from where it came");
}

function readEntry(bytes: Uint8Array, view: DataView, at: number, directory: number) {
  const flags = view.getUint16(at + 8, true);
  const method = view.getUint16(at + 10, true);
  const nameLength = view.getUint16(at + 28, true);
  const extraLength = view.getUint16(at + 30, true);
  const next = at + CENTRAL_LENGTH + nameLength + extraLength + view.getUint16(at + 32, true);
  const nameBytes = bytes.subarray(at + CENTRAL_LENGTH, at + CENTRAL_LENGTH + nameLength);
  const name = new TextDecoder().decode(nameBytes).replaceAll("\\", "/");
  if (flags & 1) throw damaged(`the part ${name} locked with a password`, "save it in Excel without a password");
  if (method !== STORED && method !== DEFLATED) throw damaged(`the part ${name} packed in an unknown way (${method})`);
  refuseUnsafeName(name);
  const { size, packedSize, local } = sizes(view, at, nameLength, extraLength);
  refuseLarge(name, size, packedSize);
  if (local + LOCAL_LENGTH > directory || view.getUint32(local, true) !== LOCAL)
    throw damaged(`the part ${name} missing from its place`);
  const from = local + LOCAL_LENGTH + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
  if (from + packedSize > directory) throw damaged(`the part ${name} cut short`);
  if (!sameBytes(nameBytes, bytes.subarray(local + LOCAL_LENGTH, local + LOCAL_LENGTH + nameLength))) {
    throw damaged(`the part ${name} under another name`);
  }
  const entry: ZipEntry = {
    name,
    nameBytes,
    method,
    utf8: (flags & 0x800) !== 0,
    time: view.getUint32(at + 12, true),
    attributes: view.getUint32(at + 38, true),
    crc: view.getUint32(at + 16, true),
    size,
    packed: bytes.subarray(from, from + packedSize),
  };
  if (method === STORED && size !== packedSize) throw damaged(`the part ${name} with two sizes`);
  return { entry, span: [local, from + packedSize] as [number, number], next };
}

/** The zip64 extra field holds, in this order, only those of the three figures that did not fit. */
function sizes(view: DataView, at: number, nameLength: number, extraLength: number) {
  const short = [view.getUint32(at + 24, true), view.getUint32(at + 20, true), view.getUint32(at + 42, true)];
  if (!short.includes(IN_ZIP64)) return { size: short[0]!, packedSize: short[1]!, local: short[2]! };
  let field = at + CENTRAL_LENGTH + nameLength;
  const end = field + extraLength;
  while (field + 4 <= end && view.getUint16(field, true) !== 1) field += 4 + view.getUint16(field + 2, true);
  let figure = field + 4;
  const [size, packedSize, local] = short.map((value) => {
    if (value !== IN_ZIP64) return value;
    if (figure + 8 > end) throw damaged("a zip archive with a broken directory");
    figure += 8;
    return Number(view.getBigUint64(figure - 8, true));
  });
  return { size: size!, packedSize: packedSize!, local: local! };
}

function refuseUnsafeName(name: string): void {
  const unsafe = name === "" || name.startsWith("/") || /^[a-z]:/i.test(name) || name.includes("\0");
  if (unsafe || name.split("/").includes(".."))
    throw damaged(`a part named ${JSON.stringify(name)}, which points outside the workbook`);
}

function refuseLarge(name: string, size: number, packedSize: number): void {
  if (size > LARGEST_PART) throw tooLarge(`the part ${name} of ${megabytes(size)}`);
  if (size > RATIO_FROM && size > packedSize * LARGEST_RATIO) {
    throw tooLarge(`the part ${name}, which unpacks ${Math.round(size / packedSize)}-fold to ${megabytes(size)}`);
  }
}

function refuseOverlaps(spans: [number, number][]): void {
  spans.sort((a, b) => a[0] - b[0]);
  spans.forEach(([start], i) => {
    if (i > 0 && start < spans[i - 1]![1]) throw damaged("a zip archive whose parts overlap");
  });
}

export function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, i) => byte === b[i]);
}

function tooLarge(got: string): InputError {
  return new InputError(
    "workbook",
    got,
    `accepts up to ${megabytes(LARGEST_PART)} a part and ${megabytes(LARGEST_WHOLE)} in all`,
    "this is no survey: check where the file came from",
  );
}

function megabytes(bytes: number): string {
  return `${Math.round(bytes / 1_000_000)} MB`;
}
