/** A font that pages are set in: where its package keeps it, and the writing that needs it. */
export interface FontFile {
  readonly package: string;
  readonly path: string;
  /** Undefined for the two that are always used. */
  readonly writing: RegExp | undefined;
}

/**
 * Open fonts (SIL Open Font License), whole, from packages. The first that has a letter sets it; regular or bold comes
 * first as the text asks.
 */
export const FONTS = {
  regular: { package: "@embedpdf/fonts-latin", path: "fonts/NotoSans-Regular.ttf", writing: undefined },
  bold: { package: "@embedpdf/fonts-latin", path: "fonts/NotoSans-Bold.ttf", writing: undefined },
  arabic: {
    package: "@embedpdf/fonts-arabic",
    path: "fonts/NotoNaskhArabic-Regular.ttf",
    writing: /\p{Script=Arabic}/u,
  },
  hebrew: {
    package: "@embedpdf/fonts-hebrew",
    path: "fonts/NotoSansHebrew-Regular.ttf",
    writing: /\p{Script=Hebrew}/u,
  },
  han: {
    package: "@embedpdf/fonts-sc",
    path: "fonts/NotoSansHans-Regular.otf",
    writing:
      /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Bopomofo}\u2190-\u2bff\u3000-\u303f\uff00-\uffef]/u,
  },
  hangul: {
    package: "@expo-google-fonts/gowun-dodum",
    path: "400Regular/GowunDodum_400Regular.ttf",
    writing: /\p{Script=Hangul}/u,
  },
} as const satisfies Readonly<Record<string, FontFile>>;

export type FontName = keyof typeof FONTS;

export const FONT_NAMES = Object.keys(FONTS) as readonly FontName[];

/** Gives the bytes of a font: from a folder, or fetched by a page. */
export type FontLoader = (name: FontName) => Promise<Uint8Array>;

/** The fonts that some texts need. A font of 8 MB is not read for a survey in English. */
export function fontsNeeded(texts: Iterable<string>): readonly FontName[] {
  const needed = new Set<FontName>(FONT_NAMES.filter((name) => FONTS[name].writing === undefined));
  for (const text of texts)
    for (const name of FONT_NAMES) if (!needed.has(name) && FONTS[name].writing?.test(text) === true) needed.add(name);
  return FONT_NAMES.filter((name) => needed.has(name));
}
