import type { Workbook } from "./openWorkbook";
import { attribute, type XmlTag } from "./readXml";
import { themeColoursOf, tinted } from "./themeColours";

/** Reads a colour given outright or by the theme, `#rrggbb`; those of the old numbered palette are left out. */
export function colourReader(workbook: Workbook): (tag: XmlTag) => string | undefined {
  const theme = themeColoursOf(workbook);
  return (tag) => {
    const rgb = attribute(tag, "rgb");
    if (rgb !== undefined && /^([0-9a-f]{2})?[0-9a-f]{6}$/i.test(rgb)) return `#${rgb.slice(-6).toLowerCase()}`;
    const place = attribute(tag, "theme");
    const colour = place === undefined ? undefined : theme[Number(place)];
    return colour === undefined ? undefined : tinted(colour, Number(attribute(tag, "tint") ?? 0));
  };
}
