/**
 * A measure's text with its typography made plain, so that the scanners know one way of writing each thing: single
 * spaces, `10 3/8` for `10⅜`, `-` for every dash, `x` for every multiplication sign, `'` and `"` for every prime or quote.
 *
 * Only marks whose meaning cannot change are rewritten: a superscript outside a fraction stays and is refused later
 * (`10²` must not become 102).
 */
export function plainText(text: string): string {
  if (PLAIN_ALREADY.test(text)) return text;
  return text
    .normalize("NFC")
    .replace(INVISIBLE, "")
    .replace(RAISED_FRACTION, (_, over: string, under: string) => ` ${compatible(over)}/${compatible(under)}`)
    .replace(VULGAR_FRACTION, (mark) => ` ${compatible(mark)}`)
    .replace(WIDE_OR_SQUARED, compatible)
    .replace(/[\u2044\u2215]/g, "/")
    .replace(/[\u2010-\u2015\u2212]/g, "-")
    .replace(/[\u00d7\u2715\u2716\u2a2f]/g, "x")
    .replace(CYRILLIC_TIMES, "x")
    .replace(ARABIC_FIGURE, (figure) => String((figure.charCodeAt(0) & FIGURE_BITS) % DECADE))
    .replace(/[\u2033\u201c\u201d\u201f\u02ba\u3003]/g, '"')
    .replace(/[\u2032\u2018\u2019\u201b\u02b9\u00b4`]/g, "'")
    .replace(/''/g, '"')
    .replace(/[\s\u200b]+/g, " ")
    .trim();
}

/** ASCII with single spaces, without the backquote and the two apostrophes that stand for a double prime. */
const PLAIN_ALREADY = /^(?!.*'')[!-_a-~]+(?: [!-_a-~]+)*$/;
/** Direction marks, joiners and soft hyphens that come along when text is copied. */
const INVISIBLE = /\u200c|\u200d|[\u200e\u200f\u00ad\u202a-\u202e\u2060]/g;
const RAISED_FRACTION = /([\u2070\u00b9\u00b2\u00b3\u2074-\u2079]{1,9})[\u2044/]([\u2080-\u2089]+)/g;
const VULGAR_FRACTION = /[\u00bc-\u00be\u2150-\u215e]/g;
/** The Cyrillic letter that looks like an x, between measures. */
const CYRILLIC_TIMES = /(?<=[\d\s)м])[хХ](?=\s?(?:[\d(]|[вшгтд]\.?\s?\d))/gi;
const ARABIC_FIGURE = /[\u0660-\u0669\u06f0-\u06f9]/g;
const FIGURE_BITS = 0xf;
const DECADE = 10;
/** Full-width letters and figures, and the squared units kg, mm, cm. */
const WIDE_OR_SQUARED = /[\uff01-\uff5e\u338e\u338f\u339c-\u339e]/g;

function compatible(text: string): string {
  return text.normalize("NFKC");
}
