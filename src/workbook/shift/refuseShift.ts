import { InputError } from "../../measure/errors";
import { areaName, cellName, columnLetters, overlap, parseArea, type Area } from "../cellRef";
import { protectedSheet } from "../notEditable";
import type { SheetInfo, Workbook } from "../openWorkbook";
import { neededPart, relationsOf } from "../parts";
import { textOf } from "../readXml";
import { attributeIn, childrenOf, startTag } from "../scan";
import { sheetMatters, type SheetText } from "../sheetText";
import { isCut, mostOf, spanOf, type Shift } from "./shift";

/** @throws InputError that names what cannot follow when rows or columns come or go, before anything is done */
export function refuseShift(workbook: Workbook, sheet: SheetInfo, text: SheetText, shift: Shift): void {
  const { axis, at, count, goes } = shift;
  const what = goes ? "deleted" : "inserted";
  const no = (
    got: string,
    expected: string,
    cure = "do that in your spreadsheet program, and open the file again here",
  ): never => {
    throw new InputError(`${axis}s of "${sheet.name}"`, got, expected, cure);
  };
  if (workbook.signed || workbook.strict)
    no(
      workbook.signed ? "a signed workbook" : "a Strict Open XML workbook",
      `no ${axis} is ${what} in it`,
      "save an ordinary copy in your spreadsheet program",
    );
  const matters = sheetMatters(text);
  if (matters.locked) throw protectedSheet(sheet.name);
  if (!(at >= 1 && count >= 1 && at + count - 1 <= mostOf(shift)))
    no(`${axis} ${at}`, `a sheet has ${mostOf(shift)} ${axis}s`, "choose others");
  for (const table of workbook.tables.filter((each) => each.sheet === sheet.name))
    refuseTable(workbook, table, shift, no);
  for (const area of arrayAreas(text))
    if (isCut(area, shift))
      no(
        `a formula that fills ${areaName(area)}`,
        `no ${axis} is ${what} inside the cells that one formula fills`,
        "delete that formula first, and enter it again after",
      );
  if (
    text.parts.some(({ name }) =>
      ["controls", "oleObjects", "scenarios", "customSheetViews", "dataConsolidate"].includes(name),
    )
  )
    no("buttons, embedded objects, scenarios or views of one's own", "their places cannot follow");
  for (const { kind, target } of relationsOf(workbook.zip, sheet.part)) {
    if (kind !== "pivotTable") continue;
    const area = parseArea(
      /<(?:\w+:)?location\b[^>]*?\sref="([^"]+)"/.exec(textOf(neededPart(workbook.zip, target)))?.[1] ?? "",
    );
    if (area && (isCut(area, shift) || (goes && overlap(area, coverOf(shift)))))
      no(`a pivot table in ${areaName(area)}`, `no ${axis} is ${what} inside a pivot table`);
  }
  if (!goes) refusePushedOut(text, shift, no);
}

type No = (got: string, expected: string, cure?: string) => never;

function refuseTable(
  workbook: Workbook,
  { name, area, headerRow, totalsRow, columns, plain }: Workbook["tables"][number],
  shift: Shift,
  no: No,
): void {
  const { axis, at, count, goes } = shift;
  const end = at + count - 1;
  const span = spanOf(area, shift);
  const covers = goes && at <= span.first && end >= span.last;
  if (covers) no(`the whole table ${name}`, "keeps its tables");
  if (axis === "row") {
    if (!goes) return;
    const [first, last] = [area.top + (headerRow ? 1 : 0), area.bottom - (totalsRow ? 1 : 0)];
    if (headerRow && at <= area.top && end >= area.top)
      no(`the headings of the table ${name}`, "a table keeps its headings");
    if (totalsRow && at <= area.bottom && end >= area.bottom)
      no(`the totals of the table ${name}`, "a table keeps its row of totals");
    if (at <= first && end >= last)
      no(`every row of the table ${name}`, "a table keeps one row at least", "keep one row, and clear its cells");
    return;
  }
  const inside = goes ? at <= area.right && end >= area.left : at > area.left && at <= area.right;
  if (!inside) return;
  if (!plain) no(`columns of the table ${name}`, "the columns of a table that another source fills stay");
  if (!goes) return;
  const going = columns.filter((_, i) => area.left + i >= at && area.left + i <= end);
  const user = going.find((column) => usesColumn(workbook, name, column));
  if (user !== undefined)
    no(`the column "${user}" of the table ${name}`, "formulas name that column", "change those formulas first");
}

/** Whether a formula anywhere names the column of a table. */
function usesColumn(workbook: Workbook, table: string, column: string): boolean {
  const written = column.replace(/['#@[\]]/g, "'$&").toLowerCase();
  const own = new RegExp(`${table.toLowerCase()}\\[`);
  const tables = workbook.tables.map(({ part }) => part);
  const sheets = workbook.sheets.filter(({ cells }) => cells).map(({ part }) => part);
  const isUsed = (formula: string): boolean =>
    own.test(formula) && (formula.includes(`[${written}]`) || formula.includes(`[@${written}]`));
  return (
    workbook.names.some(({ refersTo }) => isUsed(refersTo.toLowerCase())) ||
    [...sheets, ...tables].some((part) => {
      const formulas =
        textOf(neededPart(workbook.zip, part)).match(
          /<(?:\w+:)?(?:f|formula[12]?|calculatedColumnFormula|totalsRowFormula)\b[^>]*>[^<]+/g,
        ) ?? [];
      return formulas.some((formula) => isUsed(formula.toLowerCase()));
    })
  );
}

function coverOf({ axis, at, count }: Shift): Area {
  const last = at + count - 1;
  return axis === "row"
    ? { top: at, bottom: last, left: 1, right: mostOf({ axis: "column" }) }
    : { left: at, right: last, top: 1, bottom: mostOf({ axis: "row" }) };
}

/** The cells that array formulas and tables of data fill. */
function arrayAreas({ xml, data }: SheetText): readonly Area[] {
  const found: Area[] = [];
  const pattern = /<(?:\w+:)?f\b[^>]*\bt\s*=\s*["'](?:array|dataTable)["'][^>]*>/g;
  pattern.lastIndex = data.start;
  for (let match = pattern.exec(xml); match !== null && match.index < data.end; match = pattern.exec(xml)) {
    const area = parseArea(attributeIn(match[0], "ref") ?? "");
    if (area !== undefined) found.push(area);
  }
  return found;
}

/** Cells may not be pushed over the edge of the sheet. */
function refusePushedOut({ xml, data }: SheetText, shift: Shift, no: No): void {
  const edge = mostOf(shift) - shift.count;
  for (const row of childrenOf(xml, data)) {
    const number = Number(attributeIn(startTag(xml, row), "r") ?? 0);
    if (shift.axis === "row" && number > edge)
      no(`row ${number}`, "no cell is pushed over the edge of the sheet", "clear what is far below");
    if (shift.axis === "row") continue;
    for (const cell of childrenOf(xml, row)) {
      const area = parseArea(attributeIn(startTag(xml, cell), "r") ?? "");
      if (area && area.left > edge)
        no(
          `cell ${cellName(area.top, area.left)}`,
          `no cell is pushed over column ${columnLetters(mostOf(shift))}`,
          "clear what is far right",
        );
    }
  }
}
