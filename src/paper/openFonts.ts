import { create, type Font } from "fontkit";
import type { FontLoader, FontName } from "./fonts";

type Laid = ReturnType<Font["layout"]>;

/** By loader: reading a font's tables takes longer than setting a page in it. */
const opened = new WeakMap<FontLoader, Map<FontName, Promise<Font>>>();

/**
 * A font for one document. Its tables are read once for all documents of a loader; what it remembers of letters is its
 * own, so that a document is the same whatever was printed before.
 *
 * @throws what the loader throws; it is asked again the next time
 */
export async function fontOfFile(name: FontName, load: FontLoader): Promise<Font> {
  const fonts = opened.get(load) ?? new Map<FontName, Promise<Font>>();
  opened.set(load, fonts);
  const whole = fonts.get(name) ?? load(name).then((bytes) => create(bytes as Buffer) as Font);
  fonts.set(name, whole);
  try {
    return forDocument(await whole);
  } catch (error) {
    fonts.delete(name);
    throw error;
  }
}

/** Each word is laid out once: what was measured is handed to the first who asks again, which is the PDF. */
function forDocument(whole: Font): Font {
  const font = Object.assign(Object.create(whole) as Font, { _glyphs: {} });
  const measured = new Map<string, Laid>();
  font.layout = (text, ...how) => {
    if (how[0] !== undefined) return whole.layout.call(font, text, ...how);
    const known = measured.get(text);
    if (known === undefined) {
      if (measured.size > MOST_MEASURED) measured.clear();
      const laid = whole.layout.call(font, text);
      measured.set(text, laid);
      return laid;
    }
    // It may be changed by whoever asked.
    measured.delete(text);
    return known;
  };
  return font;
}

const MOST_MEASURED = 20_000;
