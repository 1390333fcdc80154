import type { DefinedName, Workbook } from "../workbook/openWorkbook";
import { isMark } from "../workbook/ownMarks";
import type { SheetGrid } from "../workbook/readSheet";
import type { TableInfo } from "../workbook/readTable";
import type { SheetLook } from "../workbook/sheetLook";
import type { ConditionalRule } from "../workbook/conditionalFormats";
import type { CellNote } from "../workbook/notes";
import { conditionalRules } from "./conditionalRules";
import { listedValues } from "./listedValues";
import { rangeOf, TABLE_STYLE } from "./gridTerms";
import { typedFromStored } from "./storedFormulas";

/** What the grid's plugins are to know of one sheet. */
export interface ReadSheet {
  readonly id: string;
  readonly name: string;
  readonly look: SheetLook;
  readonly grid: SheetGrid;
  readonly rules: readonly ConditionalRule[];
  readonly notes: readonly CellNote[];
}

/** Names, tables, filters, lists of choices, conditional formats and comments of a workbook, each as the plugin of the grid that shows it reads it. */
export function bookResources(
  { names, tables }: Workbook,
  sheets: readonly ReadSheet[],
): { name: string; data: string }[] {
  const idOf = new Map(sheets.map(({ id, name }) => [name, id]));
  return Object.entries({
    SHEET_DEFINED_NAME_PLUGIN: namesResource(names, idOf),
    SHEET_TABLE_PLUGIN: tablesResource(tables, idOf),
    SHEET_FILTER_PLUGIN: filtersResource(sheets),
    SHEET_DATA_VALIDATION_PLUGIN: choicesResource(sheets, names),
    SHEET_CONDITIONAL_FORMATTING_PLUGIN: Object.fromEntries(
      sheets.map(({ id, rules }) => [id, conditionalRules(id, rules)]),
    ),
    SHEET_NOTE_PLUGIN: notesResource(sheets),
  }).map(([name, resource]) => ({ name, data: JSON.stringify(resource) }));
}

/** The names of the file, without the marks of this program and those that a spreadsheet keeps for itself. */
function namesResource(names: readonly DefinedName[], idOf: ReadonlyMap<string, string>): object {
  const shown = names.filter(({ name }) => !isMark(name) && !name.startsWith("_xlnm."));
  return Object.fromEntries(
    shown.map(({ name, refersTo, sheet, hidden, comment }, place) => [
      `name-${place + 1}`,
      {
        id: `name-${place + 1}`,
        name,
        formulaOrRefString: isReference(refersTo) ? refersTo : `=${typedFromStored(refersTo)}`,
        comment,
        hidden,
        localSheetId: (sheet === undefined ? undefined : idOf.get(sheet)) ?? "AllDefaultWorkbook",
      },
    ]),
  );
}

function isReference(text: string): boolean {
  return /^(?:'(?:[^']|'')+'|[^'!()]+)!\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?$/i.test(text);
}

/** A table that the grid can show: with headings, and without its row of totals, which is no row of the data. */
function tablesResource(tables: readonly TableInfo[], idOf: ReadonlyMap<string, string>): object {
  const bySheet: Record<string, { tables: object[] }> = {};
  for (const table of tables.filter(({ headerRow }) => headerRow)) {
    const sheet = idOf.get(table.sheet);
    if (sheet === undefined) continue;
    (bySheet[sheet] ??= { tables: [] }).tables.push({
      id: `table-${table.id}`,
      name: table.name,
      range: rangeOf({ ...table.area, bottom: table.area.bottom - (table.totalsRow ? 1 : 0) }),
      options: { showHeader: true, showFooter: false, tableStyleId: TABLE_STYLE },
      filters: { tableColumnFilterList: [] },
      columns: table.columns.map((column, place) => ({
        id: `table-${table.id}-column-${place + 1}`,
        displayName: column,
        dataType: "none",
        formula: "",
        meta: {},
        style: {},
      })),
      meta: {},
    });
  }
  return bySheet;
}

function filtersResource(sheets: readonly ReadSheet[]): object {
  return Object.fromEntries(
    sheets.flatMap(({ id, look }) =>
      look.filter === undefined ? [] : [[id, { ref: rangeOf(look.filter), filterColumns: [] }]],
    ),
  );
}

/** Cells that offer a list: any other value may be typed too, and the arrow shows in the selected cell alone. */
function choicesResource(sheets: readonly ReadSheet[], names: readonly DefinedName[]): object {
  return Object.fromEntries(
    sheets.map(({ id, name, look }) => [
      id,
      look.choices.flatMap(({ area, formula }, place) => {
        const values = listedValues(formula, { sheet: name, sheets, names });
        if (values === undefined || values.length === 0) return [];
        return [
          {
            uid: `${id}-choices-${place + 1}`,
            type: "list",
            formula1: values.join(","),
            ranges: [rangeOf(area)],
            allowBlank: true,
            showErrorMessage: false,
            showDropDown: true,
            renderMode: RENDER_ARROW,
          },
        ];
      }),
    ]),
  );
}

const RENDER_ARROW = 1;

function notesResource(sheets: readonly ReadSheet[]): object {
  return Object.fromEntries(
    sheets.map(({ id, notes }) => {
      const rows: Record<number, Record<number, object>> = {};
      for (const { row, column, text } of notes)
        (rows[row - 1] ??= {})[column - 1] = {
          id: `${id}-note-${row}-${column}`,
          row: row - 1,
          col: column - 1,
          note: text,
          ...NOTE_SIZE,
        };
      return [id, rows];
    }),
  );
}

/** Pixels. */
const NOTE_SIZE = { width: 240, height: 90 };
