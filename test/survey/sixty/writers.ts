import ExcelJS from "exceljs";
import writeExcelFile from "write-excel-file/node";
import { writeCsv } from "../../../src/workbook/writeCsv";
import { converted } from "../../workbook/made/libreOffice";
import { MAIN, contentTypes, packageOf, relations } from "../../workbook/made/package";
import type { Cell, MadeSheet, MadeSurvey } from "./made";

/** The file of a survey, written by the program that its manifest names. */
export async function fileOf(survey: MadeSurvey): Promise<{ readonly name: string; readonly bytes: Uint8Array }> {
  switch (survey.writer) {
    case "csv":
      return { name: "survey.csv", bytes: csv(survey.sheets[0]!) };
    case "exceljs":
      return { name: "survey.xlsx", bytes: await byExcelJs(survey.sheets) };
    case "write-excel-file":
      return { name: "survey.xlsx", bytes: await byWriteExcelFile(survey.sheets[0]!) };
    case "xml":
      return { name: "survey.xlsx", bytes: byHand(survey.sheets[0]!) };
    case "libreoffice": {
      const files = converted({ "survey.fods": flat(survey.sheets[0]!) }, "xlsx:Calc MS Excel 2007 XML");
      return { name: "survey.xlsx", bytes: files["survey.xlsx"]! };
    }
  }
}

function csv({ rows }: MadeSheet): Uint8Array {
  return writeCsv(rows.map((row) => row.map((cell) => (typeof cell === "number" ? cell : plain(cell)))));
}

function plain(cell: Cell): string {
  if (cell === null) return "";
  return typeof cell === "object" ? cell.date : String(cell);
}

/** LibreOffice's own flat form. */
function flat({ name, rows }: MadeSheet): string {
  const cell = (each: Cell) =>
    typeof each === "number"
      ? `<table:table-cell office:value-type="float" office:value="${each}"/>`
      : `<table:table-cell office:value-type="string"><text:p>${plain(each)}</text:p></table:table-cell>`;
  const lines = rows.map((row) => `<table:table-row>${row.map(cell).join("")}</table:table-row>`);
  const uri = "urn:oasis:names:tc:opendocument:xmlns:";
  return `<?xml version="1.0" encoding="UTF-8"?><office:document xmlns:office="${uri}office:1.0" xmlns:table="${uri}table:1.0" xmlns:text="${uri}text:1.0" office:version="1.3" office:mimetype="application/vnd.oasis.opendocument.spreadsheet"><office:body><office:spreadsheet><table:table table:name="${name}">${lines.join("")}</table:table></office:spreadsheet></office:body></office:document>`;
}

async function byExcelJs(sheets: readonly MadeSheet[]): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  for (const { name, rows, formats = {} } of sheets) {
    const sheet = book.addWorksheet(name);
    rows.forEach((row, r) =>
      row.forEach((cell, c) => {
        if (cell === null || cell === "") return;
        const target = sheet.getCell(r + 1, c + 1);
        if (typeof cell === "object") {
          target.value = new Date(`${cell.date}T00:00:00Z`);
          target.numFmt = cell.format;
          return;
        }
        target.value = cell;
        const format = formats[c + 1];
        if (format !== undefined && typeof cell === "number") target.numFmt = format;
      }),
    );
  }
  return new Uint8Array(await book.xlsx.writeBuffer());
}

async function byWriteExcelFile({ name, rows }: MadeSheet): Promise<Uint8Array> {
  const data = rows.map((row) =>
    row.map((cell) => (cell === null || typeof cell === "object" ? null : { value: cell })),
  );
  const result = await writeExcelFile(data, { sheet: name }).toBuffer();
  return new Uint8Array(result);
}

/** The least that a workbook can be: one sheet, texts inside their cells, no styles. */
function byHand({ name, rows }: MadeSheet): Uint8Array {
  const escaped = (text: string) => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
  const cells = (row: readonly Cell[], r: number) =>
    row.map((cell, c) => {
      const at = `${String.fromCharCode(65 + c)}${r + 1}`;
      if (cell === null || cell === "" || typeof cell === "object") return "";
      if (typeof cell === "number") return `<c r="${at}"><v>${cell}</v></c>`;
      return `<c r="${at}" t="inlineStr"><is><t>${escaped(String(cell))}</t></is></c>`;
    });
  const sheet = rows.map((row, r) => `<row r="${r + 1}">${cells(row, r).join("")}</row>`).join("");
  return packageOf({
    "[Content_Types].xml": contentTypes(
      ["xl/workbook.xml", ".spreadsheetml.sheet.main+xml"],
      ["xl/worksheets/sheet1.xml", ".spreadsheetml.worksheet+xml"],
    ),
    "_rels/.rels": relations(["rId1", "officeDocument", "xl/workbook.xml"]),
    "xl/workbook.xml": `<workbook xmlns="${MAIN}" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="${name}" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": relations(["rId1", "worksheet", "worksheets/sheet1.xml"]),
    "xl/worksheets/sheet1.xml": `<worksheet xmlns="${MAIN}"><sheetData>${sheet}</sheetData></worksheet>`,
  });
}
