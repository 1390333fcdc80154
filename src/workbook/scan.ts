/**
 * Where an element lies in the text of a part. The writer never builds a tree: it finds places and puts text between.
 * Only for parts that `readXml` has found well-formed.
 *
 *     <c r="B7" s="3"> ... </c>
 *     ^start          ^openEnd ^closeStart ^end
 */
export interface Place {
  /** Local name, without the prefix. */
  readonly name: string;
  /** `x:` or nothing. */
  readonly prefix: string;
  readonly start: number;
  readonly openEnd: number;
  /** Equal to `openEnd` and `end` in an element that closes itself. */
  readonly closeStart: number;
  readonly end: number;
}

/** The outermost element of a part. */
export function rootOf(xml: string): Place {
  for (const place of childrenWithin(xml, 0, xml.length)) return place;
  throw new Error("a part without an element passed for well-formed");
}

/** The elements directly inside another. */
export function childrenOf(xml: string, parent: Place): Generator<Place> {
  return childrenWithin(xml, parent.openEnd, parent.closeStart);
}

/** The first child with that local name. */
export function childOf(xml: string, parent: Place, name: string): Place | undefined {
  for (const place of childrenOf(xml, parent)) if (place.name === name) return place;
  return undefined;
}

/** The start tag as it is written, `<c r="B7" s="3">`. */
export function startTag(xml: string, place: Place): string {
  return xml.slice(place.start, place.openEnd);
}

/** The raw value of an attribute in a start tag. */
export function attributeIn(tag: string, name: string): string | undefined {
  const match = attributePattern(name).exec(tag);
  return match ? match[2]!.slice(1, -1) : undefined;
}

/** The start tag with an attribute set (raw value), or without it. */
export function withAttribute(tag: string, name: string, value: string | undefined): string {
  const match = attributePattern(name).exec(tag);
  if (match) {
    const after = tag.slice(match.index + match[0].length);
    return tag.slice(0, match.index) + (value === undefined ? "" : `${match[1]}"${value}"`) + after;
  }
  return value === undefined ? tag : `${openTag(tag)} ${name}="${value}"${tag.endsWith("/>") ? "/>" : ">"}`;
}

/** A start tag without its end: `<c r="B7"` of `<c r="B7" />`. */
export function openTag(tag: string): string {
  // By hand: a pattern would look at long white space again from each of its letters.
  let end = tag.length - (tag.endsWith("/>") ? 2 : 1);
  while (end > 0 && tag.charCodeAt(end - 1) <= SPACE) end--;
  return tag.slice(0, end);
}

/** A start tag that closes itself, opened; any other as it is. */
export function opened(tag: string): string {
  return tag.endsWith("/>") ? `${openTag(tag)}>` : tag;
}

/** Whether an element closes itself. */
export function closesItself(xml: string, place: Place): boolean {
  return xml.charCodeAt(place.openEnd - 2) === SLASH;
}

const LESS = 60;
const GREATER = 62;
const SLASH = 47;
const BANG = 33;
const QUESTION = 63;
const DOUBLE = 34;
const SINGLE = 39;
const COLON = 58;
/** A name ends at white space, all of which is no higher. */
const SPACE = 32;

const patterns = new Map<string, RegExp>();

function attributePattern(name: string): RegExp {
  const known = patterns.get(name);
  if (known) return known;
  const made = new RegExp(`(\\s${name}\\s*=\\s*)("[^"]*"|'[^']*')`);
  patterns.set(name, made);
  return made;
}

export function* childrenWithin(xml: string, from: number, to: number): Generator<Place> {
  let at = nextElement(xml, from, to);
  while (at >= 0) {
    const openEnd = tagEnd(xml, at);
    const self = xml.charCodeAt(openEnd - 2) === SLASH;
    const { prefix, name } = nameAt(xml, at, openEnd);
    const end = self ? openEnd : elementEnd(xml, openEnd);
    const closeStart = self ? openEnd : xml.lastIndexOf("<", end - 1);
    yield { name, prefix, start: at, openEnd, closeStart, end };
    at = nextElement(xml, end, to);
  }
}

/** The next start tag, past text, comments, instructions and CDATA; -1 at an end tag or at the end. */
function nextElement(xml: string, from: number, to: number): number {
  let at = xml.indexOf("<", from);
  while (at >= 0 && at < to) {
    const next = xml.charCodeAt(at + 1);
    if (next === SLASH) return -1;
    if (next !== BANG && next !== QUESTION) return at;
    at = xml.indexOf("<", pastMarkup(xml, at));
  }
  return -1;
}

/** Past a comment, CDATA section or instruction that starts at `at`. */
function pastMarkup(xml: string, at: number): number {
  const [ending, skip] = xml.startsWith("<!--", at)
    ? ["-->", 4]
    : xml.startsWith("<![CDATA[", at)
      ? ["]]>", 9]
      : ["?>", 2];
  const end = xml.indexOf(ending, at + skip);
  return end < 0 ? xml.length : end + ending.length;
}

/** Past the `>` of the tag that starts at `at`; a `>` inside a quoted value does not end it. */
function tagEnd(xml: string, at: number): number {
  let quote = 0;
  for (let i = at + 1; i < xml.length; i++) {
    const c = xml.charCodeAt(i);
    if (quote !== 0) {
      if (c === quote) quote = 0;
    } else if (c === GREATER) return i + 1;
    else if (c === DOUBLE || c === SINGLE) quote = c;
  }
  return xml.length;
}

/** Past the end tag that closes the element whose content starts at `from`. */
function elementEnd(xml: string, from: number): number {
  let depth = 1;
  let at = xml.indexOf("<", from);
  while (at >= 0) {
    const next = xml.charCodeAt(at + 1);
    if (next === BANG || next === QUESTION) {
      at = xml.indexOf("<", pastMarkup(xml, at));
      continue;
    }
    const end = tagEnd(xml, at);
    if (next === SLASH) {
      depth--;
      if (depth === 0) return end;
    } else if (xml.charCodeAt(end - 2) !== SLASH) depth++;
    at = xml.charCodeAt(end) === LESS ? end : xml.indexOf("<", end);
  }
  return xml.length;
}

function nameAt(xml: string, at: number, openEnd: number): { prefix: string; name: string } {
  let start = at + 1;
  let end = start;
  for (; end < openEnd; end++) {
    const c = xml.charCodeAt(end);
    if (c === COLON) start = end + 1;
    else if (c <= SPACE || c === SLASH || c === GREATER) break;
  }
  return { prefix: start === at + 1 ? "" : xml.slice(at + 1, start), name: xml.slice(start, end) };
}
