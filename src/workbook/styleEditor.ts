import { escapeXml, unescapeXml } from "./escape";
import {
  attributeIn,
  childOf,
  childrenOf,
  closesItself,
  opened,
  rootOf,
  startTag,
  withAttribute,
  type Place,
} from "./scan";
import { append, insert, spliced, type Splice } from "./splice";
import { isDateFormat, isDateFormatId } from "./sheetValue";

/** What a cell needs beyond the style that it copies. */
export interface StyleWish {
  /** Number format; `plain` turns a date or text format into General and keeps any other. */
  readonly format?: string;
  /** A text that would read as a formula: marks the cell as text, as a typed apostrophe does. */
  readonly quoted?: boolean;
  readonly bold?: boolean;
}

/** Finds or adds cell styles; every style that was there keeps its number and its text. */
export interface StyleEditor {
  /** The number of the style like `base` with the wish granted; `base` itself when it already is. */
  readonly styled: (base: number | undefined, wish: StyleWish) => number | undefined;
  /** How many cell styles there are. */
  readonly count: () => number;
  /** The changed part, or undefined when nothing was added. */
  readonly done: () => string | undefined;
}

/** @param xml the part of styles, well-formed */
export function styleEditor(xml: string): StyleEditor {
  const root = rootOf(xml);
  const p = root.prefix;
  const numFmts = childOf(xml, root, "numFmts");
  const fonts = childOf(xml, root, "fonts");
  const cellXfs = childOf(xml, root, "cellXfs");
  const formats = [...(cellXfs ? childrenOf(xml, cellXfs) : [])].map((place) => xml.slice(place.start, place.end));
  const before = formats.length;
  // Without any, the first is what cells without a style have.
  if (before === 0) formats.push(`<${p}xf numFmtId="0" fontId="0" fillId="0" borderId="0"/>`);
  const codes = new Map<number, string>();
  for (const place of numFmts ? childrenOf(xml, numFmts) : []) {
    const tag = startTag(xml, place);
    codes.set(Number(attributeIn(tag, "numFmtId")), unescapeXml(attributeIn(tag, "formatCode") ?? ""));
  }
  const newCodes: [number, string][] = [];
  const fontTexts = [...(fonts ? childrenOf(xml, fonts) : [])].map((place) => fontText(xml, place));
  const newFonts: string[] = [];
  const known = new Map<string, number | undefined>();

  const formatId = (code: string): number => {
    const builtIn = BUILT_IN.indexOf(code);
    if (builtIn >= 0) return builtIn;
    if (code === TEXT) return TEXT_ID;
    for (const [id, text] of codes) if (text === code) return id;
    const id = [...codes.keys()].reduce((most, each) => Math.max(most, each), LAST_BUILT_IN) + 1;
    codes.set(id, code);
    newCodes.push([id, code]);
    return id;
  };
  const wantedFormat = (current: number, format: string | undefined): number => {
    if (format !== "plain") return format === undefined ? current : formatId(format);
    const code = codes.get(current);
    const odd =
      code === undefined ? isDateFormatId(current) || current === TEXT_ID : isDateFormat(code) || code === TEXT;
    return odd ? 0 : current;
  };
  const boldFont = (current: number): number => {
    const text = fontTexts[current] ?? { p, tag: `<${p}font>`, inside: "" };
    if (new RegExp(`<${text.p}b[\\s/>]`).test(text.inside)) return current;
    const bold = `${text.tag}<${text.p}b/>${text.inside}</${text.p}font>`;
    const whole = [...fontTexts.map(({ p: q, tag, inside }) => `${tag}${inside}</${q}font>`), ...newFonts];
    const same = whole.indexOf(bold);
    if (same >= 0) return same;
    newFonts.push(bold);
    return fontTexts.length + newFonts.length - 1;
  };
  const make = (base: number | undefined, wish: StyleWish): number | undefined => {
    const whole = formats[base ?? 0] ?? `<${p}xf numFmtId="0" fontId="0" fillId="0" borderId="0"/>`;
    const open = whole.slice(0, whole.indexOf(">") + 1);
    let tag = open;
    const currentFormat = Number(attributeIn(tag, "numFmtId") ?? 0);
    const format = wantedFormat(currentFormat, wish.format);
    if (format !== currentFormat)
      tag = withAttribute(withAttribute(tag, "numFmtId", String(format)), "applyNumberFormat", "1");
    const currentFont = Number(attributeIn(tag, "fontId") ?? 0);
    const font = wish.bold ? boldFont(currentFont) : currentFont;
    if (font !== currentFont) tag = withAttribute(withAttribute(tag, "fontId", String(font)), "applyFont", "1");
    const quoted = wish.quoted ? "1" : undefined;
    if (attributeIn(tag, "quotePrefix") !== quoted) tag = withAttribute(tag, "quotePrefix", quoted);
    if (tag === open) return base;
    const text = tag + whole.slice(open.length);
    const same = formats.indexOf(text);
    if (same >= 0) return same;
    formats.push(text);
    return formats.length - 1;
  };
  return {
    styled: (base, wish) => {
      const key = `${base ?? ""}|${wish.format ?? ""}|${wish.quoted ? 1 : 0}|${wish.bold ? 1 : 0}`;
      if (!known.has(key)) known.set(key, make(base, wish));
      return known.get(key);
    },
    count: () => formats.length,
    done: () => {
      if (formats.length === Math.max(before, 1)) return undefined;
      const splices: Splice[] = [];
      const added = formats.slice(before).join("");
      if (newFonts.length > 0 && fonts)
        splices.push(...grown(xml, fonts, fontTexts.length + newFonts.length, newFonts.join("")));
      const codeTexts = newCodes
        .map(([id, code]) => `<${p}numFmt numFmtId="${id}" formatCode="${escapeXml(code)}"/>`)
        .join("");
      if (newCodes.length > 0 && numFmts) splices.push(...grown(xml, numFmts, codes.size, codeTexts));
      else if (newCodes.length > 0) {
        splices.push(insert(root.openEnd, `<${p}numFmts count="${newCodes.length}">${codeTexts}</${p}numFmts>`));
      }
      if (cellXfs) splices.push(...grown(xml, cellXfs, formats.length, added));
      else
        splices.push(
          insert(placeOfFormats(xml, root), `<${p}cellXfs count="${formats.length}">${added}</${p}cellXfs>`),
        );
      return spliced(xml, splices);
    },
  };
}

/** What stands before the cell formats, by the schema of styles. */
const BEFORE_FORMATS = ["numFmts", "fonts", "fills", "borders", "cellStyleXfs"];

function placeOfFormats(xml: string, root: Place): number {
  return [...childrenOf(xml, root)]
    .filter(({ name }) => BEFORE_FORMATS.includes(name))
    .reduce((last, { end }) => Math.max(last, end), root.openEnd);
}

/** The formats whose number is their place in this list (ECMA-376 part 1, 18.8.30). */
const BUILT_IN: readonly string[] = ["General", "0", "0.00", "#,##0", "#,##0.00"];
const TEXT = "@";
const TEXT_ID = 49;
const LAST_BUILT_IN = 163;

function fontText(xml: string, place: Place): { p: string; tag: string; inside: string } {
  const tag = opened(startTag(xml, place));
  return { p: place.prefix, tag, inside: closesItself(xml, place) ? "" : xml.slice(place.openEnd, place.closeStart) };
}

/** A counted list with more at its end. */
function grown(xml: string, list: Place, count: number, added: string): Splice[] {
  const tag = startTag(xml, list);
  const counted = withAttribute(tag, "count", String(count));
  if (closesItself(xml, list)) {
    return [
      {
        start: list.start,
        end: list.end,
        text: `${opened(counted)}${added}</${list.prefix}${list.name}>`,
      },
    ];
  }
  return [{ start: list.start, end: list.openEnd, text: counted }, append(xml, list, added)];
}
