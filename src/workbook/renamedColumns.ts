import type { ColumnPlaces } from "./columnPlaces";
import { escapeText, unescapeXml } from "./escape";
import type { Workbook } from "./openWorkbook";
import type { PackageEditor } from "./packageEditor";
import { textOf } from "./readXml";
import { packText } from "./writeZip";

/** New names of columns of a table, by the old ones in small letters. */
export type Renames = ReadonlyMap<string, string>;

/**
 * A formula after columns of a table have other names: `Survey[[#This Row],[mass (kg)]]` names the new one.
 *
 * @param formula as stored, where each column is named with its table
 */
export function renamedFormula(formula: string, table: string, renames: Renames): string {
  const wanted = table.toLowerCase();
  return formula.replace(PIECES, (piece: string, name: string | undefined, inside: string) =>
    name?.toLowerCase() !== wanted
      ? piece
      : name +
        inside.replace(COLUMN, (one: string, column: string) => {
          const now = renames.get(column.toLowerCase());
          return now === undefined ? one : `[${now}]`;
        }),
  );
}

/** Texts; a table with what is asked of it. */
const PIECES =
  /"(?:[^"]|"")*"|(?<![\p{L}\p{N}_.\\])([\p{L}_\\][\p{L}\p{N}_.\\]{0,254})(\[(?:[^[\]']|'.|\[(?:[^[\]']|'.){0,600}\]){0,600}\])/gu;
const COLUMN = /\[((?:[^[\]']|'.){0,600})\]/g;

/** Formulas of every part follow: those of cells, tables, conditional formats, lists to choose from, names, charts. */
export function renameColumns(
  workbook: Workbook,
  parts: PackageEditor,
  table: string,
  { placed }: Pick<ColumnPlaces, "placed">,
): void {
  const renames: Renames = new Map(
    placed.flatMap(({ at }) => (at.renamedFrom === undefined ? [] : [[at.renamedFrom.toLowerCase(), at.heading]])),
  );
  if (renames.size === 0) return;
  const old = [...renames.keys()];
  for (const name of workbook.zip.keys()) {
    if (!name.endsWith(".xml")) continue;
    const entry = parts.now(name);
    if (entry === undefined) continue;
    const xml = textOf(entry);
    const lowered = xml.toLowerCase();
    if (!lowered.includes(`${table.toLowerCase()}[`) || !old.some((each) => lowered.includes(each))) continue;
    const renamed = xml.replace(FORMULAS, (_, start: string, formula: string) => {
      const now = renamedFormula(unescapeXml(formula), table, renames);
      return start + (now === unescapeXml(formula) ? formula : escapeText(now));
    });
    if (renamed !== xml) parts.put(packText(name, renamed));
  }
}

/** Elements that hold a formula. */
const FORMULAS =
  /(<(?:\w+:)?(?:f|formula|formula1|formula2|calculatedColumnFormula|totalsRowFormula|definedName)(?:\s[^>]*)?(?<!\/)>)([^<]*)/g;
