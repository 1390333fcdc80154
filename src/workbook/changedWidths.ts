import { attributeIn, childrenOf, openTag, startTag, withAttribute, type Place } from "./scan";
import type { SheetText } from "./sheetText";
import type { SheetChanges } from "./sheetChanges";

/** The list of column widths with the new ones; a stretch of columns that covers a new one is cut around it. */
export function changedWidths(
  { xml, data }: SheetText,
  cols: Place | undefined,
  { widths, hidden }: Pick<SheetChanges, "widths" | "hidden">,
): string {
  const p = data.prefix;
  const stretches: { first: number; last: number; tag: string }[] = [];
  for (const place of cols ? childrenOf(xml, cols) : []) {
    const tag = `${openTag(startTag(xml, place))}/>`;
    stretches.push({ first: Number(attributeIn(tag, "min")), last: Number(attributeIn(tag, "max")), tag });
  }
  for (const [column, width] of widths) {
    const at = stretches.findIndex(({ first, last }) => first <= column && column <= last);
    const old = stretches[at];
    const base = old ? withAttribute(old.tag, "bestFit", undefined) : `<${p}col min="1" max="1"/>`;
    const wide = withAttribute(
      withAttribute(withAttribute(base, "hidden", hidden?.has(column) ? "1" : undefined), "width", String(width)),
      "customWidth",
      "1",
    );
    const pieces = [{ first: column, last: column, tag: wide }];
    if (old && old.first < column) pieces.unshift({ ...old, last: column - 1 });
    if (old && old.last > column) pieces.push({ ...old, first: column + 1 });
    stretches.splice(old ? at : stretches.length, old ? 1 : 0, ...pieces);
  }
  stretches.sort((a, b) => a.first - b.first);
  const list = stretches.map(({ first, last, tag }) =>
    withAttribute(withAttribute(tag, "min", String(first)), "max", String(last)),
  );
  return `<${p}cols>${list.join("")}</${p}cols>`;
}
