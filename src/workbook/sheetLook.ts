import { columnNumber, parseArea, type Area } from "./cellRef";
import { choicesReader } from "./choicesReader";
import type { Frozen } from "./frozenViews";
import type { ListChoices } from "./listChoices";
import { isTrue, type Workbook } from "./openWorkbook";
import { neededPart } from "./parts";
import { attribute, readXml, type XmlHandlers, type XmlTag } from "./readXml";
import { sheetReader, type SheetGrid } from "./readSheet";
import { sheetNamed } from "./sheetNamed";
import { RICH, richTextsOf } from "./sharedTexts";

/** A formula as the file holds it. */
export interface StoredFormula {
  /** Without `=`; empty for a cell that shares the formula of another. */
  readonly text: string;
  /** The number under which cells share it. */
  readonly shared: string | undefined;
  /** The cells that one array formula fills. */
  readonly fills: Area | undefined;
}

/** A text with a look of its own in parts: its number among those that cells share, or one that the cell alone holds. */
export type RichText = number | "own";

/** Column widths in characters, columns counted from 1. */
export interface ColumnStretch {
  readonly first: number;
  readonly last: number;
  readonly width: number | undefined;
  readonly hidden: boolean;
}

/** A row that is hidden or has a height in points, of its own or as the program that wrote the file measured it. */
export interface RowLook {
  readonly height: number | undefined;
  readonly own: boolean;
  readonly hidden: boolean;
}

/** What a sheet holds beside its values: see `readSheet` for those. */
export interface SheetLook {
  /** Style number by row and column, counted from 1. */
  readonly styles: ReadonlyMap<number, ReadonlyMap<number, number>>;
  readonly formulas: ReadonlyMap<number, ReadonlyMap<number, StoredFormula>>;
  readonly richTexts: ReadonlyMap<number, ReadonlyMap<number, RichText>>;
  readonly columns: readonly ColumnStretch[];
  readonly rows: ReadonlyMap<number, RowLook>;
  /** Rows and columns that stay in sight. */
  readonly frozen: Frozen;
  /** The cells of the sheet's own filter, headings included. */
  readonly filter: Area | undefined;
  readonly rightToLeft: boolean;
  /** Cells that offer a list of values. */
  readonly choices: readonly ListChoices[];
}

/** @throws InputError when there is no such sheet, or it is damaged */
export function sheetLook(workbook: Workbook, name: string): SheetLook {
  const { handlers, look } = lookReader(workbook);
  readXml(neededPart(workbook.zip, sheetNamed(workbook, name).part), handlers);
  return look();
}

/** The rows and columns of a sheet that stay in sight: said before its cells, which are not read. */
export function frozenOf(workbook: Workbook, name: string): Frozen {
  const { handlers, look } = lookReader(workbook);
  let inCells = false;
  const open: XmlHandlers["open"] = (tag) => {
    inCells ||= tag.local === "sheetData";
    handlers.open?.(tag);
  };
  readXml(neededPart(workbook.zip, sheetNamed(workbook, name).part), { ...handlers, open, enough: () => inCells });
  return look().frozen;
}

/** A sheet with its values and all that it holds beside them, read in one pass. @throws InputError as `readSheet` */
export function sheetWithLook(
  workbook: Workbook,
  name: string,
): { readonly grid: SheetGrid; readonly look: SheetLook } {
  const { handlers: values, grid } = sheetReader(workbook, name);
  const { handlers: rest, look } = lookReader(workbook);
  readXml(neededPart(workbook.zip, sheetNamed(workbook, name).part), {
    open: (tag) => {
      values.open?.(tag);
      rest.open?.(tag);
    },
    text: (piece) => {
      values.text?.(piece);
      rest.text?.(piece);
    },
    close: (tag) => {
      values.close?.(tag);
      rest.close?.(tag);
    },
  });
  return { grid: grid(), look: look() };
}

function lookReader(workbook: Workbook): { readonly handlers: XmlHandlers; readonly look: () => SheetLook } {
  const styles = new Map<number, Map<number, number>>();
  const formulas = new Map<number, Map<number, StoredFormula>>();
  const richTexts = new Map<number, Map<number, RichText>>();
  const shared = richTextsOf(workbook);
  const columns: ColumnStretch[] = [];
  const rows = new Map<number, RowLook>();
  let frozen: Frozen = { rows: 0, columns: 0, firstRow: 1, firstColumn: 1 };
  let firstInSight: Area | undefined;
  let filter: Area | undefined;
  let rightToLeft = false;
  const choices = choicesReader();
  let row = 0;
  let column = 0;
  let sharesText = false;
  let value: string | undefined;
  let formula: { text: string; shared: string | undefined; fills: Area | undefined } | undefined;

  const openCell = (tag: XmlTag): void => {
    const letters = /^[a-z]+/i.exec(attribute(tag, "r") ?? "")?.[0];
    column = (letters === undefined ? undefined : columnNumber(letters)) ?? column + 1;
    sharesText = attribute(tag, "t") === "s";
    const style = attribute(tag, "s");
    if (style !== undefined && style !== "0") into(styles, row).set(column, Number(style));
  };
  const handlers: XmlHandlers = {
    open: (tag) => {
      choices.open(tag);
      if (tag.uri !== workbook.namespace) return;
      if (RICH.has(tag.local)) into(richTexts, row).set(column, "own");
      switch (tag.local) {
        case "row":
          row = Number(attribute(tag, "r") ?? row + 1);
          column = 0;
          if (attribute(tag, "ht") !== undefined || attribute(tag, "hidden") !== undefined) rows.set(row, rowLook(tag));
          break;
        case "c":
          openCell(tag);
          break;
        case "v":
          if (sharesText) value = "";
          break;
        case "f": {
          const type = attribute(tag, "t");
          const shared = type === "shared" ? attribute(tag, "si") : undefined;
          formula = { text: "", shared, fills: type === "array" ? parseArea(attribute(tag, "ref") ?? "") : undefined };
          break;
        }
        case "col":
          columns.push(stretch(tag));
          break;
        case "sheetView":
          rightToLeft = isTrue(attribute(tag, "rightToLeft"));
          firstInSight = parseArea(attribute(tag, "topLeftCell") ?? "");
          break;
        case "pane":
          if (/^frozen/.test(attribute(tag, "state") ?? ""))
            frozen = {
              rows: Number(attribute(tag, "ySplit") ?? 0),
              columns: Number(attribute(tag, "xSplit") ?? 0),
              firstRow: firstInSight?.top ?? 1,
              firstColumn: firstInSight?.left ?? 1,
            };
          break;
        case "autoFilter":
          filter = parseArea(attribute(tag, "ref") ?? "");
      }
    },
    text: (piece) => {
      choices.text(piece);
      if (formula) formula.text += piece;
      else if (value !== undefined) value += piece;
    },
    close: (tag) => {
      choices.close(tag);
      if (value !== undefined && tag.local === "v") {
        if (shared.has(Number(value))) into(richTexts, row).set(column, Number(value));
        value = undefined;
      }
      if (!formula || tag.local !== "f") return;
      into(formulas, row).set(column, formula);
      formula = undefined;
    },
  };
  const look = () => {
    const { found } = choices;
    return { styles, formulas, richTexts, columns, rows, frozen, filter, rightToLeft, choices: found };
  };
  return { handlers, look };
}

function rowLook(tag: XmlTag): RowLook {
  const height = attribute(tag, "ht");
  return {
    height: height === undefined ? undefined : Number(height),
    own: isTrue(attribute(tag, "customHeight")),
    hidden: isTrue(attribute(tag, "hidden")),
  };
}

function stretch(tag: XmlTag): ColumnStretch {
  const width = attribute(tag, "width");
  return {
    first: Number(attribute(tag, "min")),
    last: Number(attribute(tag, "max")),
    width: width === undefined ? undefined : Number(width),
    hidden: isTrue(attribute(tag, "hidden")),
  };
}

function into<Value>(rows: Map<number, Map<number, Value>>, row: number): Map<number, Value> {
  const known = rows.get(row);
  if (known) return known;
  const made = new Map<number, Value>();
  rows.set(row, made);
  return made;
}
