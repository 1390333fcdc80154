import { damaged } from "./damaged";
import { parseArea, type Area } from "./cellRef";
import { unescapeText } from "./escape";
import { attribute, readXml } from "./readXml";
import type { ZipEntry } from "./zip";

/** A table (Excel's list object). `area` includes the header and totals rows. */
export interface TableInfo {
  readonly name: string;
  readonly sheet: string;
  readonly part: string;
  readonly id: number;
  readonly area: Area;
  readonly headerRow: boolean;
  readonly totalsRow: boolean;
  readonly columns: readonly string[];
  /** False for a table fed by a query or an XML map: its columns belong to that source. */
  readonly plain: boolean;
}

/** Reads the part of one table. @throws InputError when it has no rectangle */
export function readTable(entry: ZipEntry, sheet: string): TableInfo {
  const columns: string[] = [];
  let table: Omit<TableInfo, "columns"> | undefined;
  readXml(entry, {
    open: (tag) => {
      if (tag.local === "tableColumn") columns.push(unescapeText(attribute(tag, "name") ?? ""));
      if (tag.local !== "table") return;
      const name = attribute(tag, "displayName") ?? attribute(tag, "name") ?? "";
      const area = parseArea(attribute(tag, "ref") ?? "");
      if (!area) throw damaged(`the table ${name} without its cells`);
      table = {
        name,
        sheet,
        part: entry.name,
        id: Number(attribute(tag, "id")),
        area,
        headerRow: attribute(tag, "headerRowCount") !== "0",
        totalsRow: Number(attribute(tag, "totalsRowCount") ?? 0) > 0,
        plain: (attribute(tag, "tableType") ?? "worksheet") === "worksheet",
      };
    },
  });
  if (!table) throw damaged(`the part ${entry.name}, which holds no table`);
  const width = table.area.right - table.area.left + 1;
  if (columns.length !== width)
    throw damaged(`the table ${table.name}, which names ${columns.length} columns for the ${width} of its cells`);
  return { ...table, columns };
}
