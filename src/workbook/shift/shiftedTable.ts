import { areaName } from "../cellRef";
import { escapeColumnName, escapeText, unescapeXml } from "../escape";
import type { TableInfo } from "../readTable";
import { attributeIn, childOf, childrenOf, rootOf, startTag, withAttribute } from "../scan";
import { remove, spliced, type Splice } from "../splice";
import { areaAfter, type Shift } from "./shift";
import { shiftedFormula } from "./shiftedFormula";
import { shiftedFilterColumn } from "./shiftedPart";
import { shiftedAreas } from "./shiftedAreas";

/** Names for the new columns of a table, which no column of it has. */
export function newColumnNames({ area, columns }: TableInfo, { axis, at, count, goes }: Shift): readonly string[] {
  if (axis !== "column" || goes || at <= area.left || at > area.right) return [];
  const taken = new Set(columns.map((column) => column.toLowerCase()));
  const names: string[] = [];
  for (let number = 1; names.length < count; number++) if (!taken.has(`column${number}`)) names.push(`Column${number}`);
  return names;
}

/** The part of a table, with its cells, columns, filter and formulas; `isHome` when its own sheet shifts. */
export function shiftedTable(xml: string, table: TableInfo, shift: Shift): string {
  const root = rootOf(xml);
  const isHome = table.sheet.toLowerCase() === shift.sheet.toLowerCase();
  const splices: Splice[] = [];
  const list = childOf(xml, root, "tableColumns");
  const places = list === undefined ? [] : [...childrenOf(xml, list)];
  const gone = new Set<number>();
  if (isHome) {
    const area = areaAfter(table.area, shift)!;
    splices.push({
      start: root.start,
      end: root.openEnd,
      text: withAttribute(startTag(xml, root), "ref", areaName(area)),
    });
    for (const name of ["autoFilter", "sortState"]) {
      const place = childOf(xml, root, name);
      if (place === undefined) continue;
      const tag = startTag(xml, place);
      const now = shiftedAreas(attributeIn(tag, "ref") ?? "", shift);
      if (now === "") {
        splices.push(remove(place));
        continue;
      }
      splices.push({ start: place.start, end: place.openEnd, text: withAttribute(tag, "ref", now) });
      for (const child of childrenOf(xml, place)) {
        const text =
          child.name === "filterColumn"
            ? shift.axis === "column"
              ? shiftedFilterColumn(xml, place, child, shift)
              : xml.slice(child.start, child.end)
            : sortCondition(xml.slice(child.start, child.end), shift);
        splices.push({ start: child.start, end: child.end, text: text ?? "" });
      }
    }
    if (list !== undefined && shift.axis === "column") {
      const added = newColumnNames(table, shift);
      if (shift.goes)
        places.forEach((place, i) => {
          const column = table.area.left + i;
          if (column < shift.at || column >= shift.at + shift.count) return;
          gone.add(i);
          splices.push(remove(place));
        });
      const ids = places.map((place) => Number(attributeIn(startTag(xml, place), "id")));
      const text = added.map(
        (name, i) =>
          `<${list.prefix}tableColumn id="${Math.max(0, ...ids) + 1 + i}" name="${escapeColumnName(name)}"/>`,
      );
      const before = places[shift.at - table.area.left];
      if (before !== undefined && text.length > 0)
        splices.push({ start: before.start, end: before.start, text: text.join("") });
      const count = String(places.length - gone.size + added.length);
      splices.push({ start: list.start, end: list.openEnd, text: withAttribute(startTag(xml, list), "count", count) });
    }
  }
  places.forEach((place, i) => {
    if (gone.has(i)) return;
    for (const child of childrenOf(xml, place)) {
      if (child.name !== "calculatedColumnFormula" && child.name !== "totalsRowFormula") continue;
      const before = unescapeXml(xml.slice(child.openEnd, child.closeStart));
      const after = shiftedFormula(before, table.sheet, shift);
      if (after !== before) splices.push({ start: child.openEnd, end: child.closeStart, text: escapeText(after) });
    }
  });
  return spliced(xml, splices);
}

function sortCondition(xml: string, shift: Shift): string {
  const end = xml.indexOf(">") + 1;
  const tag = xml.slice(0, end);
  const now = shiftedAreas(attributeIn(tag, "ref") ?? "", shift);
  return now === "" ? "" : withAttribute(tag, "ref", now) + xml.slice(end);
}
