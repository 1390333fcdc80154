import type { Workbook } from "./openWorkbook";
import { neededPart, relationsOf } from "./parts";
import { textOf } from "./readXml";

/** What a grid of cells does not show of a workbook and a save keeps, each with how many there are. */
export function notShown(workbook: Workbook): readonly string[] {
  const { zip, types } = workbook;
  const sheets = workbook.sheets.filter(({ cells }) => cells);
  const typed = (pattern: RegExp): number =>
    [...zip.keys()].filter((part) => pattern.test(types.of(part) ?? "")).length;
  const inSheets = { sparklines: 0, icons: 0, headers: 0 };
  for (const { part } of sheets) {
    const text = textOf(neededPart(zip, part));
    inSheets.sparklines += count(text, /<(?:\w+:)?sparkline>/g);
    inSheets.icons += count(text, /<(?:\w+:)?iconSet[\s>]/g);
    inSheets.headers += count(text, /<(?:\w+:)?(?:oddHeader|oddFooter)>/g);
  }
  const drawings = [...zip.values()].filter(({ name }) => /\.drawing\+xml$/.test(types.of(name) ?? ""));
  const inDrawings = (pattern: RegExp): number =>
    drawings.reduce((sum, entry) => sum + count(textOf(entry), pattern), 0);
  const links = sheets.reduce(
    (sum, { part }) => sum + relationsOf(zip, part).filter(({ kind }) => kind === "hyperlink").length,
    0,
  );
  return [
    told(typed(/\.chart(?:ex)?\+xml$/), "chart"),
    told(inDrawings(/<(?:\w+:)?pic[\s>]/g), "picture"),
    told(inDrawings(/<(?:\w+:)?sp[\s>]/g), "drawn shape"),
    told(inSheets.sparklines, "sparkline"),
    told(inSheets.icons, "set of icons"),
    told(typed(/\.pivotTable\+xml$/), "pivot table (as values)"),
    told(links, "link (as text)"),
    told(inSheets.headers, "header or footer of a page"),
  ].filter((text) => text !== undefined);
}

function count(text: string, pattern: RegExp): number {
  return text.match(pattern)?.length ?? 0;
}

function told(number: number, what: string): string | undefined {
  if (number === 0) return undefined;
  if (number === 1) return `1 ${what}`;
  const [name = "", ...rest] = what.split(/(?= \()/);
  const plural = name.startsWith("set of")
    ? name.replace("set", "sets")
    : name.startsWith("header")
      ? "headers or footers of pages"
      : `${name}s`;
  return `${number} ${plural}${rest.join("")}`;
}
