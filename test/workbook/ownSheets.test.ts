import { strFromU8 } from "fflate";
import { editWorkbook } from "../../src/workbook/editWorkbook";
import type { CellContent } from "../../src/workbook/edits";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { ownSheets } from "../../src/workbook/ownMarks";
import { readSheet } from "../../src/workbook/readSheet";
import { livedIn } from "./made/livedIn";
import { packageOf, partsOf } from "./made/package";
import { edited } from "./editedBook";

describe("sheets of our own", () => {
  const cuts = {
    name: "cut list",
    rows: [
      ["part", "length"],
      ["base", 300],
    ] as CellContent[][],
    table: "CutList",
    replaceable: true,
    formats: [undefined, "0.0"],
  };
  const first = edited(livedIn(), {
    sheets: [
      cuts,
      {
        name: "settings",
        rows: [
          ["setting", "value"],
          ["unit", "mm"],
        ],
      },
    ],
    names: [{ name: "settings", refersTo: "settings!$A$1:$B$2" }],
  });

  test("come after the last, with a bold heading, widths, frozen rows, a table, and names for what is missing", () => {
    expect(first.after.sheets.map((sheet) => sheet.name)).toEqual([
      "Survey",
      "Summary",
      "Locked",
      "cut list",
      "settings",
    ]);
    expect(first.after.tables.find((table) => table.name === "CutList")).toMatchObject({
      sheet: "cut list",
      id: 4,
      columns: ["part", "length"],
    });
    const sheet = first.xml("xl/worksheets/sheet4.xml");
    expect(sheet).toContain(`<pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/>`);
    expect(sheet).toContain("<cols>");
    expect(first.after.names.map((name) => name.name)).toEqual([
      "unit",
      "_xlnm.Print_Titles",
      "_enclosure_sheet_1",
      "settings",
    ]);
    expect(ownSheets(first.after)).toEqual([{ mark: "_enclosure_sheet_1", sheet: "cut list", wantedName: "cut list" }]);
  });

  test("are replaced by a later run, with all that belonged to them, and nothing else", () => {
    const again = edited(first.result.bytes, {
      sheets: [
        {
          ...cuts,
          rows: [
            ["part", "length"],
            ["wall", 120],
            ["wall", 90],
          ],
        },
      ],
    });
    expect(again.after.sheets.map((sheet) => sheet.name)).toEqual([
      "Survey",
      "Summary",
      "Locked",
      "cut list",
      "settings",
    ]);
    expect(readSheet(again.after, "cut list").rows).toEqual([
      ["part", "length"],
      ["wall", 120],
      ["wall", 90],
    ]);
    expect(again.after.tables.map((table) => table.name).sort()).toEqual(["CutList", "Items"]);
    expect(again.result.removed).toEqual(["xl/tables/table2.xml"]);
  });

  test("keep the name that the user gave them", () => {
    const parts = partsOf(first.result.bytes);
    const book = strFromU8(parts["xl/workbook.xml"]!)
      .replace('name="cut list"', 'name="To cut"')
      .replace("'cut list'!$A$1", "'To cut'!$A$1");
    const again = edited(packageOf({ ...parts, "xl/workbook.xml": book }), { sheets: [cuts] });
    expect(again.after.sheets.map((sheet) => sheet.name)).toContain("To cut");
    expect(again.after.sheets).toHaveLength(5);
  });

  test("go when wantedName, with their parts, names and marks; positions that others are known by move", () => {
    const parts = partsOf(first.result.bytes);
    const book = strFromU8(parts["xl/workbook.xml"]!)
      .replace(
        "</definedNames>",
        `<definedName name="_xlnm.Print_Area" localSheetId="4">settings!$A$1</definedName></definedNames>`,
      )
      .replace('activeTab="1"', 'activeTab="4"');
    const gone = edited(packageOf({ ...parts, "xl/workbook.xml": book }), { removeSheets: ["cut list"] });
    expect(gone.after.sheets.map((sheet) => sheet.name)).toEqual(["Survey", "Summary", "Locked", "settings"]);
    expect([...gone.result.removed].sort()).toEqual([
      "xl/tables/table2.xml",
      "xl/worksheets/_rels/sheet4.xml.rels",
      "xl/worksheets/sheet4.xml",
    ]);
    expect(gone.after.names.find((name) => name.name === "_xlnm.Print_Area")?.sheet).toBe("settings");
    expect(gone.xml("xl/workbook.xml")).toContain('activeTab="3"');
    expect(gone.xml("xl/workbook.xml")).not.toContain("_enclosure_sheet");
  });

  test("stay when a formula elsewhere uses them", () => {
    const parts = partsOf(first.result.bytes);
    const sheet = strFromU8(parts["xl/worksheets/sheet2.xml"]!).replace(
      "</row></sheetData>",
      `<c r="B3"><f>'Cut list'!B2</f><v>1</v></c></row></sheetData>`,
    );
    const used = openWorkbook(packageOf({ ...parts, "xl/worksheets/sheet2.xml": sheet }));
    expect(() => editWorkbook(used, { removeSheets: ["cut list"] })).toThrow(
      "which something else in the workbook uses (xl/worksheets/sheet2.xml)",
    );
  });

  test("never take a name from the user", () => {
    const { after, result } = edited(livedIn(), { names: [{ name: "UNIT", refersTo: "Survey!$A$1" }] });
    expect(after.names.map((name) => [name.name, name.refersTo])).toContainEqual(["unit", "Summary!$A$1"]);
    expect(after.names).toHaveLength(2);
    expect(result.notes).toEqual(["the name UNIT is in the workbook already and stays as it is"]);
  });
});
