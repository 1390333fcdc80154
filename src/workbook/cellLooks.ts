import { isTrue, type Workbook } from "./openWorkbook";
import { neededPart } from "./parts";
import { attribute, readXml, type XmlTag } from "./readXml";
import { BUILT_IN_FORMATS } from "./builtInFormats";
import { stylesPart } from "./readStyles";
import { themeColoursOf, tinted } from "./themeColours";

/** How a cell style looks, as far as a page shows it. Colours are `#rrggbb`. */
export interface CellLook {
  /** Number format, `General` unless the style says otherwise. */
  readonly format: string;
  readonly bold: boolean;
  readonly italic: boolean;
  readonly colour: string | undefined;
  readonly fill: string | undefined;
  readonly align: "left" | "center" | "right" | undefined;
  readonly wrap: boolean;
}

/** The looks of a workbook's cell styles; a cell's `s` is the place in the list. */
export function cellLooksOf(workbook: Workbook): readonly CellLook[] {
  const part = stylesPart(workbook);
  if (part === undefined) return [];
  const theme = themeColoursOf(workbook);
  const formats = new Map<number, string>();
  const fonts: Font[] = [];
  const fills: (string | undefined)[] = [];
  const looks: CellLook[] = [];
  let list = "";
  let pattern = "";
  const open = (tag: XmlTag): void => {
    if (LISTS.includes(tag.local)) list = tag.local;
    if (tag.local === "numFmt") formats.set(Number(attribute(tag, "numFmtId")), attribute(tag, "formatCode") ?? "");
    if (list === "fonts") {
      const font = fonts.at(-1);
      if (tag.local === "font") fonts.push({ bold: false, italic: false, colour: undefined });
      else if (font && tag.local === "b") font.bold = isOn(tag);
      else if (font && tag.local === "i") font.italic = isOn(tag);
      else if (font && tag.local === "color") font.colour = colourOf(tag, theme);
    }
    if (list === "fills") {
      if (tag.local === "fill") fills.push(undefined);
      else if (tag.local === "patternFill") pattern = attribute(tag, "patternType") ?? "none";
      else if (tag.local === "fgColor" && pattern === "solid") fills[fills.length - 1] = colourOf(tag, theme);
    }
    if (list !== "cellXfs") return;
    if (tag.local === "xf") looks.push(lookOf(tag, formats, fonts, fills));
    if (tag.local === "alignment" && looks.length > 0) looks[looks.length - 1] = aligned(looks.at(-1)!, tag);
  };
  readXml(neededPart(workbook.zip, part), {
    open: (tag) => {
      if (tag.uri === workbook.namespace) open(tag);
    },
    close: (tag) => {
      if (tag.local === list) list = "";
    },
  });
  return looks;
}

interface Font {
  bold: boolean;
  italic: boolean;
  colour: string | undefined;
}

const LISTS = ["fonts", "fills", "cellStyleXfs", "cellXfs", "dxfs"];

function lookOf(
  tag: XmlTag,
  formats: ReadonlyMap<number, string>,
  fonts: readonly Font[],
  fills: readonly (string | undefined)[],
): CellLook {
  const format = Number(attribute(tag, "numFmtId") ?? 0);
  const font = fonts[Number(attribute(tag, "fontId") ?? 0)];
  return {
    format: formats.get(format) ?? BUILT_IN_FORMATS[format] ?? "General",
    bold: font?.bold ?? false,
    italic: font?.italic ?? false,
    colour: font?.colour,
    fill: fills[Number(attribute(tag, "fillId") ?? 0)],
    align: undefined,
    wrap: false,
  };
}

function aligned(look: CellLook, tag: XmlTag): CellLook {
  const horizontal = attribute(tag, "horizontal");
  const align = horizontal === "left" || horizontal === "center" || horizontal === "right" ? horizontal : undefined;
  return { ...look, align, wrap: isTrue(attribute(tag, "wrapText")) };
}

/** `<b/>` means bold, `<b val="0"/>` not. */
function isOn(tag: XmlTag): boolean {
  const value = attribute(tag, "val");
  return value === undefined || isTrue(value);
}

/** A colour given outright or by the theme; those of the old numbered palette are left out. */
function colourOf(tag: XmlTag, theme: readonly string[]): string | undefined {
  const rgb = attribute(tag, "rgb");
  if (rgb !== undefined && /^([0-9a-f]{2})?[0-9a-f]{6}$/i.test(rgb)) return `#${rgb.slice(-6).toLowerCase()}`;
  const place = attribute(tag, "theme");
  const colour = place === undefined ? undefined : theme[Number(place)];
  return colour === undefined ? undefined : tinted(colour, Number(attribute(tag, "tint") ?? 0));
}
