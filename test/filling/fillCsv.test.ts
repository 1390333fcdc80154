import { strFromU8 } from "fflate";
import { partsOf } from "../workbook/made/package";
import { csvToWorkbook, fillCsv } from "../../src/filling/fillCsv";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { readCsv } from "../../src/workbook/readCsv";
import { readSheet } from "../../src/workbook/readSheet";

test("a text table with a column in doubt becomes a workbook, so that the page can ask with buttons", () => {
  const text = "Archive,,,,,\nRef,Height,Width,Thick,Housing,Box no.\nA 1,24 cm,18,3,tray,7\nA 2,30,20,4,tray,8\n";
  const csv = readCsv(new TextEncoder().encode(text));
  expect(() => fillCsv(csv, ["problem"], [], {})).toThrow('box: got "Box no."');
  const { rows } = readSheet(openWorkbook(csvToWorkbook(csv, {})), "Survey");
  expect(rows.slice(1)).toEqual([
    ["Ref", "Height", "Width", "Thick", "Housing", "Box no."],
    ["A 1", "24 cm", 18, 3, "tray", 7],
    ["A 2", 30, 20, 4, "tray", 8],
  ]);
});

test("a text table without headings becomes a workbook whose first row is a row like the others", () => {
  const csv = readCsv(new TextEncoder().encode("A 1,240,180,30,tray\nA 2,300,200,40,slipcase\n"));
  expect(() => fillCsv(csv, ["problem"], [], {})).toThrow("heading row");
  const bytes = csvToWorkbook(csv, {});
  expect(readSheet(openWorkbook(bytes), "Survey").rows).toEqual([
    ["A 1", 240, 180, 30, "tray"],
    ["A 2", 300, 200, 40, "slipcase"],
  ]);
  const sheet = strFromU8(partsOf(bytes)["xl/worksheets/sheet1.xml"]!);
  expect([sheet.includes("frozen"), sheet.includes("tablePart")]).toEqual([false, false]);
});

test("a survey longer than the arguments that a call can take is filled", () => {
  const rows = Array.from({ length: 150_000 }, (_, i) => `S ${i},300,210,40,none`);
  const csv = readCsv(new TextEncoder().encode(["Shelfmark,Height,Width,Depth,Enclosure", ...rows].join("\n")));
  const { sized, bytes } = fillCsv(csv, ["problem"], [], {});
  expect(sized.outcomes.length).toBe(150_000);
  expect(bytes.length).toBeGreaterThan(150_000 * 20);
});
