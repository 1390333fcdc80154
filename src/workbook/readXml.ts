import { SaxesParser } from "saxes";
import { damaged, tooMuch } from "./damaged";
import { eachChunk, type ZipEntry } from "./zip";

/** A tag of a part: its name without the prefix, the namespace that the prefix stands for, and its attributes. */
export interface XmlTag {
  readonly local: string;
  readonly uri: string;
  /** By the name as written, prefix included. */
  readonly attributes: Readonly<Record<string, string>>;
  readonly namespaces: Namespaces;
}

/** Namespace by prefix, `""` for none, as they stand inside one tag. */
export type Namespaces = ReadonlyMap<string, string>;

/** What a reader of one part listens to. */
export interface XmlHandlers {
  readonly open?: (tag: XmlTag) => void;
  readonly close?: (tag: XmlTag) => void;
  readonly text?: (text: string) => void;
  /** Asked after each piece; true stops the reading early. */
  readonly enough?: () => boolean;
  /** Called after each piece with how much of the part has been read, 0 to 1. */
  readonly progress?: (fraction: number) => void;
}

/**
 * Reads one XML part as a stream.
 *
 * @throws InputError when it is not well-formed, has a DOCTYPE (where entities could be declared), or is in an unknown encoding
 */
export function readXml(entry: ZipEntry, handlers: XmlHandlers): void {
  // The parser's own reading of namespaces takes as long as all else together.
  const parser = new SaxesParser();
  const open: XmlTag[] = [];
  let declaring = 0;
  parser.on("error", (error) => {
    throw notWellFormed(entry.name, error.message);
  });
  parser.on("doctype", () => {
    throw damaged(
      `the part ${entry.name} with a document type, which a workbook never has`,
      "check where the file came from",
    );
  });
  parser.on("opentag", ({ name, attributes }) => {
    if (open.length >= DEEPEST) throw tooMuch(`the part ${entry.name} with more than ${DEEPEST} tags one in another`);
    const tag = namedTag(name, attributes, open.at(-1)?.namespaces ?? OUTERMOST, entry.name);
    if (tag.namespaces !== (open.at(-1)?.namespaces ?? OUTERMOST) && ++declaring > MOST_DECLARING)
      throw tooMuch(`the part ${entry.name} with namespaces in more than ${MOST_DECLARING} tags`);
    open.push(tag);
    handlers.open?.(tag);
  });
  parser.on("closetag", () => {
    const tag = open.pop()!;
    handlers.close?.(tag);
  });
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
export function attribute(tag: XmlTag, name: string): string | undefined {
  return tag.attributes[name];
}

/** The value of an attribute of a namespace, by the end of its address. */
export function attributeOf({ attributes, namespaces }: XmlTag, local: string, uriEnd: string): string | undefined {
  const name = Object.keys(attributes).find((each) => {
    const colon = each.indexOf(":");
    return colon > 0 && each.slice(colon + 1) === local && namespaces.get(each.slice(0, colon))?.endsWith(uriEnd);
  });
  return name === undefined ? undefined : attributes[name];
}

/** Tags one in another: a sheet has some ten, a drawing some thirty. */
export const DEEPEST = 256;
/** Namespaces known at one place: a sheet has some ten. Each tag that declares one costs as much as all of them. */
export const MOST_NAMESPACES = 100;
/** Tags that declare a namespace that the tags around them do not have. */
export const MOST_DECLARING = 100_000;

const OUTERMOST: Namespaces = new Map([
  ["", ""],
  ["xml", "http://www.w3.org/XML/1998/namespace"],
]);

/** @throws InputError when a name is no name with or without a prefix, a prefix stands for nothing, or two attributes are one */
function namedTag(name: string, attributes: Record<string, string>, outer: Namespaces, part: string): XmlTag {
  const namespaces = namespacesIn(attributes, outer, part);
  let seen: Set<string> | undefined;
  for (const written in attributes) {
    if (!written.includes(":") || written.startsWith("xmlns:")) continue;
    const whole = `{${namespaceOf(written, namespaces, part)}}${localOf(written)}`;
    if (seen?.has(whole)) throw notWellFormed(part, `duplicate attribute ${whole}`);
    (seen ??= new Set()).add(whole);
  }
  return { local: localOf(name), uri: namespaceOf(name, namespaces, part), attributes, namespaces };
}

function localOf(written: string): string {
  const colon = written.indexOf(":");
  return colon < 0 ? written : written.slice(colon + 1);
}

function namespaceOf(written: string, namespaces: Namespaces, part: string): string {
  const colon = written.indexOf(":");
  if (colon < 0) return namespaces.get("")!;
  if (colon === 0 || colon === written.length - 1 || written.includes(":", colon + 1))
    throw notWellFormed(part, `malformed name "${written}"`);
  const prefix = written.slice(0, colon);
  const uri = namespaces.get(prefix);
  if (uri === undefined || uri === "") throw notWellFormed(part, `unbound namespace prefix "${prefix}"`);
  return uri;
}

/** Those of the tags around, and those that the tag declares itself. */
function namespacesIn(attributes: Record<string, string>, outer: Namespaces, part: string): Namespaces {
  let own: Map<string, string> | undefined;
  for (const name in attributes) {
    if (name !== "xmlns" && !name.startsWith("xmlns:")) continue;
    const prefix = name.slice("xmlns:".length);
    if ((own ?? outer).get(prefix) === attributes[name]) continue;
    (own ??= new Map(outer)).set(prefix, attributes[name]!);
    if (own.size > MOST_NAMESPACES)
      throw tooMuch(`the part ${part} with more than ${MOST_NAMESPACES} namespaces at one place`);
  }
  return own ?? outer;
}

function notWellFormed(part: string, why: string): Error {
  return damaged(`the part ${part}, which is not well-formed XML (${why})`);
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
  pieces[0] = withoutEncoding(pieces[0] ?? "", entry.name);
  return pieces.join("");
}

const LONGEST_DECLARATION = 1_000;

/** The writer writes UTF-8 only; a declaration of anything else would then be wrong. */
function withoutEncoding(text: string, part: string): string {
  if (!text.startsWith("<?xml")) return text;
  const end = text.indexOf("?>");
  if (end < 0 || end > LONGEST_DECLARATION)
    throw tooMuch(`the part ${part} with an XML declaration of more than ${LONGEST_DECLARATION} letters`);
  const declaration = text
    .slice(0, end)
    .replace(/\sencoding\s*=\s*("[^"]*"|'[^']*')/, (encoding) => (/utf-?8/i.test(encoding) ? encoding : ""));
  return declaration + text.slice(end);
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
