import { FONTS, type FontName } from "./fonts";

/** The name of a font in the folder `fonts` of a build. */
export function fontFileName(name: FontName): string {
  return FONTS[name].path.split("/").at(-1)!;
}
