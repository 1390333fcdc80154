/**
 * Text for an element of a sheet. What XML cannot hold is written as Excel does, `_x000D_`, and a text that only
 * looks like that is guarded, so that it reads back as it was. Quotes stand as they are: formulas are full of them.
 */
export function escapeText(text: string): string {
  if (!MAY_NEED_ESCAPE.test(text)) return text;
  if (IS_ODD.test(text)) return text.replace(TO_ESCAPE, escaped);
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
}

/** Text for an attribute that has no such escapes: a sheet name, a defined name. */
export function escapeXml(text: string): string {
  return text.replace(/[&<>"]/g, escaped);
}

/** Text for the name of a table column, an attribute where a line break is written `_x000a_`. */
export function escapeColumnName(text: string): string {
  return escapeText(text).replace(/["\n\t]/g, (c) => (c === '"' ? "&quot;" : `_x${hex(c).toLowerCase()}_`));
}

/** The reverse of the `_xHHHH_` escapes in shared, inline and cached texts and in table column names. */
export function unescapeText(text: string): string {
  if (!text.includes("_x")) return text;
  return text.replace(/_x([0-9a-f]{4})_/gi, (_, code: string) => String.fromCharCode(parseInt(code, 16)));
}

/** The reverse of `escapeXml` for an attribute cut out of a part: the five entities and numbers, nothing else exists. */
export function unescapeXml(text: string): string {
  if (!text.includes("&")) return text;
  return text.replace(
    /&(?:#x([0-9a-f]+)|#(\d+)|(lt|gt|amp|quot|apos));/gi,
    (_, h?: string, d?: string, name?: string) =>
      name ? NAMED[name.toLowerCase()]! : String.fromCodePoint(h ? parseInt(h, 16) : Number(d)),
  );
}

function escaped(letter: string): string {
  return ENTITIES[letter] ?? (letter === "_" ? "_x005F_" : `_x${hex(letter)}_`);
}

/** One pass for most texts: no entity, no underscore, nothing that XML cannot hold, no half of a surrogate pair. */
const MAY_NEED_ESCAPE = /[^\t\n\u0020-%'-;=?-^`-\ud7ff\ue000-\ufffd]/;
/** More than the three entities. */
const IS_ODD = /_x|[^\t\n\u0020-\ud7ff\ue000-\ufffd]/;
// The last: control letters, carriage return (XML turns it into a line feed), halves of a surrogate pair, and the two
// non-letters.
const TO_ESCAPE = /[&<>]|_(?=x[0-9a-fA-F]{4}_)|[^\t\n\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu;
const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };
const NAMED: Readonly<Record<string, string>> = { lt: "<", gt: ">", amp: "&", quot: '"', apos: "'" };

function hex(letter: string): string {
  return letter.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0");
}
