import { DOCUMENT_RELATION, PACKAGE } from "./packageEditor";

export const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const SPREADSHEET_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.";

const DECLARATION = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n`;

/** The parts of a workbook without a sheet: the ground on which the surgical edit builds a new one. */
export const BLANK_PARTS: Readonly<Record<string, string>> = {
  "[Content_Types].xml":
    `${DECLARATION}<Types xmlns="${PACKAGE}content-types">` +
    `<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
    `<Default Extension="xml" ContentType="application/xml"/>` +
    `<Override PartName="/xl/workbook.xml" ContentType="${SPREADSHEET_TYPE}sheet.main+xml"/>` +
    `<Override PartName="/xl/styles.xml" ContentType="${SPREADSHEET_TYPE}styles+xml"/>` +
    `<Override PartName="/docProps/app.xml"` +
    ` ContentType="application/vnd.openxmlformats-officedocument.extended-properties+xml"/></Types>`,
  "_rels/.rels":
    `${DECLARATION}<Relationships xmlns="${PACKAGE}relationships">` +
    `<Relationship Id="rId1" Type="${DOCUMENT_RELATION}officeDocument" Target="xl/workbook.xml"/>` +
    `<Relationship Id="rId2" Type="${DOCUMENT_RELATION}extended-properties" Target="docProps/app.xml"/></Relationships>`,
  // LibreOffice throws away stored results that are texts or errors unless the file names a program that it knows.
  "docProps/app.xml":
    `${DECLARATION}<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties">` +
    `<Application>Microsoft Excel</Application><AppVersion>16.0300</AppVersion></Properties>`,
  "xl/workbook.xml":
    `${DECLARATION}<workbook xmlns="${MAIN}" xmlns:r="${DOCUMENT_RELATION.slice(0, -1)}">` +
    `<bookViews><workbookView/></bookViews><sheets></sheets></workbook>`,
  "xl/_rels/workbook.xml.rels":
    `${DECLARATION}<Relationships xmlns="${PACKAGE}relationships">` +
    `<Relationship Id="rId1" Type="${DOCUMENT_RELATION}styles" Target="styles.xml"/></Relationships>`,
  "xl/styles.xml": blankStyles(),
};

/** The smallest part of styles that Excel accepts. */
export function blankStyles(): string {
  return (
    `${DECLARATION}<styleSheet xmlns="${MAIN}">` +
    `<fonts count="1"><font><sz val="11"/><name val="Calibri"/><family val="2"/></font></fonts>` +
    `<fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills>` +
    `<borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders>` +
    `<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>` +
    `<cellXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/></cellXfs>` +
    `<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>`
  );
}

/** A sheet without cells, frozen below its heading row. */
export function blankSheet(frozenRows: number, table: string): string {
  const pane =
    frozenRows === 0
      ? ""
      : `<sheetViews><sheetView workbookViewId="0"><pane ySplit="${frozenRows}" topLeftCell="A${frozenRows + 1}"` +
        ` activePane="bottomLeft" state="frozen"/></sheetView></sheetViews>`;
  return (
    `${DECLARATION}<worksheet xmlns="${MAIN}" xmlns:r="${DOCUMENT_RELATION.slice(0, -1)}">` +
    `${pane}<sheetData/>${table}</worksheet>`
  );
}
