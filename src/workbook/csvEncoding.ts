import { InputError } from "../measure/errors";

/** The encodings of a text file that spreadsheet programs write. */
export type CsvEncoding = "utf-8" | "utf-16le" | "utf-16be" | "windows-1252";

export interface DecodedText {
  readonly text: string;
  readonly encoding: CsvEncoding;
  /** It began with a byte order mark. */
  readonly bom: boolean;
}

/**
 * The letters of a text file: by its byte order mark, else UTF-16 when every other byte is zero, else UTF-8 when it
 * is valid, else Windows-1252, in which every byte is a letter.
 *
 * @throws InputError when it is no text
 */
export function decodeText(bytes: Uint8Array): DecodedText {
  const { encoding, mark } = sniff(bytes);
  const body = bytes.subarray(mark);
  const text = new TextDecoder(encoding, { ignoreBOM: true }).decode(body);
  if (text.includes("\0")) {
    throw new InputError(
      "csv",
      "a file with zero bytes, which is no text",
      "accepts comma, semicolon or tab separated text",
      "save it as CSV UTF-8",
    );
  }
  return { text, encoding, bom: mark > 0 };
}

/** The bytes of a text; a letter that Windows-1252 lacks turns the whole file into UTF-8 with a byte order mark, so that nothing is lost. */
export function encodeText(text: string, encoding: CsvEncoding, bom: boolean): Uint8Array {
  if (encoding === "utf-16le" || encoding === "utf-16be") return encodeUtf16(text, encoding, bom);
  if (encoding === "windows-1252") return encode1252(text) ?? encodeText(text, "utf-8", true);
  return new TextEncoder().encode(bom ? `\ufeff${text}` : text);
}

function sniff(bytes: Uint8Array): { encoding: CsvEncoding; mark: number } {
  const [a, b, c] = bytes;
  if (a === 0xef && b === 0xbb && c === 0xbf) return { encoding: "utf-8", mark: 3 };
  if (a === 0xff && b === 0xfe) return { encoding: "utf-16le", mark: 2 };
  if (a === 0xfe && b === 0xff) return { encoding: "utf-16be", mark: 2 };
  const sample = bytes.subarray(0, SAMPLE);
  const zeros = [0, 0];
  sample.forEach((byte, i) => {
    if (byte === 0) zeros[i % 2]!++;
  });
  if (zeros[1]! > sample.length / 4 && zeros[0] === 0) return { encoding: "utf-16le", mark: 0 };
  if (zeros[0]! > sample.length / 4 && zeros[1] === 0) return { encoding: "utf-16be", mark: 0 };
  return { encoding: isUtf8(bytes) ? "utf-8" : "windows-1252", mark: 0 };
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}

function encodeUtf16(text: string, encoding: CsvEncoding, bom: boolean): Uint8Array {
  const whole = bom ? `\ufeff${text}` : text;
  const bytes = new Uint8Array(whole.length * 2);
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < whole.length; i++) view.setUint16(i * 2, whole.charCodeAt(i), encoding === "utf-16le");
  return bytes;
}

function encode1252(text: string): Uint8Array | undefined {
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) {
    const byte = BYTES_1252.get(text[i]!);
    if (byte === undefined) return undefined;
    bytes[i] = byte;
  }
  return bytes;
}

const SAMPLE = 4_096;
const BYTES_1252: ReadonlyMap<string, number> = new Map(
  [...new TextDecoder("windows-1252").decode(Uint8Array.from({ length: 256 }, (_, i) => i))].map((letter, byte) => [
    letter,
    byte,
  ]),
);
