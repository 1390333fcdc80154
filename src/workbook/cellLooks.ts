import { BUILT_IN_FORMATS } from "./builtInFormats";
import { colourReader } from "./colourReader";
import { isTrue, type Workbook } from "./openWorkbook";
import { neededPart } from "./parts";
import { attribute, readXml, type XmlTag } from "./readXml";
import { stylesPart } from "./readStyles";

/** How a cell style looks, as far as a page shows it. Colours are `#rrggbb`. */
export interface CellLook extends FontLook {
  /** Number format, `General` unless the style says otherwise. */
  readonly format: string;
  readonly fill: string | undefined;
  readonly borders: Borders;
  readonly align: "left" | "center" | "right" | undefined;
  readonly vertical: "top" | "center" | "bottom" | undefined;
  readonly wrap: boolean;
}

/** What a rule of a conditional format lays over the look of a cell. */
export interface RuleLook {
  readonly font: FontLook;
  readonly fill: string | undefined;
  readonly borders: Borders;
}

export interface FontLook {
  readonly bold: boolean;
  readonly italic: boolean;
  readonly underlined: boolean;
  readonly struck: boolean;
  readonly colour: string | undefined;
  /** Points. */
  readonly size: number | undefined;
}

export type Side = "left" | "right" | "top" | "bottom";

/** The lines around a cell, in the file format's words for them: `thin`, `double`, `dashDot`, ... */
export type Borders = Readonly<Partial<Record<Side, { readonly line: string; readonly colour: string | undefined }>>>;

/** The looks of a workbook's cell styles; a cell's `s` is the place in the list. */
export function cellLooksOf(workbook: Workbook): readonly CellLook[] {
  return looksOf(workbook).cells;
}

/** The looks that rules of conditional formats name by their place in the list. */
export function ruleLooksOf(workbook: Workbook): readonly RuleLook[] {
  return looksOf(workbook).rules;
}

interface Looks {
  readonly cells: readonly CellLook[];
  readonly rules: readonly RuleLook[];
}

type Font = { -readonly [Key in keyof FontLook]: FontLook[Key] };
type MutableBorders = { -readonly [Key in Side]?: { line: string; colour: string | undefined } };

const read = new WeakMap<Workbook, Looks>();

function looksOf(workbook: Workbook): Looks {
  const known = read.get(workbook);
  if (known) return known;
  const looks = readLooks(workbook);
  read.set(workbook, looks);
  return looks;
}

function readLooks(workbook: Workbook): Looks {
  const part = stylesPart(workbook);
  if (part === undefined) return { cells: [], rules: [] };
  const colourOf = colourReader(workbook);
  const formats = new Map<number, string>();
  const fonts: Font[] = [];
  const fills: { colour: string | undefined }[] = [];
  const borders: MutableBorders[] = [];
  const cells: CellLook[] = [];
  const rules: { font: Font; fill: { colour: string | undefined }; borders: MutableBorders }[] = [];
  let list = "";
  let pattern = "";
  let side: { line: string; colour: string | undefined } | undefined;
  const open = (tag: XmlTag): void => {
    if (LISTS.includes(tag.local)) list = tag.local;
    const rule = list === "dxfs" ? rules.at(-1) : undefined;
    if (tag.local === "numFmt" && list === "")
      formats.set(Number(attribute(tag, "numFmtId")), attribute(tag, "formatCode") ?? "");
    if (tag.local === "dxf") rules.push({ font: { ...PLAIN }, fill: { colour: undefined }, borders: {} });
    if (list === "fonts" && tag.local === "font") fonts.push({ ...PLAIN });
    if (list === "fills" && tag.local === "fill") fills.push({ colour: undefined });
    if (list === "borders" && tag.local === "border") borders.push({});
    const [font, fill] = [
      rule?.font ?? (list === "fonts" ? fonts.at(-1) : undefined),
      rule?.fill ?? (list === "fills" ? fills.at(-1) : undefined),
    ];
    const border = rule?.borders ?? (list === "borders" ? borders.at(-1) : undefined);
    if (tag.local === "patternFill") pattern = attribute(tag, "patternType") ?? (rule === undefined ? "none" : "solid");
    // A rule fills with what a cell style has behind its pattern.
    else if (fill && tag.local === (rule === undefined ? "fgColor" : "bgColor") && pattern === "solid")
      fill.colour = colourOf(tag);
    else if (border && isSide(tag.local)) {
      const line = attribute(tag, "style") ?? "none";
      side = { line, colour: undefined };
      if (line !== "none") border[tag.local] = side;
    } else if (side && tag.local === "color") side.colour = colourOf(tag);
    else if (font) readFont(font, tag, colourOf);
    if (list !== "cellXfs") return;
    if (tag.local === "xf") cells.push(lookOf(tag, { formats, fonts, fills, borders }));
    if (tag.local === "alignment" && cells.length > 0) cells[cells.length - 1] = aligned(cells.at(-1)!, tag);
  };
  readXml(neededPart(workbook.zip, part), {
    open: (tag) => {
      if (tag.uri === workbook.namespace) open(tag);
    },
    close: (tag) => {
      if (isSide(tag.local)) side = undefined;
      if (tag.local === list) list = "";
    },
  });
  return { cells, rules: rules.map(({ font, fill, borders: lines }) => ({ font, fill: fill.colour, borders: lines })) };
}

const PLAIN: FontLook = {
  bold: false,
  italic: false,
  underlined: false,
  struck: false,
  colour: undefined,
  size: undefined,
};

const LISTS = ["fonts", "fills", "borders", "cellStyleXfs", "cellXfs", "dxfs"];

function isSide(name: string): name is Side {
  return name === "left" || name === "right" || name === "top" || name === "bottom";
}

function readFont(font: Font, tag: XmlTag, colourOf: (tag: XmlTag) => string | undefined): void {
  if (tag.local === "b") font.bold = isOn(tag);
  else if (tag.local === "i") font.italic = isOn(tag);
  else if (tag.local === "u") font.underlined = attribute(tag, "val") !== "none";
  else if (tag.local === "strike") font.struck = isOn(tag);
  else if (tag.local === "color") font.colour = colourOf(tag);
  else if (tag.local === "sz") font.size = Number(attribute(tag, "val"));
}

function lookOf(
  tag: XmlTag,
  lists: {
    readonly formats: ReadonlyMap<number, string>;
    readonly fonts: readonly FontLook[];
    readonly fills: readonly { readonly colour: string | undefined }[];
    readonly borders: readonly Borders[];
  },
): CellLook {
  const format = Number(attribute(tag, "numFmtId") ?? 0);
  return {
    ...(lists.fonts[Number(attribute(tag, "fontId") ?? 0)] ?? PLAIN),
    format: lists.formats.get(format) ?? BUILT_IN_FORMATS[format] ?? "General",
    fill: lists.fills[Number(attribute(tag, "fillId") ?? 0)]?.colour,
    borders: lists.borders[Number(attribute(tag, "borderId") ?? 0)] ?? {},
    align: undefined,
    vertical: undefined,
    wrap: false,
  };
}

function aligned(look: CellLook, tag: XmlTag): CellLook {
  const [horizontal, vertical] = [attribute(tag, "horizontal"), attribute(tag, "vertical")];
  return {
    ...look,
    align: horizontal === "left" || horizontal === "center" || horizontal === "right" ? horizontal : undefined,
    vertical: vertical === "top" || vertical === "center" || vertical === "bottom" ? vertical : undefined,
    wrap: isTrue(attribute(tag, "wrapText")),
  };
}

/** `<b/>` means bold, `<b val="0"/>` not. */
function isOn(tag: XmlTag): boolean {
  const value = attribute(tag, "val");
  return value === undefined || isTrue(value);
}
