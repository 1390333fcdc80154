import { parseArea } from "../cellRef";
import { escapeText, escapeXml, unescapeXml } from "../escape";
import { movedFormula } from "../relativeFormula";
import { attributeIn, childrenOf, startTag, withAttribute, type Place } from "../scan";
import { areaAfter, placeAfter, type Shift } from "./shift";
import { shiftedFormula } from "./shiftedFormula";
import { shiftedAreas } from "./shiftedAreas";

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
export function shiftedPart(xml: string, part: Place, sheet: string, shift: Shift): string {
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
