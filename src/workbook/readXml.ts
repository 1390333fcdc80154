import { SaxesParser, type SaxesTagNS } from "saxes";
import { damaged } from "./damaged";
import { eachChunk, type ZipEntry } from "./zip";

/** What a reader of one part listens to. Names are local; a tag carries its namespace as `uri`. */
export interface XmlHandlers {
  readonly open?: (tag: SaxesTagNS) => void;
  readonly close?: (tag: SaxesTagNS) => void;
  readonly text?: (text: string) => void;
  /** Asked after each piece; true stops the reading early. */
  readonly enough?: () => boolean;
  /** Told after each piece how much of the part has been read, 0 to 1. */
  readonly progress?: (fraction: number) => void;
}

/**
 * Reads one XML part as a stream.
 *
 * @throws InputError when it is not well-formed, has a DOCTYPE (where entities could be declared), or is in an unknown encoding
 */
export function readXml(entry: ZipEntry, handlers: XmlHandlers): void {
  // Without a listener for tags nobody asks for namespaces, which cost a third of the reading.
  const parser = new SaxesParser({ xmlns: (handlers.open ?? handlers.close) !== undefined }) as SaxesParser<{
    xmlns: true;
  }>;
  parser.on("error", (error) => {
    throw damaged(`the part ${entry.name}, which is not well-formed XML (${error.message})`);
  });
  parser.on("doctype", () => {
    throw damaged(
      `the part ${entry.name} with a document type, which a workbook never has`,
      "check where the file came from",
    );
  });
  if (handlers.open) parser.on("opentag", handlers.open as (tag: SaxesTagNS) => void);
  if (handlers.close) parser.on("closetag", handlers.close as (tag: SaxesTagNS) => void);
  if (handlers.text) {
    parser.on("text", handlers.text);
    parser.on("cdata", handlers.text);
  }
  let decoder: TextDecoder | undefined;
  let stopped = false;
  let read = 0;
  eachChunk(entry, (chunk) => {
    decoder ??= decoderFor(entry.name, chunk);
    parser.write(decode(entry.name, () => decoder!.decode(chunk, { stream: true })));
    read += chunk.length;
    handlers.progress?.(read / entry.size);
    stopped = handlers.enough?.() === true;
    return !stopped;
  });
  if (!stopped) {
    if (decoder) parser.write(decode(entry.name, () => decoder!.decode()));
    parser.close();
    wellFormed.add(entry);
  }
}

/** Reads a part to its end unless it has been: the surgical writer finds its places only in well-formed XML. */
export function checkWellFormed(entry: ZipEntry): void {
  if (!wellFormed.has(entry)) readXml(entry, {});
}

const wellFormed = new WeakSet<ZipEntry>();

/** The value of an attribute without a namespace prefix. */
export function attribute(tag: SaxesTagNS, name: string): string | undefined {
  return tag.attributes[name]?.value;
}

/** A part as text, without a byte order mark, for the surgical writer. */
export function textOf(entry: ZipEntry): string {
  const pieces: string[] = [];
  let decoder: TextDecoder | undefined;
  eachChunk(entry, (chunk) => {
    decoder ??= decoderFor(entry.name, chunk);
    pieces.push(decode(entry.name, () => decoder!.decode(chunk, { stream: true })));
  });
  if (decoder) pieces.push(decode(entry.name, () => decoder!.decode()));
  // The writer writes UTF-8 only; a declaration of anything else would then be wrong.
  pieces[0] = (pieces[0] ?? "").replace(
    /^(<\?xml[^>]*?)\s+encoding\s*=\s*("[^"]*"|'[^']*')/,
    (declaration, before: string) => (/utf-?8/i.test(declaration) ? declaration : before),
  );
  return pieces.join("");
}

function decode(name: string, piece: () => string): string {
  try {
    return piece();
  } catch {
    throw damaged(`the part ${name} with letters that its encoding does not have`);
  }
}

function decoderFor(name: string, first: Uint8Array): TextDecoder {
  const [a, b] = first;
  if ((a === 0xff && b === 0xfe) || (a === 0x3c && b === 0)) return new TextDecoder("utf-16le", { fatal: true });
  if ((a === 0xfe && b === 0xff) || (a === 0 && b === 0x3c)) return new TextDecoder("utf-16be", { fatal: true });
  const head = String.fromCharCode(...first.subarray(0, 200));
  const label = /^(?:\xef\xbb\xbf)?<\?xml[^>]*?encoding\s*=\s*["']([^"']+)["']/.exec(head)?.[1] ?? "utf-8";
  try {
    return new TextDecoder(label, { fatal: true });
  } catch {
    throw damaged(`the part ${name} in the unknown encoding ${label}`);
  }
}
