import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { escapeXml } from "../../../src/workbook/escape";
import { readCsv } from "../../../src/workbook/readCsv";

/** Every sheet as comma separated UTF-8, cells as they are shown. */
export const EVERY_SHEET_CSV = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,true,false,false,-1";

/** On a build machine LibreOffice must be there, so that these tests cannot pass by not running. */
export const hasLibreOffice = process.env["CI"] === "true" || spawnSync("soffice", ["--version"]).status === 0;

/** Converts files with LibreOffice in one run; gives the files that it wrote, by name. */
export function converted(
  files: Readonly<Record<string, Uint8Array | string>>,
  format: string,
): Readonly<Record<string, Uint8Array>> {
  const folder = mkdtempSync(join(tmpdir(), "office-"));
  const out = mkdtempSync(join(tmpdir(), "office-out-"));
  for (const [name, content] of Object.entries(files)) writeFileSync(join(folder, name), content);
  const paths = Object.keys(files).map((name) => join(folder, name));
  const profile = `-env:UserInstallation=file://${mkdtempSync(join(tmpdir(), "office-profile-"))}`;
  const run = spawnSync("soffice", [profile, "--headless", "--convert-to", format, "--outdir", out, ...paths], {
    encoding: "utf8",
    timeout: 120_000,
  });
  if (run.status !== 0) throw new Error(`LibreOffice: ${run.stderr}${run.error?.message ?? ""}`);
  return Object.fromEntries(readdirSync(out).map((name) => [name, new Uint8Array(readFileSync(join(out, name)))]));
}

/**
 * The first cells of the rows that LibreOffice shows when a table is filtered, as by its own menu, to one number in one
 * of its columns.
 *
 * @param column counted from 0 in the table
 */
export function filtered(workbook: Uint8Array, table: string, column: number, value: number): readonly string[] {
  const folder = mkdtempSync(join(tmpdir(), "office-"));
  const [source, shown, profile] = ["in.xlsx", "shown.txt", "profile"].map((name) => join(folder, name)) as [
    string,
    string,
    string,
  ];
  const office = (...args: readonly string[]) =>
    spawnSync("soffice", [`-env:UserInstallation=file://${profile}`, "--headless", ...args], {
      encoding: "utf8",
      timeout: 120_000,
    });
  // The first start fills the profile, over anything that is there.
  office("--terminate_after_init");
  const library = join(profile, "user", "basic", "Standard");
  writeFileSync(source, workbook);
  const list = (name: string, of: string) =>
    `<?xml version="1.0" encoding="UTF-8"?>\n<library:${name} xmlns:library="http://openoffice.org/2000/library" xmlns:xlink="http://www.w3.org/1999/xlink"${of}</library:${name}>`;
  writeFileSync(
    join(profile, "user", "basic", "script.xlc"),
    list(
      "libraries",
      '><library:library library:name="Standard" xlink:href="$(USER)/basic/Standard/script.xlb/" xlink:type="simple" library:link="false"/>',
    ),
  );
  writeFileSync(
    join(library, "script.xlb"),
    list("library", ' library:name="Standard" library:readonly="false"><library:element library:name="Filter"/>'),
  );
  const macro = `
Sub Show
  Dim hidden(0) As New com.sun.star.beans.PropertyValue
  hidden(0).Name = "Hidden"
  hidden(0).Value = True
  book = StarDesktop.loadComponentFromURL("file://${source}", "_blank", 0, hidden())
  table = book.DatabaseRanges.getByName("${table}")
  Dim wanted(0) As New com.sun.star.sheet.TableFilterField
  wanted(0).Field = ${column}
  wanted(0).IsNumeric = True
  wanted(0).Operator = com.sun.star.sheet.FilterOperator.EQUAL
  wanted(0).NumericValue = ${value}
  table.getFilterDescriptor().setFilterFields(wanted())
  table.refresh()
  at = table.DataArea
  sheet = book.Sheets.getByIndex(at.Sheet)
  Open "${shown}" For Output As #1
  For row = at.StartRow + 1 To at.EndRow
    If sheet.Rows.getByIndex(row).IsVisible Then Print #1, sheet.getCellByPosition(at.StartColumn, row).String
  Next row
  Close #1
  book.close(True)
  StarDesktop.terminate()
End Sub`;
  writeFileSync(
    join(library, "Filter.xba"),
    `<?xml version="1.0" encoding="UTF-8"?>\n<script:module xmlns:script="http://openoffice.org/2000/script" script:name="Filter" script:language="StarBasic">${escapeXml(macro)}</script:module>`,
  );
  const run = office("macro:///Standard.Filter.Show");
  if (run.status !== 0 || !existsSync(shown)) throw new Error(`LibreOffice: ${run.stderr}${run.error?.message ?? ""}`);
  return readFileSync(shown, "utf8")
    .split(/\r?\n/)
    .filter((line) => line !== "");
}

/** The rows of a sheet as LibreOffice shows them. */
export function shownRows(
  files: Readonly<Record<string, Uint8Array>>,
  workbook: string,
  sheet: string,
): readonly (readonly string[])[] {
  const file = files[`${workbook}-${sheet}.csv`];
  if (!file)
    throw new Error(`LibreOffice did not write ${workbook}-${sheet}.csv, but ${Object.keys(files).join(", ")}`);
  return readCsv(file).rows;
}

/** A survey in LibreOffice's own flat form: titles, merged cells, a filter, a name, validation, a conditional format, a comment, a date, a formula. */
export const FLAT_SURVEY = `<?xml version="1.0" encoding="UTF-8"?>
<office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0"
 xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0" xmlns:fo="urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0"
 xmlns:number="urn:oasis:names:tc:opendocument:xmlns:datastyle:1.0" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:calcext="urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0"
 office:version="1.3" office:mimetype="application/vnd.oasis.opendocument.spreadsheet">
<office:automatic-styles>
 <number:date-style style:name="D1"><number:year number:style="long"/><number:text>-</number:text><number:month number:style="long"/><number:text>-</number:text><number:day number:style="long"/></number:date-style>
 <style:style style:name="date" style:family="table-cell" style:data-style-name="D1"/>
 <style:style style:name="head" style:family="table-cell"><style:text-properties fo:font-weight="bold"/></style:style>
</office:automatic-styles>
<office:body><office:spreadsheet>
<table:content-validations><table:content-validation table:name="v1" table:condition="of:cell-content()&gt;0" table:base-cell-address="Boxes.C5"/></table:content-validations>
<table:table table:name="Boxes">
 <table:table-row><table:table-cell table:number-columns-spanned="5" table:number-rows-spanned="1" office:value-type="string"><text:p>Boxes for the reading room</text:p></table:table-cell></table:table-row>
 <table:table-row/><table:table-row/>
 <table:table-row><table:table-cell table:style-name="head" office:value-type="string"><text:p>Shelfmark</text:p></table:table-cell><table:table-cell table:style-name="head" office:value-type="string"><text:p>Seen on</text:p></table:table-cell><table:table-cell table:style-name="head" office:value-type="string"><text:p>H (mm)</text:p></table:table-cell><table:table-cell table:style-name="head" office:value-type="string"><text:p>W (mm)</text:p></table:table-cell><table:table-cell table:style-name="head" office:value-type="string"><text:p>D (mm)</text:p></table:table-cell></table:table-row>
 <table:table-row><table:table-cell office:value-type="string"><office:annotation><dc:creator>someone</dc:creator><text:p>fragile</text:p></office:annotation><text:p>A 1</text:p></table:table-cell><table:table-cell table:style-name="date" office:value-type="date" office:date-value="2024-03-08"><text:p>2024-03-08</text:p></table:table-cell><table:table-cell table:content-validation-name="v1" office:value-type="float" office:value="300"><text:p>300</text:p></table:table-cell><table:table-cell office:value-type="float" office:value="210"><text:p>210</text:p></table:table-cell><table:table-cell table:formula="of:=[.C5]/10" office:value-type="float" office:value="30"><text:p>30</text:p></table:table-cell></table:table-row>
 <table:table-row><table:table-cell office:value-type="string"><text:p>=A2</text:p></table:table-cell><table:table-cell/><table:table-cell office:value-type="float" office:value="250.5"><text:p>250.5</text:p></table:table-cell><table:table-cell office:value-type="float" office:value="180"><text:p>180</text:p></table:table-cell><table:table-cell office:value-type="float" office:value="22"><text:p>22</text:p></table:table-cell></table:table-row>
 <calcext:conditional-formats><calcext:conditional-format calcext:target-range-address="Boxes.C5:Boxes.C6"><calcext:condition calcext:apply-style-name="Default" calcext:value="&gt;200" calcext:base-cell-address="Boxes.C5"/></calcext:conditional-format></calcext:conditional-formats>
</table:table>
<table:table table:name="Notes"><table:table-row><table:table-cell office:value-type="string"><text:p>kept</text:p></table:table-cell></table:table-row></table:table>
<table:named-expressions><table:named-range table:name="house_unit" table:base-cell-address="$Notes.$A$1" table:cell-range-address="$Notes.$A$1"/></table:named-expressions>
<table:database-ranges><table:database-range table:name="__Anonymous_Sheet_DB__0" table:target-range-address="Boxes.A4:Boxes.E6" table:display-filter-buttons="true"/></table:database-ranges>
</office:spreadsheet></office:body></office:document>`;
