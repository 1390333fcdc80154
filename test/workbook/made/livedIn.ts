import { contentTypes, MAIN, packageOf, R, relations } from "./package";

const S = ".spreadsheetml.";
const DRAWING = "http://schemas.openxmlformats.org/drawingml/2006";

/** A one-pixel picture. */
const PICTURE = Uint8Array.from(
  atob("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg=="),
  (letter) => letter.charCodeAt(0),
);

const ITEMS: readonly (readonly [id: string, title: string, height: number, width: number, depth: number])[] = [
  ["A 1", "First & foremost", 300, 210, 45],
  ["A 2", "=not a formula", 250.5, 180, 30],
  ["A 3", "Third", 120, 90, 12],
];

const row = (r: number, [id, title, h, w, d]: (typeof ITEMS)[number]): string =>
  `<row r="${r}" spans="1:6" ht="18" customHeight="1"><c r="A${r}" s="2" t="inlineStr"><is><t>${id}</t></is></c>` +
  `<c r="B${r}" s="2" t="inlineStr"><is><t>${title.replace("&", "&amp;")}</t></is></c>` +
  `<c r="C${r}" s="3"><v>${h}</v></c><c r="D${r}" s="3"><v>${w}</v></c><c r="E${r}" s="3"><v>${d}</v></c>` +
  `<c r="F${r}" s="3"><f>Items[[#This Row],[H (mm)]]*2</f><v>${h * 2}</v></c></row>`;

/** The survey sheet of a workbook that has been lived in for years. */
const SURVEY =
  `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\r\n<worksheet xmlns="${MAIN}" xmlns:r="${R}"` +
  ` xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006" mc:Ignorable="x14ac" xmlns:x14ac="http://schemas.microsoft.com/office/spreadsheetml/2009/9/ac">` +
  `<sheetPr><tabColor rgb="FF00AA00"/></sheetPr><dimension ref="A1:F8"/><sheetViews><sheetView workbookViewId="0"><pane ySplit="4" topLeftCell="A5" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews>` +
  `<sheetFormatPr defaultRowHeight="15" x14ac:dyDescent="0.25"/><cols><col min="1" max="1" width="12" customWidth="1"/><col min="2" max="2" width="30" customWidth="1"/>` +
  `<col min="5" max="16384" width="10" style="3" hidden="0"/></cols><sheetData>` +
  `<row r="1"><c r="A1" s="1" t="inlineStr"><is><r><t xml:space="preserve">Survey </t></r><r><rPr><b/></rPr><t>of boxes</t></r></is></c></row>` +
  `<row r="2"/><row r="4" spans="1:6"><c r="A4" s="1" t="inlineStr"><is><t>Shelfmark</t></is></c><c r="B4" s="1" t="inlineStr"><is><t>Title</t></is></c>` +
  `<c r="C4" s="1" t="inlineStr"><is><t>H (mm)</t></is></c><c r="D4" s="1" t="inlineStr"><is><t>W (mm)</t></is></c><c r="E4" s="1" t="inlineStr"><is><t>D (mm)</t></is></c>` +
  `<c r="F4" s="1" t="inlineStr"><is><t>Twice</t></is></c></row>` +
  ITEMS.map((item, i) => row(5 + i, item)).join("") +
  `<row r="8"><c r="A8" s="1" t="inlineStr"><is><t>Total</t></is></c><c r="F8" s="1"><f>SUBTOTAL(109,Items[Twice])</f><v>1341</v></c></row>` +
  `<!-- a habit of years --></sheetData><mergeCells count="1"><mergeCell ref="A1:F1"/></mergeCells>` +
  `<conditionalFormatting sqref="C5:C7"><cfRule type="cellIs" dxfId="0" priority="1" operator="greaterThan"><formula>200</formula></cfRule></conditionalFormatting>` +
  `<dataValidations count="1"><dataValidation type="decimal" operator="greaterThan" allowBlank="1" sqref="C5:E7"><formula1>0</formula1></dataValidation></dataValidations>` +
  `<pageMargins left="0.7" right="0.7" top="0.75" bottom="0.75" header="0.3" footer="0.3"/><drawing r:id="rId1"/><legacyDrawing r:id="rId2"/>` +
  `<tableParts count="1"><tablePart r:id="rId4"/></tableParts><extLst><ext uri="{05C60535-1F16-4fd2-B633-F4F36F0B64E0}" xmlns:x14="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main">` +
  `<x14:sparklineGroups xmlns:xm="http://schemas.microsoft.com/office/excel/2006/main"><x14:sparklineGroup><x14:colorSeries rgb="FF376092"/><x14:sparklines>` +
  `<x14:sparkline><xm:f>Survey!C5:E5</xm:f><xm:sqref>A9</xm:sqref></x14:sparkline></x14:sparklines></x14:sparklineGroup></x14:sparklineGroups></ext></extLst></worksheet>`;

const TABLE =
  `<table xmlns="${MAIN}" id="3" name="Items" displayName="Items" ref="A4:F8" totalsRowCount="1"><autoFilter ref="A4:F7"><filterColumn colId="2"><filters><filter val="300"/></filters></filterColumn></autoFilter>` +
  `<tableColumns count="6"><tableColumn id="1" name="Shelfmark" totalsRowLabel="Total"/><tableColumn id="2" name="Title"/><tableColumn id="3" name="H (mm)"/>` +
  `<tableColumn id="4" name="W (mm)"/><tableColumn id="7" name="D (mm)"/><tableColumn id="6" name="Twice" totalsRowFunction="sum"><calculatedColumnFormula>Items[[#This Row],[H (mm)]]*2</calculatedColumnFormula></tableColumn></tableColumns>` +
  `<tableStyleInfo name="TableStyleMedium2" showRowStripes="1"/></table>`;

const SUMMARY =
  `<worksheet xmlns="${MAIN}" xmlns:r="${R}"><sheetData><row r="1"><c r="A1" cm="1"><f t="array" aca="1" ref="A1:A3" ca="1">Items[H (mm)]*1</f><v>300</v></c></row>` +
  `<row r="2"><c r="A2"><v>250.5</v></c></row><row r="3"><c r="A3"><v>120</v></c></row></sheetData></worksheet>`;

const LOCKED =
  `<worksheet xmlns="${MAIN}"><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>Height</t></is></c><c r="B1" t="inlineStr"><is><t>Width</t></is></c><c r="C1" t="inlineStr"><is><t>Depth</t></is></c></row>` +
  `<row r="2"><c r="A2"><v>1</v></c><c r="B2"><v>2</v></c><c r="C2"><v>3</v></c></row></sheetData><sheetProtection sheet="1" objects="1" scenarios="1" password="CC1A"/></worksheet>`;

const STYLES =
  `<styleSheet xmlns="${MAIN}"><numFmts count="1"><numFmt numFmtId="170" formatCode="0.0&quot; mm&quot;"/></numFmts>` +
  `<fonts count="2"><font><sz val="11"/><name val="Calibri"/></font><font><b/><sz val="11"/><name val="Calibri"/></font></fonts>` +
  `<fills count="3"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill><fill><patternFill patternType="solid"><fgColor rgb="FFDDEBF7"/></patternFill></fill></fills>` +
  `<borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>` +
  `<cellXfs count="4"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/><xf numFmtId="0" fontId="1" fillId="2" borderId="0" xfId="0" applyFont="1" applyFill="1"/>` +
  `<xf numFmtId="49" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/><xf numFmtId="170" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"><alignment horizontal="right"/></xf></cellXfs>` +
  `<dxfs count="1"><dxf><font><color rgb="FF9C0006"/></font></dxf></dxfs></styleSheet>`;

const CHART =
  `<c:chartSpace xmlns:c="${DRAWING}/chart" xmlns:a="${DRAWING}/main"><c:chart><c:plotArea><c:layout/><c:barChart><c:barDir val="col"/><c:grouping val="clustered"/>` +
  `<c:ser><c:idx val="0"/><c:order val="0"/><c:val><c:numRef><c:f>Survey!$C$5:$C$7</c:f></c:numRef></c:val></c:ser><c:axId val="1"/><c:axId val="2"/></c:barChart>` +
  `<c:catAx><c:axId val="1"/><c:scaling/><c:axPos val="b"/><c:crossAx val="2"/></c:catAx><c:valAx><c:axId val="2"/><c:scaling/><c:axPos val="l"/><c:crossAx val="1"/></c:valAx></c:plotArea></c:chart></c:chartSpace>`;

const anchor = (column: number, inside: string): string =>
  `<xdr:twoCellAnchor><xdr:from><xdr:col>${column}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>10</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from>` +
  `<xdr:to><xdr:col>${column + 3}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>20</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:to>${inside}<xdr:clientData/></xdr:twoCellAnchor>`;

const DRAWINGS =
  `<xdr:wsDr xmlns:xdr="${DRAWING}/spreadsheetDrawing" xmlns:a="${DRAWING}/main">` +
  anchor(
    0,
    `<xdr:graphicFrame><xdr:nvGraphicFramePr><xdr:cNvPr id="2" name="Chart 1"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr><xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm>` +
      `<a:graphic><a:graphicData uri="${DRAWING}/chart"><c:chart xmlns:c="${DRAWING}/chart" xmlns:r="${R}" r:id="rId1"/></a:graphicData></a:graphic></xdr:graphicFrame>`,
  ) +
  anchor(
    4,
    `<xdr:pic><xdr:nvPicPr><xdr:cNvPr id="3" name="Picture 1"/><xdr:cNvPicPr/></xdr:nvPicPr><xdr:blipFill><a:blip xmlns:r="${R}" r:embed="rId2"/><a:stretch><a:fillRect/></a:stretch></xdr:blipFill>` +
      `<xdr:spPr><a:prstGeom prst="rect"><a:avLst/></a:prstGeom></xdr:spPr></xdr:pic>`,
  ) +
  `</xdr:wsDr>`;

/**
 * A workbook by hand with what general libraries lose: a table with totals, chart, picture, comment, sparkline, dynamic
 * array with its metadata, validation, conditional format, merged title, custom XML, a protected sheet, an order of calculation.
 */
export function livedIn(more: Readonly<Record<string, string | Uint8Array>> = {}): Uint8Array {
  return packageOf({
    "[Content_Types].xml": contentTypes(
      ["xl/workbook.xml", `${S}sheet.main+xml`],
      ["xl/worksheets/sheet1.xml", `${S}worksheet+xml`],
      ["xl/worksheets/sheet2.xml", `${S}worksheet+xml`],
      ["xl/worksheets/sheet3.xml", `${S}worksheet+xml`],
      ["xl/styles.xml", `${S}styles+xml`],
      ["xl/tables/table1.xml", `${S}table+xml`],
      ["xl/comments1.xml", `${S}comments+xml`],
      ["xl/calcChain.xml", `${S}calcChain+xml`],
      ["xl/metadata.xml", `${S}sheetMetadata+xml`],
      ["xl/drawings/drawing1.xml", ".drawing+xml"],
      ["xl/charts/chart1.xml", ".drawingml.chart+xml"],
      ["docProps/app.xml", ".extended-properties+xml"],
    ),
    "_rels/.rels": relations(
      ["rId1", "officeDocument", "xl/workbook.xml"],
      ["rId2", "extended-properties", "docProps/app.xml"],
    ),
    "docProps/app.xml": `<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties"><Application>Microsoft Excel</Application></Properties>`,
    "xl/workbook.xml":
      `<workbook xmlns="${MAIN}" xmlns:r="${R}"><fileVersion appName="xl" lastEdited="7" lowestEdited="7" rupBuild="22228"/><workbookPr defaultThemeVersion="124226"/><bookViews><workbookView activeTab="1"/></bookViews><sheets><sheet name="Survey" sheetId="7" r:id="rId1"/><sheet name="Summary" sheetId="9" r:id="rId2"/>` +
      `<sheet name="Locked" sheetId="11" state="hidden" r:id="rId3"/></sheets><definedNames><definedName name="unit">Summary!$A$1</definedName>` +
      `<definedName name="_xlnm.Print_Titles" localSheetId="0">Survey!$4:$4</definedName></definedNames><calcPr calcId="191029"/></workbook>`,
    "xl/_rels/workbook.xml.rels": relations(
      ["rId1", "worksheet", "worksheets/sheet1.xml"],
      ["rId2", "worksheet", "worksheets/sheet2.xml"],
      ["rId3", "worksheet", "worksheets/sheet3.xml"],
      ["rId4", "styles", "styles.xml"],
      ["rId5", "calcChain", "calcChain.xml"],
      ["rId6", "sheetMetadata", "metadata.xml"],
      ["rId7", "customXml", "../customXml/item1.xml"],
    ),
    "xl/worksheets/sheet1.xml": SURVEY,
    "xl/worksheets/_rels/sheet1.xml.rels": relations(
      ["rId1", "drawing", "../drawings/drawing1.xml"],
      ["rId2", "vmlDrawing", "../drawings/vmlDrawing1.vml"],
      ["rId3", "comments", "../comments1.xml"],
      ["rId4", "table", "../tables/table1.xml"],
    ),
    "xl/worksheets/sheet2.xml": SUMMARY,
    "xl/worksheets/sheet3.xml": LOCKED,
    "xl/styles.xml": STYLES,
    "xl/tables/table1.xml": TABLE,
    "xl/comments1.xml": `<comments xmlns="${MAIN}"><authors><author>someone</author></authors><commentList><comment ref="B6" authorId="0"><text><t>check again</t></text></comment></commentList></comments>`,
    "xl/drawings/vmlDrawing1.vml":
      `<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel"><v:shape id="s1" type="#t202" style="visibility:hidden">` +
      `<x:ClientData ObjectType="Note"><x:Row>5</x:Row><x:Column>1</x:Column></x:ClientData></v:shape></xml>`,
    "xl/calcChain.xml": `<calcChain xmlns="${MAIN}"><c r="F5" i="7"/></calcChain>`,
    "xl/metadata.xml":
      `<metadata xmlns="${MAIN}" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray"><metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" copy="1"/></metadataTypes>` +
      `<futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`,
    "xl/drawings/drawing1.xml": DRAWINGS,
    "xl/drawings/_rels/drawing1.xml.rels": relations(
      ["rId1", "chart", "../charts/chart1.xml"],
      ["rId2", "image", "../media/image1.png"],
    ),
    "xl/charts/chart1.xml": CHART,
    "xl/media/image1.png": PICTURE,
    "customXml/item1.xml": `<notes xmlns="urn:someones-own"><note>keep me</note></notes>`,
    ...more,
  });
}
