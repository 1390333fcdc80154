import { damaged } from "./damaged";
import { parseArea } from "./cellRef";
import { unescapeText } from "./escape";
import type { TableInfo } from "./openWorkbook";
import { attribute, readXml } from "./readXml";
import type { ZipEntry } from "./zip";

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
  return { ...table, columns };
}
