import { areaName, parseArea } from "./cellRef";
import { frozenViews } from "./frozenViews";
import { choicesChange } from "./listChoices";
import { attributeIn, startTag, withAttribute } from "./scan";
import type { SheetText } from "./sheetText";
import type { SheetChanges } from "./sheetChanges";
import { copier } from "./copier";
import { writeRows } from "./writeRows";
import { changedWidths } from "./changedWidths";

/**
 * Writes the sheet with its changes, piece by piece. What does not change is copied letter for letter.
 *
 * @param push receives the text
 * @throws InputError when a change would break a formula that several cells share
 */
export function writeSheet(
  text: SheetText,
  changes: SheetChanges,
  push: (text: string) => void,
  onProgress?: (fraction: number) => void,
): void {
  const { xml, parts, data } = text;
  const out = copier(xml, push);
  const cols = parts.find((part) => part.name === "cols");
  const views = parts.find((part) => part.name === "sheetViews");
  const viewed = changes.frozen && frozenViews(xml, views, data.prefix, changes.frozen);
  // The views come before what follows the sheet's own properties and size.
  const afterViews = parts.find(({ name }) => name !== "sheetPr" && name !== "dimension");
  const lists = choicesChange(xml, parts, data.prefix, changes.choices ?? []);
  for (const part of parts) {
    if (viewed !== undefined && views === undefined && part === afterViews) out.insert(part.start, viewed);
    if (viewed !== undefined && part === views) out.replace(part.start, part.end, viewed);
    else if (part.name === "dimension")
      out.replace(part.start, part.openEnd, grownDimension(startTag(xml, part), changes));
    else if (part === cols && changes.widths.size > 0)
      out.replace(part.start, part.end, changedWidths(text, part, changes));
    else if (part === data) {
      if (!cols && changes.widths.size > 0) out.insert(data.start, changedWidths(text, undefined, changes));
      writeRows(text, changes, out, onProgress);
    } else if (lists !== undefined && part.start === lists.from) {
      out.replace(lists.from, lists.to, lists.text);
    } else if (GROWING.has(part.name) && (changes.grown ?? []).length > 0) {
      out.replace(part.start, part.end, grownRules(xml.slice(part.start, part.end), changes.grown!));
    } else if (part.name === "autoFilter" && changes.filter) {
      out.replace(part.start, part.openEnd, withAttribute(startTag(xml, part), "ref", areaName(changes.filter)));
    }
    if (lists !== undefined && lists.from === lists.to && part.end === lists.from) out.insert(lists.from, lists.text);
  }
  out.copy(xml.length);
}

/** Parts of a sheet that hold rules for cells. */
const GROWING: ReadonlySet<string> = new Set(["conditionalFormatting", "dataValidations"]);

/** Rules whose cells end with the last row of a table that takes more. */
function grownRules(xml: string, grown: NonNullable<SheetChanges["grown"]>): string {
  return xml.replace(/(\ssqref\s*=\s*)("[^"]*"|'[^']*')/g, (_, start: string, quoted: string) => {
    const areas = quoted.slice(1, -1).trim().split(/\s+/);
    const longer = areas.map((each) => {
      const own = parseArea(each);
      const table =
        own && grown.find(({ area }) => area.bottom === own.bottom && own.left >= area.left && own.right <= area.right);
      return own && table ? areaName({ ...own, bottom: table.bottom }) : each;
    });
    return `${start}"${longer.join(" ")}"`;
  });
}

function grownDimension(tag: string, { cells }: SheetChanges): string {
  const area = parseArea(attributeIn(tag, "ref") ?? "");
  if (!area) return tag;
  let { top, left, bottom, right } = area;
  for (const [row, changes] of cells) {
    top = Math.min(top, row);
    bottom = Math.max(bottom, row);
    for (const { column } of changes) {
      left = Math.min(left, column);
      right = Math.max(right, column);
    }
  }
  return withAttribute(tag, "ref", areaName({ top, left, bottom, right }));
}
