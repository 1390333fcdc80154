import { areaName, parseArea } from "../cellRef";
import { escapeText, escapeXml, unescapeXml } from "../escape";
import { movedFormula } from "../relativeFormula";
import { attributeIn, childrenOf, openTag, startTag, withAttribute, type Place } from "../scan";
import { rowsOf, type SheetText } from "../sheetEditor";
import { areaAfter, mostOf, placeAfter, spanAfter, type Shift } from "./shift";
import { shiftedFormula } from "./shiftedFormula";
import { rowReader, shiftedRows, withFormula, type AroundTables } from "./shiftedRows";

/** Writes a sheet whose own rows or columns shift. */
export function shiftedSheet(text: SheetText, shift: Shift, around: AroundTables, push: (xml: string) => void): void {
  const { xml, parts, data } = text;
  let at = 0;
  for (const part of parts) {
    push(xml.slice(at, part.start));
    at = part.end;
    if (part === data) shiftedRows(text, shift, around, push);
    else if (part.name === "cols")
      push(shift.axis === "column" ? shiftedColumns(xml, part, shift) : xml.slice(part.start, part.end));
    else if (part.name === "sheetViews") push(shiftedViews(xml.slice(part.start, part.end), shift));
    else if (part.name === "rowBreaks" || part.name === "colBreaks") push(shiftedBreaks(xml, part, shift));
    else push(shiftedPart(xml, part, text.sheet, shift));
  }
  push(xml.slice(at));
}

/** Another sheet, with the formulas that name the shifted one; undefined when none does. */
export function sheetWithFormulas(text: SheetText, shift: Shift): string | undefined {
  const { xml, parts, data, sheet } = text;
  const names = namesSheet(shift.sheet);
  if (!names(unescapeXml(xml))) return undefined;
  const pieces: string[] = [];
  let at = 0;
  const cellsIn = rowReader(text);
  for (const { place, row } of rowsOf(text)) {
    for (const cell of cellsIn(place, row)) {
      if (cell.formula === undefined || !names(cell.formula)) {
        // A cell that shares the formula of one that changes has it alone from now on.
        if (cell.formula === undefined || !/\bt=["']shared/.test(cell.inside)) continue;
      }
      pieces.push(
        xml.slice(at, cell.place.openEnd),
        withFormula(cell, xml, shiftedFormula(cell.formula, sheet, shift)),
      );
      at = cell.place.end;
    }
  }
  pieces.push(xml.slice(at, data.end));
  at = data.end;
  for (const part of parts.filter(({ start }) => start >= data.end)) {
    pieces.push(xml.slice(at, part.start), shiftedPart(xml, part, sheet, shift));
    at = part.end;
  }
  pieces.push(xml.slice(at));
  const changed = pieces.join("");
  return changed === xml ? undefined : changed;
}

/** Whether a text may hold a reference to that sheet. */
export function namesSheet(sheet: string): (text: string) => boolean {
  const [plain, quoted] = [`${sheet.toLowerCase()}!`, `${sheet.replaceAll("'", "''").toLowerCase()}'!`];
  return (text) => {
    const lowered = text.toLowerCase();
    return lowered.includes(plain) || lowered.includes(quoted);
  };
}

/** Elements of a sheet that hold its own cells, by the attribute that names them. */
const OWN_CELLS: Readonly<Record<string, string>> = {
  dimension: "ref",
  mergeCell: "ref",
  hyperlink: "ref",
  autoFilter: "ref",
  sortState: "ref",
  sortCondition: "ref",
  conditionalFormatting: "sqref",
  dataValidation: "sqref",
  protectedRange: "sqref",
  ignoredError: "sqref",
  cellWatch: "r",
};

/** Lists that name how many they hold. */
const COUNTED = ["mergeCells", "dataValidations"];

/** Everything else of a sheet: areas, and the formulas beside them. An element whose cells are all gone goes too. */
function shiftedPart(xml: string, part: Place, sheet: string, shift: Shift): string {
  const isHome = sheet.toLowerCase() === shift.sheet.toLowerCase();
  const changed = (place: Place, anchors: Anchors | undefined): string | undefined => {
    const tag = startTag(xml, place);
    const name = OWN_CELLS[place.name];
    const own = isHome && name !== undefined ? shiftedAreas(attributeIn(tag, name) ?? "", shift) : undefined;
    if (own === "") return undefined;
    const children = [...childrenOf(xml, place)];
    // In an extension the cells come after the formulas, in an element of their own.
    const apart = isHome ? children.find((child) => child.name === "sqref") : undefined;
    const areas = apart === undefined ? undefined : xml.slice(apart.openEnd, apart.closeStart).trim();
    if (areas !== undefined && shiftedAreas(areas, shift) === "") return undefined;
    const here =
      own === undefined && areas === undefined
        ? anchors
        : anchorsOf(attributeIn(tag, name ?? "") ?? areas ?? "", shift);
    let open = own === undefined ? tag : withAttribute(tag, name!, own);
    const location = place.name === "hyperlink" ? attributeIn(open, "location") : undefined;
    if (location !== undefined)
      open = withAttribute(open, "location", escapeXml(shiftedFormula(unescapeXml(location), undefined, shift)));
    if (children.length === 0) {
      const inside = xml.slice(place.openEnd, place.closeStart);
      const now =
        place.name === "sqref" && isHome
          ? shiftedAreas(inside.trim(), shift)
          : FORMULAS.test(place.name)
            ? escapeText(ruleFormula(unescapeXml(inside), sheet, shift, isHome ? here : undefined))
            : inside;
      return open + now + xml.slice(place.closeStart, place.end);
    }
    const kept: string[] = [];
    let at = place.openEnd;
    let left = 0;
    for (const child of children) {
      const now = isFilterColumn(place, child, isHome, shift)
        ? shiftedFilterColumn(xml, place, child, shift)
        : changed(child, here);
      kept.push(xml.slice(at, child.start), now ?? "");
      at = child.end;
      if (now !== undefined) left++;
    }
    if (left === 0 && EMPTY_GOES.test(place.name)) return undefined;
    if (COUNTED.includes(place.name)) open = withAttribute(open, "count", String(left));
    return open + kept.join("") + xml.slice(at, place.end);
  };
  return changed(part, undefined) ?? "";
}

/** Elements that hold a formula: of conditional formats, validations, and their extensions. */
const FORMULAS = /^(?:formula|formula1|formula2|f)$/;
/** Lists and rules that may not stand empty. */
const EMPTY_GOES =
  /^(?:mergeCells|dataValidations|hyperlinks|protectedRanges|ignoredErrors|cellWatches|conditionalFormattings|sparklines|sparklineGroup|sparklineGroups|ext)$/;

/** The first cell of a rule before, and that of its cells that stay: its relative formulas read from there. */
interface Anchors {
  readonly down: number;
  readonly across: number;
}

function anchorsOf(areas: string, shift: Shift): Anchors | undefined {
  const first = parseArea(areas.trim().split(/\s+/)[0] ?? "");
  if (first === undefined || !shift.goes) return undefined;
  const place = shift.axis === "row" ? first.top : first.left;
  const end = shift.at + shift.count;
  const moved = place >= shift.at && place < end ? end - place : 0;
  return shift.axis === "row" ? { down: moved, across: 0 } : { down: 0, across: moved };
}

function ruleFormula(formula: string, sheet: string, shift: Shift, anchors: Anchors | undefined): string {
  const anchored = anchors === undefined ? formula : movedFormula(formula, anchors.down, anchors.across);
  return shiftedFormula(anchored, sheet, shift);
}

/** `A1:B2 D4` afterwards; empty when all goes. */
export function shiftedAreas(areas: string, shift: Shift): string {
  return areas
    .split(/\s+/)
    .flatMap((each) => {
      const area = parseArea(each);
      // A whole column or row: as a formula of that sheet would name it.
      if (area === undefined) {
        const other = shiftedFormula(each, shift.sheet, shift);
        return other === "#REF!" ? [] : [other];
      }
      const after = areaAfter(area, shift);
      return after === undefined ? [] : [areaName(after)];
    })
    .join(" ");
}

function isFilterColumn(place: Place, child: Place, isHome: boolean, { axis }: Shift): boolean {
  return isHome && axis === "column" && place.name === "autoFilter" && child.name === "filterColumn";
}

/** A filter names its columns by their distance from its first. */
export function shiftedFilterColumn(xml: string, filter: Place, column: Place, shift: Shift): string | undefined {
  const area = parseArea(attributeIn(startTag(xml, filter), "ref") ?? "");
  const tag = startTag(xml, column);
  if (area === undefined) return xml.slice(column.start, column.end);
  const now = placeAfter(area.left + Number(attributeIn(tag, "colId")), shift);
  const left = areaAfter(area, shift)?.left;
  if (now === undefined || left === undefined) return undefined;
  return withAttribute(tag, "colId", String(now - left)) + xml.slice(column.openEnd, column.end);
}

/** The widths and looks of columns; new ones are like the column before them. */
function shiftedColumns(xml: string, cols: Place, shift: Shift): string {
  const p = cols.prefix;
  const list = [...childrenOf(xml, cols)].flatMap((place) => {
    const tag = `${openTag(startTag(xml, place))}/>`;
    const [first, last] = [Number(attributeIn(tag, "min")), Number(attributeIn(tag, "max"))];
    const span = spanAfter({ first, last }, shift);
    if (span === undefined) return [];
    const grown =
      !shift.goes && last === shift.at - 1 ? { ...span, last: Math.min(mostOf(shift), last + shift.count) } : span;
    return [withAttribute(withAttribute(tag, "min", String(grown.first)), "max", String(grown.last))];
  });
  return list.length === 0 ? "" : `<${p}cols>${list.join("")}</${p}cols>`;
}

/** Frozen rows and columns, the selected cells, the first cell in sight. */
function shiftedViews(views: string, shift: Shift): string {
  return views.replace(/<[^<>]+>/g, (tag) => {
    let changed = tag;
    for (const name of ["topLeftCell", "activeCell", "sqref"]) {
      const now = attributeIn(tag, name);
      if (now !== undefined) changed = withAttribute(changed, name, shiftedAreas(now, shift) || "A1");
    }
    const split = shift.axis === "row" ? "ySplit" : "xSplit";
    const frozen = /state\s*=\s*["']frozen/.test(tag) ? Number(attributeIn(tag, split) ?? 0) : 0;
    if (frozen > 0) {
      const after = spanAfter({ first: 1, last: frozen }, shift);
      const last = (after?.last ?? 0) - (after === undefined ? 0 : after.first - 1);
      changed = withAttribute(changed, split, last > 0 ? String(last) : undefined);
    }
    return changed;
  });
}

/** Breaks of pages stand before a row or column. */
function shiftedBreaks(xml: string, breaks: Place, shift: Shift): string {
  const own = (shift.axis === "row") === (breaks.name === "rowBreaks");
  if (!own) return xml.slice(breaks.start, breaks.end);
  const list = [...childrenOf(xml, breaks)].flatMap((place) => {
    const tag = startTag(xml, place);
    const now = placeAfter(Number(attributeIn(tag, "id")) + 1, shift);
    return now === undefined ? [] : [withAttribute(tag, "id", String(now - 1)) + xml.slice(place.openEnd, place.end)];
  });
  if (list.length === 0) return "";
  let tag = startTag(xml, breaks);
  for (const name of ["count", "manualBreakCount"])
    if (attributeIn(tag, name) !== undefined) tag = withAttribute(tag, name, String(list.length));
  return tag + list.join("") + xml.slice(breaks.closeStart, breaks.end);
}
