import { areaName, parseArea } from "../cellRef";
import { escapeText, escapeXml, unescapeXml } from "../escape";
import { attributeIn, withAttribute } from "../scan";
import { areaAfter, placeAfter, type Shift } from "./shift";
import { shiftedFormula } from "./shiftedFormula";

/** Comments, or the threads of newer programs, with their cells; those of cells that go are left out. */
export function shiftedComments(xml: string, shift: Shift): string {
  return xml.replace(
    /<((?:\w+:)?(?:comment|threadedComment))\b([^>]*?)(?:\/>|>[\s\S]*?<\/\1>)/g,
    (comment, name: string, attributes: string) => {
      const area = parseArea(attributeIn(`<${name}${attributes}>`, "ref") ?? "");
      if (area === undefined) return comment;
      const after = areaAfter(area, shift);
      const end = 1 + name.length + attributes.length;
      return after === undefined
        ? ""
        : withAttribute(`${comment.slice(0, end)}>`, "ref", areaName(after)).slice(0, -1) + comment.slice(end);
    },
  );
}

/** The frames of comments and of old buttons; those of comments that go are left out. Rows and columns count from 0. */
export function shiftedFrames(xml: string, shift: Shift): string {
  return xml.replace(/<(?:\w+:)?shape\b[\s\S]*?<\/(?:\w+:)?shape>/g, (shape) => {
    const tag = shift.axis === "row" ? "Row" : "Column";
    let isGone = false;
    const moved = shape
      .replace(new RegExp(`(<(?:\\w+:)?${tag}>\\s*)(\\d+)`, "g"), (_, start: string, digits: string) => {
        const now = placeAfter(Number(digits) + 1, shift);
        isGone ||= now === undefined;
        return `${start}${(now ?? 1) - 1}`;
      })
      .replace(/(<(?:\w+:)?Anchor>)([^<]*)/g, (_, start: string, list: string) => {
        const numbers = list.split(",").map((each) => each.trim());
        const places = shift.axis === "row" ? [2, 6] : [0, 4];
        for (const i of places) if (numbers[i] !== undefined) numbers[i] = String(edgeAfter(Number(numbers[i]), shift));
        return start + numbers.join(", ");
      })
      .replace(/(<(?:\w+:)?FmlaLink>)([^<]*)/g, (_, start: string, formula: string) => {
        return start + escapeText(shiftedFormula(unescapeXml(formula), shift.sheet, shift));
      });
    return isGone ? "" : moved;
  });
}

/** Pictures and charts over the cells: their corners move with the cells they lie on. Rows and columns count from 0. */
export function shiftedAnchors(xml: string, shift: Shift): string {
  const name = shift.axis === "row" ? "row" : "col";
  return xml.replace(/<((?:\w+:)?(?:twoCellAnchor|oneCellAnchor))\b[\s\S]*?<\/\1>/g, (anchor) => {
    const end = anchor.indexOf(">");
    if (/editAs\s*=\s*["']absolute/.test(anchor.slice(0, end))) return anchor;
    return anchor.replace(
      new RegExp(`(<((?:\\w+:)?(?:from|to))>[\\s\\S]*?<((?:\\w+:)?${name})>)(\\d+)(</\\3>)`, "g"),
      (_, before: string, _corner, _tag, digits: string, after: string) => {
        return `${before}${edgeAfter(Number(digits), shift)}${after}`;
      },
    );
  });
}

/** The edge of something that floats: where its row goes, it lies at what comes after. */
function edgeAfter(from0: number, shift: Shift): number {
  const now = placeAfter(from0 + 1, shift);
  return (now ?? shift.at) - 1;
}

/** Formulas of a chart or a drawing, which name the sheet of their cells. */
export function partWithFormulas(xml: string, shift: Shift): string {
  return xml
    .replace(/(<((?:\w+:)?f)\b[^>]*>)([^<]*)(<\/\2>)/g, (_, start: string, _name, formula: string, end: string) => {
      return start + escapeText(shiftedFormula(unescapeXml(formula), undefined, shift)) + end;
    })
    .replace(/(\s(?:textlink|fmlaLink|fmlaRange)=)("[^"]*"|'[^']*')/g, (_, start: string, quoted: string) => {
      return `${start}"${escapeXml(shiftedFormula(unescapeXml(quoted.slice(1, -1)), undefined, shift))}"`;
    });
}

/** Where a pivot table takes its rows from. */
export function shiftedPivotSource(xml: string, shift: Shift): string {
  return xml.replace(/<(?:\w+:)?worksheetSource\b[^>]*>/g, (tag) => {
    const area = parseArea(attributeIn(tag, "ref") ?? "");
    const sheet = unescapeXml(attributeIn(tag, "sheet") ?? "");
    if (area === undefined || sheet.toLowerCase() !== shift.sheet.toLowerCase()) return tag;
    const after = areaAfter(area, shift);
    return after === undefined ? tag : withAttribute(tag, "ref", areaName(after));
  });
}

/** Where a pivot table of the sheet lies. */
export function shiftedPivotPlace(xml: string, shift: Shift): string {
  return xml.replace(/<(?:\w+:)?location\b[^>]*>/g, (tag) => {
    const area = parseArea(attributeIn(tag, "ref") ?? "");
    const after = area && areaAfter(area, shift);
    return after === undefined ? tag : withAttribute(tag, "ref", areaName(after));
  });
}
