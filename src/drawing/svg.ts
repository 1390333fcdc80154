/** Attributes of an element; one that is undefined is left out. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** An element as text. Attribute values are escaped; children are markup already. */
export function element(name: string, attributes: Attributes, ...children: readonly string[]): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${escaped(String(value))}"`)
    .join("");
  return children.length === 0 ? `<${name}${written}/>` : `<${name}${written}>${children.join("")}</${name}>`;
}

/** Text for an element or attribute; what XML cannot hold is shown as an empty box. */
export function escaped(text: string): string {
  return text.replace(NOT_IN_XML, "\u25a1").replace(/[&<>"]/g, (letter) => ENTITIES[letter] ?? letter);
}

// Control letters, halves of a surrogate pair, and the two non-letters.
const NOT_IN_XML = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu;
const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };
