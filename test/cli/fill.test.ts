import { existsSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { strFromU8 } from "fflate";
import { packageOf, partsOf } from "../workbook/made/package";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import { editWorkbook } from "../../src/workbook/editWorkbook";
import { readSheet } from "../../src/workbook/readSheet";
import { converted, EVERY_SHEET_CSV, filtered, hasLibreOffice, shownRows } from "../workbook/made/libreOffice";
import { book, bytesOf, columnOf, csvRows, json, newFolder, run, sheetRows } from "./run";

const CSV = `Shelfmark,Height,Width,Depth,Enclosure,Quantity,Notes
A 1,300,210,40,tray,2,"brittle, loose"
A 2,300,210,40,lidded box,,
A 3,3OO,210,40,tray,,
A 4,300,210,40,none,,
A 5,,,,,,
A 6,200,150,20,slipcase,,=SUM(A1)
Total,1400,1050,180,,2,
`;
const HEADINGS = ["Shelfmark", "Height", "Width", "Depth", "Enclosure", "Quantity", "Notes"];
const PROBLEM = 'height: got "3OO"; give a length such as 40, 40 mm or 1 9/16 in';
const BOARD_COLUMNS = ["preferred board", "board", "caliper"];
const DEFAULTS = [
  ...BOARD_COLUMNS,
  "outside height (mm)",
  "outside width (mm)",
  "outside depth (mm)",
  "board area (m2)",
  "problem",
];

function folderWithCsv(text = CSV): string {
  const folder = newFolder();
  writeFileSync(join(folder, "survey.csv"), text);
  return folder;
}

/** The same survey as a workbook with a sheet of its own beside it. */
function folderWithBook(...more: Parameters<typeof createWorkbook>[0][number][]): string {
  const folder = newFolder();
  const rows = CSV.trim()
    .split("\n")
    .map((line) => (/"/.test(line) ? ["A 1", "300", "210", "40", "tray", "2", "brittle, loose"] : line.split(",")))
    .map((row, index) =>
      row.map((cell) => (index > 0 && /^\d+$/.test(cell) ? Number(cell) : cell === "" ? null : cell)),
    );
  const survey = { name: "Survey", rows, headingRow: 1, table: "Items" };
  writeFileSync(join(folder, "survey.xlsx"), createWorkbook([survey, ...more]));
  return folder;
}

function formulaOf(folder: string, name: string, cell: string): string | undefined {
  return readSheet(book(folder, name), "Survey", { formulas: true }).formulas.get(cell);
}

describe("a .csv survey", () => {
  test("rows that name no enclosure are given one by a line to type, which does so", () => {
    const folder = folderWithCsv("Shelfmark,Height,Width,Depth,Enclosure\nA 1,300,210,40,tray\nA 2,250,180,30,\n");
    const hint = 'Rows that name no enclosure are all given one with --all "clamshell box"';
    expect(run(folder, "fill", "survey.csv").out).toContain(hint);
    expect(run(folder, "fill", "survey.csv", "--all", "clamshell box", "--out", "b.csv").out).toContain(
      "2 rows: 2 sized",
    );
  });

  test("becomes a .csv with the figures in new columns, every cell of the user's as it was", () => {
    const folder = folderWithCsv();
    const { code, out, err } = run(folder, "fill", "survey.csv");
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toContain("7 rows: 3 sized, 2 blank or without enclosure, 1 left out, 1 with a problem");
    expect(out).toContain(`row 4, A 3: ${PROBLEM}`);
    const rows = csvRows(folder, "survey-filled.csv");
    expect(rows[0]).toEqual([...HEADINGS, ...DEFAULTS]);
    expect(rows.map((row) => row.slice(0, HEADINGS.length))).toEqual(csvRows(folder, "survey.csv"));
    // Tray, flanged: inside 303 x 213, walls of 2.5 by the guide, covered by 0.5 on each face.
    expect(rows[1]!.slice(7, 12)).toEqual(["", "conservation board 2.5", "2.5", "309", "219"]);
    expect(columnOf(rows, "problem")).toEqual(["", "", PROBLEM, "", "", "", "row of totals: left out"]);
    expect(columnOf(rows, "outside height (mm)").slice(2, 5)).toEqual(["", "", ""]);
    expect(bytesOf(folder, "survey.csv")).toEqual(new TextEncoder().encode(CSV));
  });

  test("its board area is of both copies", () => {
    const folder = folderWithCsv();
    run(folder, "fill", "survey.csv", "--columns", "board area; base length");
    const rows = csvRows(folder, "survey-filled.csv");
    expect(rows[0]!.slice(7)).toEqual([...BOARD_COLUMNS, "board area (m2)", "base length (mm)", "problem"]);
    // Base 303 x 213; side walls 308 long and head walls 213, two each, 45 high: inside depth 42.5 and a base of 2.5.
    const one = (303 * 213 + 2 * 308 * 45 + 2 * 213 * 45) / 1e6;
    expect(Number(rows[1]![10])).toBeCloseTo(2 * one, 9);
    expect(rows[1]![11]).toBe("303");
  });

  test("becomes a workbook: a table with live formulas, their results, settings and stock, the cut list", () => {
    const folder = folderWithCsv();
    expect(run(folder, "fill", "survey.csv", "--out", "new.xlsx", "--cut-list").code).toBe(0);
    const { sheets, tables, names } = book(folder, "new.xlsx");
    expect(sheets.map(({ name }) => name)).toEqual([
      "Survey",
      "settings",
      "stock",
      "board guide",
      "board choices",
      "Cut list",
    ]);
    expect(tables.map(({ name }) => name)).toEqual(["Survey"]);
    expect(names.filter(({ hidden }) => !hidden).map(({ name }) => name)).toEqual(["settings", "stock", "board_guide"]);
    const rows = sheetRows(folder, "new.xlsx", "Survey");
    expect(rows[0]).toEqual([...HEADINGS, ...DEFAULTS]);
    expect(rows[1]!.slice(0, 7)).toEqual(["A 1", 300, 210, 40, "tray", 2, "brittle, loose"]);
    expect(rows[6]![6]).toBe("=SUM(A1)");
    expect(rows[1]![10]).toBe(309);
    expect(rows[3]!.at(-1)).toBe(PROBLEM);
    expect(rows[3]![10]).toEqual({ error: "#VALUE!" });
    expect(formulaOf(folder, "new.xlsx", "K2")).toBe(
      '_xldudf_ENC_OUTSIDE($B2,$C2,$D2,$E2,"height",settings,stock,"unit=mm","wall board="&IF($I2=0,"",$I2))',
    );
    expect(formulaOf(folder, "new.xlsx", "K8")).toBeUndefined();
    const list = sheetRows(folder, "new.xlsx", "Cut list");
    expect(list[0]!.slice(0, 4)).toEqual(["identifier", "enclosure", "part", "count"]);
    expect(list[1]!.slice(0, 6)).toEqual(["A 1", "tray", "base", 2, 303, 213]);
    expect(list.find((row) => row[0] === "A 3")![2]).toBe(PROBLEM);
  });

  test("--cut-list beside a .csv is a second .csv", () => {
    const folder = folderWithCsv();
    const { files } = json(folder, "fill", "survey.csv", "--cut-list") as { files: { what: string; path: string }[] };
    expect(files.map(({ what }) => what)).toEqual(["filled survey", "cut list"]);
    expect(readdirSync(folder).sort()).toEqual(["survey-filled-cut-list.csv", "survey-filled.csv", "survey.csv"]);
    expect(csvRows(folder, "survey-filled-cut-list.csv")[1]!.slice(0, 6)).toEqual([
      "A 1",
      "tray",
      "base",
      "2",
      "303",
      "213",
    ]);
  });

  test("semicolons and decimal commas go out as they came in", () => {
    const folder = folderWithCsv("Signatur;Height;Width;Depth;Enclosure\r\nA 1;30,5;21;4;tray\r\n");
    expect(run(folder, "fill", "survey.csv", "--unit", "cm", "--columns", "inside height").code).toBe(0);
    const text = new TextDecoder().decode(bytesOf(folder, "survey-filled.csv"));
    expect(text).toMatch(
      /^\ufeff?Signatur;Height;Width;Depth;Enclosure;preferred board;board;caliper;inside height \(cm\);problem\r\n/,
    );
    expect(text).toContain("A 1;30,5;21;4;tray;;conservation board 2.5;2,5;30,8;");
  });
});

describe("a workbook", () => {
  test("keeps its own sheets and cells, and is not written over", () => {
    const folder = folderWithBook({ name: "Diary", rows: [["kept"]] });
    const before = bytesOf(folder, "survey.xlsx");
    expect(run(folder, "fill", "survey.xlsx").code).toBe(0);
    expect(bytesOf(folder, "survey.xlsx")).toEqual(before);
    expect(book(folder, "survey-filled.xlsx").sheets.map(({ name }) => name)).toEqual([
      "Survey",
      "Diary",
      "settings",
      "stock",
      "board guide",
      "board choices",
    ]);
    const own = (name: string) =>
      sheetRows(folder, name, "Survey").map((row) => HEADINGS.map((_, index) => row[index] ?? null));
    expect(own("survey-filled.xlsx")).toEqual(own("survey.xlsx"));
  });

  test("--values writes no formula and no sheet", () => {
    const folder = folderWithBook();
    run(folder, "fill", "survey.xlsx", "--values");
    const { formulas, rows } = readSheet(book(folder, "survey-filled.xlsx"), "Survey", { formulas: true });
    expect(formulas.size).toBe(0);
    expect(rows[1]!.slice(8, 12)).toEqual(["conservation board 2.5", 2.5, 309, 219]);
    expect(book(folder, "survey-filled.xlsx").sheets.map(({ name }) => name)).toEqual(["Survey"]);
  });

  test("--in-place keeps a backup, byte for byte", () => {
    const folder = folderWithBook();
    const before = bytesOf(folder, "survey.xlsx");
    const { files } = json(folder, "fill", "survey.xlsx", "--in-place") as { files: { what: string; path: string }[] };
    expect(files.map(({ what }) => what)).toEqual(["filled survey", "as it was before"]);
    const backup = readdirSync(folder).filter((name) => name !== "survey.xlsx");
    expect(backup).toEqual(["survey.backup-1.xlsx"]);
    expect(bytesOf(folder, backup[0]!)).toEqual(before);
    expect(sheetRows(folder, "survey.xlsx", "Survey")[0]).toEqual([...HEADINGS, ...DEFAULTS]);
  });

  test("a protected one is refused with the line that writes a text table, which then holds what it shows", () => {
    const folder = newFolder();
    const rows = [
      ["Shelfmark", "Height", "Width", "Depth", "Enclosure", "Seen", "Notes"],
      [42, 300.25, 210, 40, "tray", 45_359, "=SUM(A1)"],
      [43, 200, 150, "2O", "tray", 45_360, null],
    ];
    const formats = ["000000", "0", "0", undefined, undefined, "yyyy-mm-dd"];
    const parts = partsOf(createWorkbook([{ name: "Survey", rows, formats }]));
    const sheet = strFromU8(parts["xl/worksheets/sheet1.xml"]!);
    const locked = sheet.replace("</sheetData>", '</sheetData><sheetProtection sheet="1"/>');
    writeFileSync(join(folder, "survey.xlsx"), packageOf({ ...parts, "xl/worksheets/sheet1.xml": locked }));
    const { code, err } = run(folder, "fill", "survey.xlsx");
    const option = /or add (--out "survey-filled\.csv") for a text table/.exec(err)?.[1];
    expect([code, err, option]).toEqual([2, expect.stringContaining("protected"), expect.any(String)]);
    expect(run(folder, "fill", "survey.xlsx", "--out", "survey-filled.csv", "--columns", "inside height").code).toBe(0);
    expect(csvRows(folder, "survey-filled.csv").map((row) => row.filter((_, c) => c < 7 || c > 9))).toEqual([
      [...rows[0]!, "inside height (mm)", "problem"],
      ["000042", "300.25", "210", "40", "tray", "2024-03-08", "'=SUM(A1)", "303.5", ""],
      ["000043", "200", "150", "2O", "tray", "2024-03-09", "", "", expect.stringContaining('depth: got "2O"')],
    ]);
  });

  test("an output that is there is refused, with --replace it is kept as a backup", () => {
    const folder = folderWithBook();
    writeFileSync(join(folder, "survey-filled.xlsx"), "mine");
    const { code, out, err } = run(folder, "fill", "survey.xlsx");
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(/^output: got ".*survey-filled\.xlsx", which is there already; .*replace\n$/);
    expect(new TextDecoder().decode(bytesOf(folder, "survey-filled.xlsx"))).toBe("mine");
    expect(run(folder, "fill", "survey.xlsx", "--replace").code).toBe(0);
    const backup = readdirSync(folder).find((name) => name.includes("backup"))!;
    expect(new TextDecoder().decode(bytesOf(folder, backup))).toBe("mine");
  });
});

describe("run again", () => {
  test("its own columns are replaced, what the user wrote beside them stays", () => {
    const folder = folderWithBook();
    run(folder, "fill", "survey.xlsx", "--in-place");
    const edited = editWorkbook(book(folder, "survey.xlsx"), {
      cells: [
        { sheet: "Survey", row: 1, column: 17, content: "mine" },
        { sheet: "Survey", row: 2, column: 17, content: 5 },
        { sheet: "Survey", row: 2, column: 2, content: 320 },
      ],
    });
    writeFileSync(join(folder, "survey.xlsx"), edited.bytes);
    run(folder, "fill", "survey.xlsx", "--in-place", "--columns", "outside height; side wall length");
    const rows = sheetRows(folder, "survey.xlsx", "Survey");
    const headings = rows[0]!.filter((cell) => cell !== null && cell !== undefined);
    expect(headings.filter((cell) => cell === "outside height (mm)")).toEqual(["outside height (mm)"]);
    expect(new Set(headings).size).toBe(headings.length);
    expect(columnOf(rows, "outside height (mm)")[0]).toBe(329);
    expect(columnOf(rows, "side wall length (mm)")[0]).toBe(328);
    expect(columnOf(rows, "mine")[0]).toBe(5);
    expect(book(folder, "survey.xlsx").sheets.map(({ name }) => name)).toEqual([
      "Survey",
      "settings",
      "stock",
      "board guide",
      "board choices",
    ]);
  });

  test("the settings sheet is the user's: a fit changed there is followed", () => {
    const folder = folderWithBook();
    run(folder, "fill", "survey.xlsx", "--in-place");
    const row = sheetRows(folder, "survey.xlsx", "settings").findIndex(([name]) => name === "fit") + 1;
    const edited = editWorkbook(book(folder, "survey.xlsx"), {
      cells: [{ sheet: "settings", row, column: 2, content: "10 mm" }],
    });
    writeFileSync(join(folder, "survey.xlsx"), edited.bytes);
    run(folder, "fill", "survey.xlsx", "--in-place");
    // 300 + 1 covering + 10 play, walls of 2.5, covering of 1.
    expect(columnOf(sheetRows(folder, "survey.xlsx", "Survey"), "outside height (mm)")[0]).toBe(317);
    expect(sheetRows(folder, "survey.xlsx", "settings")[row - 1]![1]).toBe("10 mm");
  });

  test("a cut list of an earlier run is written again, asked for or not", () => {
    const folder = folderWithBook();
    run(folder, "fill", "survey.xlsx", "--in-place", "--cut-list");
    const edited = editWorkbook(book(folder, "survey.xlsx"), {
      cells: [{ sheet: "Survey", row: 2, column: 2, content: 320 }],
    });
    writeFileSync(join(folder, "survey.xlsx"), edited.bytes);
    run(folder, "fill", "survey.xlsx", "--in-place");
    expect(sheetRows(folder, "survey.xlsx", "Cut list")[1]!.slice(0, 6)).toEqual(["A 1", "tray", "base", 2, 323, 213]);
    expect(book(folder, "survey.xlsx").sheets.map(({ name }) => name)).toEqual([
      "Survey",
      "settings",
      "stock",
      "board guide",
      "board choices",
      "Cut list",
    ]);
  });

  test("a range that the user called settings is read, and no sheet is made for it", () => {
    const folder = newFolder();
    const rows = [HEADINGS.slice(0, 5), ["A 1", 300, 210, 40, "tray"]];
    const mine = { name: "My shop", rows: [["a title"], ["setting", "value"], ["fit", "10 mm"]] };
    const named = { name: "settings", refersTo: "'My shop'!$A$2:$B$3" };
    writeFileSync(join(folder, "survey.xlsx"), createWorkbook([{ name: "Survey", rows }, mine], [named]));
    expect(run(folder, "fill", "survey.xlsx", "--set", "covering allowance=3 mm").code).toBe(0);
    expect(book(folder, "survey-filled.xlsx").sheets.map(({ name }) => name)).toEqual([
      "Survey",
      "My shop",
      "stock",
      "board guide",
      "board choices",
    ]);
    // 300 + 3 + 10, walls of 2.5, 1.5 on each face.
    expect(sheetRows(folder, "survey-filled.xlsx", "Survey")[1]![8]).toBe(321);
    expect(formulaOf(folder, "survey-filled.xlsx", "I2")).toBe(
      '_xldudf_ENC_OUTSIDE($B2,$C2,$D2,$E2,"height",settings,stock,"unit=mm",{"setting","value";"covering allowance","3 mm"},"wall board="&IF($G2=0,"",$G2))',
    );
  });
});

test("a board preferred in one row of a text table changes its board, its parts, the sheets and the budget", () => {
  const folder = newFolder();
  const survey = (preferred: string) =>
    [
      "Shelfmark,Height,Width,Depth,Weight (kg),Enclosure,Preferred board",
      `S 1,300,220,40,0.9,tray,${preferred}`,
      "S 2,300,220,40,0.9,tray,",
    ].join("\n");
  const answers = (preferred: string) => {
    writeFileSync(join(folder, "survey.csv"), survey(preferred));
    const { boards } = json(folder, "fill", "survey.csv", "--out", "filled.csv", "--columns", FIGURES, "--replace");
    const rows = csvRows(folder, "filled.csv");
    const { lines, total } = json(folder, "estimate", "survey.csv", "--steps", "50") as {
      lines: { material: string; stock: string; quantity: number }[];
      total: number;
    };
    const bought = lines.filter(({ material }) => material === "board");
    return {
      rows: rows.slice(1).map((row) => row.slice(7)),
      boards: (boards as { stock: string; items: number; laminated: number; toBuy: number }[])
        .filter(({ stock }) => stock.includes("board"))
        .map(({ stock, items, laminated, toBuy }) => [stock, items, laminated, toBuy]),
      bought: bought.map(({ stock, quantity }) => [stock, quantity]),
      total,
    };
  };
  const FIGURES = "board; caliper; base stock; base count; problem";
  const byGuide = answers("");
  const preferred = answers("2 x conservation board 2");
  const GUIDE = ["conservation board 2.5", "2.5", "conservation board 2.5", "1", ""];
  expect(byGuide.rows).toEqual([GUIDE, GUIDE]);
  expect(preferred.rows).toEqual([["2 x conservation board 2", "4", "conservation board 2", "2", ""], GUIDE]);
  expect(byGuide.boards).toEqual([["conservation board 2.5", 2, 0, 1]]);
  expect(preferred.boards).toEqual([
    ["conservation board 2", 1, 1, 1],
    ["conservation board 2.5", 1, 0, 1],
  ]);
  expect(preferred.bought).toEqual([
    ["conservation board 2", 1],
    ["conservation board 2.5", 1],
  ]);
  // One sheet of conservation board 2 more, at 5.40 and 10 % for spoilt material.
  expect(preferred.total - byGuide.total).toBeCloseTo(5.94, 6);
});

describe("--json", () => {
  test("its counts add up to the rows, its board areas to those of the rows", () => {
    const folder = folderWithCsv();
    const answer = json(folder, "fill", "survey.csv") as {
      readonly rows: number;
      readonly sized: number;
      readonly inBoxes: number;
      readonly withoutEnclosure: number;
      readonly leftOut: number;
      readonly problems: readonly { readonly row: number; readonly identifier: string; readonly problem: string }[];
      readonly enclosures: readonly { readonly enclosure: string; readonly count: number }[];
      readonly boardArea: readonly { readonly material: string; readonly items: number; readonly area: number }[];
      readonly areaUnit: string;
      readonly said: readonly string[];
      readonly files: readonly { readonly what: string; readonly path: string }[];
    };
    const { rows, sized, inBoxes, withoutEnclosure, leftOut, problems, boardArea } = answer;
    expect({ rows, sized, inBoxes, withoutEnclosure, leftOut }).toEqual({
      rows: 7,
      sized: 3,
      inBoxes: 0,
      withoutEnclosure: 2,
      leftOut: 1,
    });
    expect(sized + inBoxes + withoutEnclosure + leftOut + problems.length).toBe(rows);
    expect(problems).toEqual([{ row: 4, identifier: "A 3", problem: PROBLEM }]);
    expect(answer.enclosures).toEqual([
      { enclosure: "tray", count: 2 },
      { enclosure: "lidded box", count: 1 },
      { enclosure: "slipcase", count: 1 },
    ]);
    expect(answer.areaUnit).toBe("m2");
    const areas = columnOf(csvRows(folder, "survey-filled.csv"), "board area (m2)").map(Number);
    const sum = (values: readonly number[]) => values.reduce((total, each) => total + each, 0);
    const boards = boardArea.filter(({ material }) => material === "board");
    expect(sum(boards.map(({ area }) => area))).toBeCloseTo(sum(areas), 9);
    expect(sum(boards.map(({ items }) => items))).toBe(sum(answer.enclosures.map(({ count }) => count)));
    expect(answer.files.every(({ path }) => existsSync(join(folder, path)) || existsSync(path))).toBe(true);
    expect(answer.said).toContain("headings in row 1, rows 2 to 8");
  });
});

describe("which column is which", () => {
  test("a heading that is not recognised is named by an option", () => {
    const folder = folderWithCsv("Object,Hoehe,Width,Depth,Box kind\nA 1,300,210,40,tray\n");
    expect(run(folder, "fill", "survey.csv").code).toBe(2);
    const options = ["--height", "Hoehe", "--enclosure", "box kind", "--columns", "inside height"];
    expect(run(folder, "fill", "survey.csv", ...options).code).toBe(0);
    expect(csvRows(folder, "survey-filled.csv")[1]!.at(-2)).toBe("303");
  });

  test("a heading that is not there is refused with those that are", () => {
    const folder = folderWithCsv();
    expect(run(folder, "fill", "survey.csv", "--height", "Tallness")).toEqual({
      code: 2,
      out: "",
      err: 'height: got "Tallness"; the headings are "Shelfmark", "Height", "Width", "Depth", "Enclosure", "Quantity", "Notes"; name one of these, or a column letter\n',
    });
  });

  test("--sheet of a workbook with two surveys, --heading-row under titles", () => {
    const folder = newFolder();
    const rows = [["a", "Survey of 1990", null, null, null], HEADINGS.slice(0, 5), ["A 1", 300, 210, 40, "tray"]];
    writeFileSync(
      join(folder, "survey.xlsx"),
      createWorkbook([
        { name: "North", rows },
        { name: "South", rows: [rows[1]!, ["B 1", 200, 150, 30, "tray"]] },
      ]),
    );
    const refused = run(folder, "fill", "survey.xlsx");
    expect(refused.code).toBe(2);
    expect(refused.err).toContain("enclosure-columns fill survey.xlsx --sheet North\n");
    expect(run(folder, "fill", "survey.xlsx", "--sheet", "North", "--heading-row", "2").code).toBe(0);
    expect(sheetRows(folder, "survey-filled.xlsx", "North")[2]![8]).toBe(309);
    expect(sheetRows(folder, "survey-filled.xlsx", "South")[1]!.length).toBe(5);
    expect(run(folder, "fill", "survey.xlsx", "--heading-row", "x").err).toMatch(
      /^heading-row: got "x"; give the number of a row/,
    );
  });
});

describe("settings from files", () => {
  test("--settings, --stock and --set: later over earlier", () => {
    const folder = folderWithCsv();
    writeFileSync(join(folder, "shop.csv"), "setting,value\nfit,10 mm\nwall board,Brown 2.4\n");
    writeFileSync(
      join(folder, "stock.csv"),
      "stock,material,caliper,sheet length,sheet width\nBrown 2.4,board,2.4,1000,700\nThin card,card,0.4,1000,700\n",
    );
    const files = ["--settings", "shop.csv", "--stock", "stock.csv", "--columns", "outside height; base stock"];
    run(folder, "fill", "survey.csv", ...files);
    // 300 + 1 + 10, two walls of 2.4, 1 of covering.
    expect(csvRows(folder, "survey-filled.csv")[1]!.slice(7)).toEqual([
      "",
      "Brown 2.4",
      "2.4",
      "316.8",
      "Brown 2.4",
      "",
    ]);
    run(folder, "fill", "survey.csv", ...files, "--set", "fit=none", "--replace");
    expect(csvRows(folder, "survey-filled.csv")[1]![10]).toBe("306.8");
  });
});

describe("nothing could be done", () => {
  test.each([
    ["a command that is none", ["fil", "survey.csv"], /^command: got "fil"; give fill, .*demo; did you mean fill\?\n$/],
    [
      "an option that is none",
      ["fill", "survey.csv", "--colums", "x"],
      /^options: got Unknown option '--colums'; see --help\n$/,
    ],
    ["no survey", ["fill"], /^survey: got nothing; give a file/],
    [
      "a survey that is not there",
      ["fill", "lost.csv"],
      /^survey: got "lost.csv"; give the path of a file; no such file is there\n$/,
    ],
    ["a survey of another sort", ["fill", "survey.pdf"], /^survey: got "survey.pdf"; give an? \.xlsx/],
    [
      "an output of another sort",
      ["fill", "survey.csv", "--out", "x.pdf"],
      /^out: got "x.pdf"; give a .csv or .xlsx file\n$/,
    ],
    [
      "a setting that is none",
      ["fill", "survey.csv", "--set", "fitt=loose"],
      /^settings: got "fitt"; give the name of a setting; did you mean fit\?/,
    ],
    [
      "a figure that is none",
      ["fill", "survey.csv", "--columns", "inside hight"],
      /^columns: got "inside hight"; .*did you mean inside height/,
    ],
    [
      "a settings file that is not there",
      ["fill", "survey.csv", "--settings", "no.csv"],
      /^settings: got "no.csv"; give the path of a file/,
    ],
    ["a damaged workbook", ["fill", "broken.xlsx"], /^\S.*: got /],
  ])("%s: exit 2, the reason on stderr, nothing written", (_name, args, message) => {
    const folder = folderWithBook();
    writeFileSync(join(folder, "survey.csv"), CSV);
    writeFileSync(join(folder, "survey.pdf"), "%PDF");
    writeFileSync(join(folder, "broken.xlsx"), bytesOf(folder, "survey.xlsx").slice(0, 900));
    const before = readdirSync(folder).sort();
    const { code, out, err } = run(folder, ...args);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(message);
    expect(err.trim().split("\n").length).toBe(1);
    expect(readdirSync(folder).sort()).toEqual(before);
  });
});

const AN_ERROR = /^#(?:VALUE!|N\/A|NAME\?)$/;
const isError = (cell: unknown) => typeof cell === "object" && cell !== null && "error" in cell;

const office = hasLibreOffice ? describe : describe.skip;
office("LibreOffice opens the filled workbook", () => {
  test("and shows the stored numbers and texts, blanks as blanks", () => {
    const folder = folderWithCsv();
    run(folder, "fill", "survey.csv", "--out", "filled.xlsx", "--columns", "default; base stock", "--cut-list");
    const BOARD = "conservation board 2.5";
    const area = "Survey[board area (m2)]";
    const sums = [
      `SUMIFS(${area},Survey[board],"${BOARD}")`,
      `SUMIFS(${area},Survey[board],"*${BOARD}")`,
      `SUMIFS(${area},Survey[caliper],2.5)`,
      // As many as a filter on that caliper shows.
      `COUNTIFS(Survey[caliper],2.5)`,
    ];
    // LibreOffice calculates again what is stored as an error.
    const totals = editWorkbook(book(folder, "filled.xlsx"), {
      sheets: [
        {
          name: "Totals",
          rows: [["sum"], ...sums.map((formula) => [{ formula, result: { error: "#N/A" } as const }])],
        },
      ],
    });
    const files = converted(
      { "filled.xlsx": bytesOf(folder, "filled.xlsx"), "totals.xlsx": totals.bytes },
      EVERY_SHEET_CSV,
    );
    const rows = shownRows(files, "filled", "Survey");
    const stored = sheetRows(folder, "filled.xlsx", "Survey");
    expect(rows[0]).toEqual(stored[0]);
    expect(columnOf(rows, "outside height (mm)").map((cell) => cell?.trim())).toEqual([
      "309.0",
      "317.0",
      // Where it lacks the functions, LibreOffice calculates what holds an error; texts and numbers it keeps.
      expect.stringMatching(AN_ERROR),
      "",
      "",
      "207.0",
      "",
    ]);
    expect(columnOf(rows, "base stock").map((cell) => cell?.trim())).toEqual([
      "conservation board 2.5",
      "conservation board 2.5",
      expect.stringMatching(AN_ERROR),
      "",
      "",
      expect.stringMatching(AN_ERROR),
      "",
    ]);
    const [boards, areas] = [columnOf(stored, "board"), columnOf(stored, "board area (m2)")];
    const sum = areas.reduce<number>((all, each, at) => all + (boards[at] === BOARD ? Number(each) : 0), 0);
    const told = shownRows(files, "totals", "Totals").map(([cell]) => Number(cell));
    expect(sum).toBeGreaterThan(0.2);
    for (const each of told.slice(1, 4)) expect(each).toBeCloseTo(sum, 6);
    const ofBoard = stored
      .slice(1)
      .filter((_, at) => boards[at] === BOARD)
      .map(([identifier]) => identifier);
    expect(told[4]).toBe(ofBoard.length);
    const caliper = stored[0]!.indexOf("caliper");
    expect(filtered(bytesOf(folder, "filled.xlsx"), "Survey", caliper, 2.5)).toEqual(ofBoard);
    expect(columnOf(rows, "problem").map((cell) => cell?.trim())).toEqual([
      "",
      "",
      PROBLEM,
      "",
      "",
      "",
      "row of totals: left out",
    ]);
    const errors = stored.flatMap((row, r) => row.flatMap((cell, c) => (isError(cell) ? [`${r} ${c}`] : [])));
    const shown = rows.flatMap((row, r) => row.flatMap((cell, c) => (AN_ERROR.test(cell.trim()) ? [`${r} ${c}`] : [])));
    expect(shown).toEqual(errors);
  });
});
