import { spawn } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { writeCsv } from "../../src/workbook/writeCsv";
import { readZipEntries } from "./zipEntries";
import { book, bytesOf, columnOf, json, newFolder, run, sheetRows } from "./run";

/** So many steps of the search: the same plans on any machine, however busy. */
const STEPS = ["--steps", "300"];

const HEADINGS = ["Identifier", "Height", "Width", "Depth", "Enclosure", "Batch"];

function survey(rows: number): string {
  const folder = newFolder();
  const items = Array.from({ length: rows }, (_, i) => {
    const size = [150 + ((i * 37) % 150), 100 + ((i * 23) % 110), 10 + ((i * 7) % 40)];
    return [`A${i + 1}`, ...size, i % 2 === 0 ? "lidded box" : "tray", i % 3 === 0 ? "May" : "June"];
  });
  writeFileSync(join(folder, "survey.csv"), writeCsv([HEADINGS, ...items]));
  return folder;
}

test("plan --by tells each batch's sheets, and what batching costs beside cutting all together", () => {
  const folder = survey(12);
  const { groups, batching } = json(folder, "plan", "survey.csv", "--by", "batch", ...STEPS) as {
    groups: { group: string; plans: { stock: string; plan?: { sheets: unknown[] } }[] }[];
    batching: { stock: string; unit: string; apart: number; together: number; more: number }[];
  };
  expect(groups.map(({ group }) => group)).toEqual(["May", "June"]);
  const board = batching.find(({ stock }) => stock === "conservation board 2")!;
  const ofGroups = groups.map(({ plans }) => plans.find(({ stock }) => stock === board.stock)!.plan!.sheets.length);
  expect(board.apart).toBe(ofGroups.reduce((sum, each) => sum + each, 0));
  expect(board.more).toBe(board.apart - board.together);
  const together = json(folder, "plan", "survey.csv", ...STEPS) as unknown as {
    stock: string;
    plan: { sheets: unknown[] };
  }[];
  expect(board.together).toBe(together.find(({ stock }) => stock === board.stock)!.plan.sheets.length);
  expect(run(folder, "plan", "survey.csv", "--by", "batch", ...STEPS).out).toContain("What cutting by batch costs");
});

test("the plan of a number of steps is the same at every run, on however many cores", () => {
  const folder = survey(30);
  expect(json(folder, "plan", "survey.csv", ...STEPS)).toEqual(json(folder, "plan", "survey.csv", ...STEPS));
});

test("plan prints what was read and its figures, and the sheets only where they are asked for", () => {
  const folder = survey(6);
  const { out } = run(folder, "plan", "survey.csv", ...STEPS);
  expect(out).toMatch(/^6 items read: 6 complete\n/);
  expect(out).toContain("settings of the fence");
  expect(out).toMatch(
    /sheets? of conservation board 2\. No plan cuts these parts, at finished size, from fewer than \d+ \(proved\)/,
  );
  expect(out).not.toContain("from the side");
  const all = run(folder, "plan", "survey.csv", "--sheets", ...STEPS).out;
  expect(all).toContain("from the side");
  expect(Math.max(...all.split("\n").map((line) => line.length))).toBeLessThan(200);
  run(folder, "plan", "survey.csv", "--out", "sheets.txt", ...STEPS);
  expect(Buffer.from(bytesOf(folder, "sheets.txt")).toString()).toContain("from the side");
});

test("what no sheet holds is told first, by reason, and no figure is made of nothing", () => {
  const folder = newFolder();
  writeFileSync(
    join(folder, "survey.csv"),
    writeCsv([
      HEADINGS.slice(0, 5),
      ["A", "1500", "1400", "900", "four-flap wrapper"],
      ["B", "300", "200", "30", "tray"],
      ["C", "1500", "200", "30", "tray"],
    ]),
  );
  const { out } = run(folder, "plan", "survey.csv", "--set", "wall board=2 mm", ...STEPS);
  expect(out).toMatch(/1 sheet of conservation board 2, without 3 pieces left out\. No plan cuts the other parts, /);
  expect(out).toMatch(
    /^3 items read: 1 complete, 2 in part\n\nLeft out\n {2}conservation board 2: larger than every sheet /,
  );
  expect(out).not.toContain("NaN");
  expect(run(folder, "estimate", "survey.csv", ...STEPS).out).toContain("1 complete, 2 in part");
});

test("a heading that is not there is refused with those that are", () => {
  const { code, err } = run(survey(3), "plan", "survey.csv", "--by", "wek");
  expect(code).toBe(2);
  expect(err).toContain('estimate by: got "wek"; give material, kind, or a heading of the survey');
});

test("the estimate stands as a sheet in a copy of the workbook; every other sheet is as it was, and a rerun replaces it", () => {
  const folder = survey(6);
  run(folder, "fill", "survey.csv", "--out", "book.xlsx");
  const lines = json(folder, "estimate", "book.xlsx", "--out", "with.xlsx", ...STEPS)["lines"] as {
    stock: string;
    total: number;
    notInCost?: string;
  }[];
  const [notice, ...rows] = sheetRows(folder, "with.xlsx", "Estimate");
  expect(notice![0]).toMatch(/^Example prices, not quotes: /);
  expect(columnOf(rows, "stock").slice(0, lines.length)).toEqual(lines.map(({ stock }) => stock));
  // What has no price is blank there.
  expect(columnOf(rows, "total").slice(0, lines.length)).toEqual(
    lines.map(({ total, notInCost }) => (notInCost === undefined ? total : undefined)),
  );
  const [before, after] = [readZipEntries(bytesOf(folder, "book.xlsx")), readZipEntries(bytesOf(folder, "with.xlsx"))];
  const sheets = [...before.keys()].filter((name) => name.startsWith("xl/worksheets/"));
  expect(sheets.length).toBeGreaterThan(2);
  for (const name of sheets) expect(after.get(name)).toEqual(before.get(name));

  const { code, out } = run(folder, "estimate", "with.xlsx", "--in-place", ...STEPS);
  expect({ code, backup: out.includes("as it was before") || out.includes("your workbook") }).toEqual({
    code: 0,
    backup: true,
  });
  expect(book(folder, "with.xlsx").sheets.filter(({ name }) => name.startsWith("Estimate"))).toHaveLength(1);
});

test("a .csv survey cannot take the estimate in", () => {
  const { code, err } = run(survey(2), "estimate", "survey.csv", "--in-place");
  expect(code).toBe(2);
  expect(err).toContain("only a workbook takes the estimate in");
});

test("Ctrl-C ends a long search with the best plans so far", async () => {
  const folder = survey(400);
  const program = [resolve("dist/enclosure-columns.js"), "plan", "survey.csv", "--seconds", "120", "--json"];
  const child = spawn(process.execPath, program, { cwd: folder });
  let out = "";
  let err = "";
  child.stdout.on("data", (piece) => (out += String(piece)));
  child.stderr.on("data", (piece) => {
    err += String(piece);
    if (err.includes("conservation board 2:") && !err.includes("stopping")) child.kill("SIGINT");
  });
  const code = await new Promise((done) => child.on("close", done));
  expect(code).toBe(0);
  expect(err).toContain("stopping: the best plans so far are kept");
  const plans = JSON.parse(out) as { stock: string; plan: { sheets: unknown[] } }[];
  expect(plans.find(({ stock }) => stock === "conservation board 2")!.plan.sheets.length).toBeGreaterThan(20);
});
