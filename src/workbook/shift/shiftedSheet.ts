import { unescapeXml } from "../escape";
import { attributeIn, childrenOf, openTag, startTag, withAttribute, type Place } from "../scan";
import { rowsOf, type SheetText } from "../sheetText";
import { mostOf, placeAfter, spanAfter, type Shift } from "./shift";
import { shiftedFormula } from "./shiftedFormula";
import { rowReader, shiftedRows, withFormula, type AroundTables } from "./shiftedRows";
import { shiftedAreas } from "./shiftedAreas";
import { shiftedPart } from "./shiftedPart";

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
