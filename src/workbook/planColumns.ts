import { bookOf, type BookTable } from "./book";
import { columnPlaces, type ColumnPlaces } from "./columnPlaces";
import { columnWidth } from "./columnWidth";
import { isFormula, type CellContent, type ColumnsEdit, type NewColumn } from "./edits";
import type { ListChoices } from "./listChoices";
import type { Workbook } from "./openWorkbook";
import type { TableInfo } from "./readTable";
import type { OwnColumn } from "./ownMarks";
import { floatingAreas } from "./floatingAreas";
import { readSheet } from "./readSheet";
import { sheetNamed } from "./sheetNamed";
import type { CellChange } from "./sheetChanges";
import { lastRowOf, sheetMatters, usedColumns, type SheetText } from "./sheetText";
import { FORMULA_SIGN } from "./formulaText";
import type { StyleEditor } from "./styleEditor";
import type { TableChange } from "./tableEditor";

/** What adding the columns changes: cells and widths of the sheet, its filter, its table, the marks. */
export interface ColumnPlan {
  readonly places: ColumnPlaces;
  readonly cells: ReadonlyMap<number, readonly CellChange[]>;
  readonly widths: ReadonlyMap<number, number>;
  readonly choices: readonly ListChoices[];
  readonly table: { readonly info: TableInfo; readonly change: TableChange } | undefined;
}

/**
 * What the columns change in the file, cell by cell.
 *
 * @throws InputError when the columns do not fit the sheet
 */
export function planColumns(workbook: Workbook, text: SheetText, edit: ColumnsEdit, styles: StyleEditor): ColumnPlan {
  const { merged, filter } = sheetMatters(text);
  const places = columnPlaces(
    {
      book: bookOf(workbook),
      sheet: text.sheet,
      headings: readSheet(workbook, edit.sheet, { lastRow: edit.headingRow }).rows[edit.headingRow - 1] ?? [],
      merged,
      floating: floatingAreas(workbook, sheetNamed(workbook, text.sheet)),
      filter,
      used: (top, bottom, after) => usedColumns(text, top, bottom, after),
    },
    edit,
  );
  const { placed, dropped, emptied } = places;
  const table = places.table?.info;
  const cells = new Map<number, CellChange[]>();
  const change = (row: number, made: CellChange) => {
    const list = cells.get(row);
    if (list) list.push(made);
    else cells.set(row, [made]);
  };
  // A mark may say more rows than the sheet has.
  const lastUsed = lastRowOf(text);
  for (const mark of [...dropped, ...emptied]) emptyColumn(mark, dropped.includes(mark), table, lastUsed, change);
  for (const { column, at, before } of placed) {
    const styled = styler(styles, column, at.replaced);
    const like = at.replaced ? undefined : (column.like ?? places.like);
    if (!at.replaced || at.renamedFrom !== undefined)
      change(edit.headingRow, { column: at.column, content: at.heading, like, styled: asItIs });
    column.cells.forEach((content, i) => {
      change(edit.firstRow + i, { column: at.column, content, like, styled: styled(content) });
    });
    for (let row = edit.lastRow + 1; before && row <= Math.min(before.lastRow, lastUsed); row++) {
      if (!(table?.totalsRow && row === table.area.bottom))
        change(row, { column: at.column, content: null, styled: asItIs });
    }
    if (places.table?.grows && table?.totalsRow && !at.replaced) {
      change(table.area.bottom, { column: at.column, content: null, like, styled: asItIs });
    }
  }
  for (const list of cells.values()) list.sort((a, b) => a.column - b.column);
  return {
    places,
    cells,
    choices: placed.flatMap(({ column: { choices }, at: { column, replaced } }) => {
      if (choices === undefined || replaced) return [];
      const area = { top: edit.firstRow, bottom: edit.lastRow, left: column, right: column };
      return area.bottom < area.top ? [] : [{ area, formula: choices }];
    }),
    widths: new Map(
      placed
        .filter(({ at }) => !at.replaced)
        .map(({ column, at }) => [at.column, column.width ?? columnWidth(at.heading, column.cells)]),
    ),
    table: places.table && {
      info: workbook.tables.find((info) => info.name === places.table!.info.name)!,
      change: tableChange(places, places.table),
    },
  };
}

function tableChange(
  { placed }: ColumnPlaces,
  { info, grows, area, dropped }: NonNullable<ColumnPlaces["table"]>,
): TableChange {
  return {
    area,
    totalsRow: info.totalsRow,
    dropped,
    added: grows
      ? placed
          .filter(({ at }) => !at.replaced)
          .map(({ column, at }) => ({ name: at.heading, everyRow: column.everyRow }))
      : [],
    renamed: new Map(
      placed
        .filter(({ at }) => at.renamedFrom !== undefined && at.column <= info.area.right)
        .map(({ at }) => [at.column - info.area.left, at.heading]),
    ),
    formulas: new Map(
      placed
        .filter(({ at }) => at.replaced && at.column <= info.area.right)
        .map(({ column, at }) => [at.column - info.area.left, column.everyRow]),
    ),
  };
}

function emptyColumn(
  mark: OwnColumn,
  whole: boolean,
  table: BookTable | undefined,
  lastUsed: number,
  change: (row: number, made: CellChange) => void,
): void {
  const bottom = Math.min(lastUsed, table && whole ? table.area.bottom : mark.lastRow);
  const styled = (style: number | undefined) => (whole ? undefined : style);
  // A column that stays in its table keeps its heading, which the table names.
  const top = whole || !table ? mark.headingRow : mark.headingRow + 1;
  for (let row = top; row <= bottom; row++) change(row, { column: mark.column, content: null, styled });
}

const asItIs = (style: number | undefined): number | undefined => style;

/** The style of each content of a column. A survey has many cells and few of these, so each is made once. */
function styler(
  styles: StyleEditor,
  column: NewColumn,
  replaced: boolean,
): (content: CellContent) => CellChange["styled"] {
  const format = column.format ?? (replaced ? undefined : "plain");
  const own = format === undefined ? {} : { format };
  const ofFormula: CellChange["styled"] = (style) => styles.styled(style, own);
  const ofText: CellChange["styled"] = (style) => styles.styled(style, { ...own, quoted: false });
  const ofQuoted: CellChange["styled"] = (style) => styles.styled(style, { ...own, quoted: true });
  return (content) => {
    if (isFormula(content)) return ofFormula;
    return typeof content === "string" && (content.startsWith("'") || FORMULA_SIGN.test(content)) ? ofQuoted : ofText;
  };
}
