import { InputError } from "../measure/errors";
import { blankSheet, SPREADSHEET_TYPE } from "./blankParts";
import { MOST_ROWS, type Area } from "./cellRef";
import { columnWidth } from "./columnWidth";
import { isFormula, type NewSheet } from "./edits";
import { relationsPart, type PackageEditor } from "./packageEditor";
import { writeSheet } from "./writeSheet";
import type { CellChange } from "./sheetChanges";
import { sheetText } from "./sheetText";
import { FORMULA_SIGN } from "./formulaText";
import type { StyleEditor } from "./styleEditor";
import { newTable } from "./tableEditor";
import { packer } from "./writeZip";

/**
 * Writes the part of a new sheet: a blank sheet, edited as the sheets of a file are.
 *
 * @param part its name in the package; the caller lists it
 * @param tableId an id that no table of the workbook has
 * @throws InputError when its table has a heading that is no text, or the same twice
 */
export function writeNewSheet(
  sheet: NewSheet,
  part: string,
  tableId: number,
  styles: StyleEditor,
  parts: PackageEditor,
): void {
  refuseTooLong(sheet);
  const { headingRow = 1, table } = sheet;
  let tablePart = "";
  if (table !== undefined) {
    const tableName = parts.freeName("xl/tables/table", ".xml");
    const area = tableArea(sheet, headingRow);
    const pack = packer(tableName);
    pack.push(newTable(tableId, table, area, tableHeadings(sheet, headingRow)));
    parts.add(pack.done(), `${SPREADSHEET_TYPE}table+xml`);
    parts.put(relationsPart(part, [{ id: "rId1", kind: "table", target: tableName }]));
    tablePart = `<tableParts count="1"><tablePart r:id="rId1"/></tableParts>`;
  }
  const cells = new Map<number, CellChange[]>();
  sheet.rows.forEach((row, r) => {
    const changes = row.flatMap((content, c): CellChange[] => {
      if (content === null) return [];
      const format = r + 1 > headingRow ? sheet.formats?.[c] : undefined;
      const quoted =
        !isFormula(content) && typeof content === "string" && (content.startsWith("'") || FORMULA_SIGN.test(content));
      const bold = r + 1 === headingRow;
      const wish = { ...(format === undefined ? {} : { format }), bold, quoted };
      return [{ column: c + 1, content, styled: (style) => styles.styled(style, wish) }];
    });
    if (changes.length > 0) cells.set(r + 1, changes);
  });
  // Not by spreading: the arguments of a long list would not fit on the stack.
  const columns = sheet.rows.reduce((widest, { length }) => Math.max(widest, length), 0);
  const widths = new Map(
    Array.from({ length: columns }, (_, c) => [
      c + 1,
      sheet.widths?.[c] ??
        columnWidth(
          "",
          sheet.rows.map((row) => row[c] ?? null),
        ),
    ]),
  );
  const pack = packer(part);
  writeSheet(sheetText(sheet.name, blankSheet(headingRow, tablePart)), { cells, widths }, pack.push);
  parts.put(pack.done());
}

function refuseTooLong({ name, rows }: NewSheet): void {
  if (rows.length <= MOST_ROWS) return;
  throw new InputError(
    `sheet "${name}"`,
    `${rows.length} rows`,
    `a sheet has ${MOST_ROWS}`,
    "divide the survey, or ask for the list as .csv",
  );
}

/** @throws InputError when a spreadsheet would refuse the name */
export function checkSheetName(name: string): void {
  if (
    /^[^[\]:*?/\\]{1,31}$/.test(name) &&
    !/^'|'$/.test(name) &&
    name.trim() !== "" &&
    name.toLowerCase() !== "history"
  )
    return;
  throw new InputError(
    "sheet",
    `"${name}"`,
    "a name has 1 to 31 letters, none of [ ] : * ? / \\, no apostrophe at an end",
    "choose another name",
  );
}

function tableHeadings(sheet: NewSheet, headingRow: number): string[] {
  const headings = sheet.rows[headingRow - 1] ?? [];
  const seen = new Set<string>();
  return headings.map((heading, c) => {
    const fine = typeof heading === "string" && heading !== "" && !seen.has(heading.toLowerCase());
    if (!fine) {
      const got = typeof heading === "string" ? `"${heading}"` : "no text";
      throw new InputError(
        "table",
        `${got} as the heading of column ${c + 1}`,
        "needs a text for each column, none twice",
        "rename it",
      );
    }
    seen.add(heading.toLowerCase());
    return heading;
  });
}

function tableArea(sheet: NewSheet, headingRow: number): Area {
  // A table has one row at least, if a blank one.
  const bottom = Math.max(sheet.rows.length, headingRow + 1);
  return { top: headingRow, left: 1, bottom, right: Math.max(1, sheet.rows[headingRow - 1]?.length ?? 0) };
}
