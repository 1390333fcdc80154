import { BUILT_IN_FORMATS } from "./builtInFormats";
import { tooMuch } from "./damaged";
import type { Workbook } from "./openWorkbook";
import { neededPart } from "./parts";
import { attribute, readXml } from "./readXml";
import { isDateFormat, isDateFormatId } from "./sheetValue";

/** The style numbers (as `s` holds them) whose number format shows a date or a time. */
export function dateStylesOf(workbook: Workbook): ReadonlySet<string> {
  const known = cache.get(workbook);
  if (known) return known;
  const styles = new Set<string>();
  const part = stylesPart(workbook);
  const dateFormats = new Set<number>();
  let inCellFormats = false;
  let index = 0;
  if (part !== undefined) {
    readXml(neededPart(workbook.zip, part), {
      open: (tag) => {
        if (tag.uri !== workbook.namespace) return;
        if (tag.local === "numFmt" && isDateFormat(attribute(tag, "formatCode") ?? ""))
          dateFormats.add(Number(attribute(tag, "numFmtId")));
        if (tag.local === "cellXfs") inCellFormats = true;
        if (tag.local !== "xf" || !inCellFormats) return;
        const id = Number(attribute(tag, "numFmtId") ?? 0);
        if (dateFormats.has(id) || isDateFormatId(id)) styles.add(String(index));
        index++;
        if (index > MOST_STYLES) throw tooMuch(`more than ${MOST_STYLES} cell styles`);
      },
      close: (tag) => {
        if (tag.local === "cellXfs") inCellFormats = false;
      },
    });
  }
  cache.set(workbook, styles);
  return styles;
}

/** The number formats that are not `General`, by style number: `00000`, `0.0 "cm"`. */
export function formatCodesOf(workbook: Workbook): ReadonlyMap<string, string> {
  const codes = new Map<string, string>();
  const custom = new Map<number, string>();
  const part = stylesPart(workbook);
  if (part === undefined) return codes;
  let inCellFormats = false;
  let index = 0;
  readXml(neededPart(workbook.zip, part), {
    open: (tag) => {
      if (tag.uri !== workbook.namespace) return;
      if (tag.local === "numFmt") custom.set(Number(attribute(tag, "numFmtId")), attribute(tag, "formatCode") ?? "");
      if (tag.local === "cellXfs") inCellFormats = true;
      if (tag.local !== "xf" || !inCellFormats) return;
      const id = Number(attribute(tag, "numFmtId") ?? 0);
      const code = custom.get(id) ?? BUILT_IN_FORMATS[id];
      if (code !== undefined && !/^general$/i.test(code)) codes.set(String(index), code);
      index++;
    },
    close: (tag) => {
      if (tag.local === "cellXfs") inCellFormats = false;
    },
  });
  return codes;
}

/** The part that holds the styles; undefined when the workbook has none. */
export function stylesPart(workbook: Workbook): string | undefined {
  return workbook.relations.find((relation) => relation.kind === "styles")?.target;
}

/** Limit of Excel. */
const MOST_STYLES = 65_490;

const cache = new WeakMap<Workbook, ReadonlySet<string>>();
