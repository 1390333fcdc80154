import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { DEMO_SURVEY } from "../../src/cli/demoSurvey";
import { fontFileName } from "../../src/paper/fontFileName";
import { FONT_NAMES } from "../../src/paper/fonts";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import { writeCsv } from "../../src/workbook/writeCsv";
import type { Estimate } from "../../src/estimate/estimate";
import { bytesOf, json, newFolder, run } from "../cli/run";
import { hasPoppler, textOf } from "./paperTools";

/** So many steps of the search: the same plans on any machine, however busy. */
const STEPS = ["--steps", "300"];

function withSurvey(): string {
  const folder = newFolder();
  writeFileSync(join(folder, "survey.csv"), writeCsv(DEMO_SURVEY.slice(0, 8)));
  return folder;
}

test("the build holds every font, with its licence", () => {
  for (const name of FONT_NAMES) expect(existsSync(join("dist/fonts", fontFileName(name)))).toBe(true);
  expect(readdirSync("dist/fonts").filter((name) => name.startsWith("LICENSE"))).toHaveLength(2);
});

test("paper writes a PDF beside the survey and says what is in it", () => {
  const folder = withSurvey();
  const before = readFileSync(join(folder, "survey.csv"));
  const answer = json(folder, "paper", "survey.csv", "--what", "all", "--paper", "letter", ...STEPS);
  expect(answer["parts"]).toMatchObject([
    { what: "front", pages: 2 },
    { what: "tickets" },
    { what: "plans" },
    { what: "templates", pages: 1 },
    { what: "estimate" },
    { what: "shelf", pages: 1 },
    { what: "labels" },
    { what: "box-labels", pages: 1 },
  ]);
  // Labels are printed on other paper.
  expect(answer["files"]).toEqual([
    expect.stringMatching(/survey-all\.pdf$/),
    expect.stringMatching(/survey-labels\.pdf$/),
  ]);
  expect(readFileSync(join(folder, "survey-all.pdf")).toString("latin1", 0, 8)).toBe("%PDF-1.7");
  expect(Buffer.compare(readFileSync(join(folder, "survey.csv")), before)).toBe(0);
});

test("pages bear the survey, the row and the day; the same day is the same bytes", () => {
  const folder = withSurvey();
  for (const out of ["one.pdf", "other.pdf"])
    expect(run(folder, "paper", "survey.csv", "--date", "2026-05-31", "--out", out).code).toBe(0);
  const [one, other] = ["one.pdf", "other.pdf"].map((name) => readFileSync(join(folder, name)));
  expect(Buffer.compare(one!, other!)).toBe(0);
  expect(one!.toString("latin1")).toContain("(D:20260531");
  if (hasPoppler) expect(textOf(one!)).toContain("survey.csv, 31 May 2026; row 2; sizes in mm; 1 of 2");
});

(hasPoppler ? test : test.skip)("tickets, plans and labels name an object as the survey shows it", () => {
  const folder = newFolder();
  const row = (number: number) => [number, 300, 210, 40, "tray"];
  const book = createWorkbook([
    {
      name: "Survey",
      rows: [["shelfmark", "height mm", "width mm", "depth mm", "enclosure"], row(42), row(1042)],
      formats: ["000000"],
    },
  ]);
  writeFileSync(join(folder, "survey.xlsx"), book);
  for (const what of ["tickets", "plans", "labels"]) {
    const out = `${what}.pdf`;
    expect(run(folder, "paper", "survey.xlsx", "--what", what, "--steps", "20", "--out", out).code).toBe(0);
    const text = textOf(readFileSync(join(folder, out)));
    expect([what, text.includes("000042"), text.includes("001042")]).toEqual([what, true, true]);
  }
});

test("an earlier file is kept unless its replacement is asked for, and the survey always", () => {
  const folder = withSurvey();
  expect(run(folder, "paper", "survey.csv", "--out", "t.pdf").code).toBe(0);
  const again = run(folder, "paper", "survey.csv", "--out", "t.pdf", "--what", "plans", "--seconds", "0.2");
  expect([again.code, again.err]).toEqual([2, expect.stringContaining("there already")]);
  // Refused before the search, which would say how far it is.
  expect(again.err).not.toContain("conservation board");
  expect(run(folder, "paper", "survey.csv", "--out", "t.pdf", "--two-up", "--replace").code).toBe(0);
  expect(readdirSync(folder)).toContain("t.backup-1.pdf");
  const onto = run(folder, "paper", "survey.csv", "--out", "survey.csv", "--replace");
  expect([onto.code, onto.err]).toEqual([2, expect.stringContaining("give a .pdf file")]);
});

test.each([
  [["--what", "ticket"], /what: got "ticket"; give .*did you mean tickets/],
  [["--paper", "A5"], /paper: got "A5"; give A4 or Letter/],
  [["--what", "labels", "--labels", "9x40"], /labels: got "9x40"; give columns x rows/],
  [["--what", "labels", "--labels", "three"], /labels: got "three"/],
  [["--what", "labels", "--label-margin", "99"], /label-margin: got "99"/],
  [["--what", "labels", "--label-order", "size"], /label-order: got "size"; give item or stock/],
  [["--date", "31 May"], /date: got "31 May"; give a day such as 2026-05-31/],
  [["--date", "2026-02-30"], /date: got "2026-02-30"/],
])("paper %j is refused with the cure", (args, message) => {
  const { code, err } = run(withSurvey(), "paper", "survey.csv", ...args);
  expect(code).toBe(2);
  expect(err).toMatch(message);
});

const ifPoppler = hasPoppler ? test : test.skip;

ifPoppler.each([[[]], [["--set", "estimate by=kind"]]])(
  `the printed budget with %j is that of the estimate, line by line${hasPoppler ? "" : " (skipped: poppler-utils is not installed)"}`,
  (args: readonly string[]) => {
    const folder = withSurvey();
    const { lines, cost, contingency, total } = json(
      folder,
      "estimate",
      "survey.csv",
      ...STEPS,
      ...args,
    ) as unknown as Estimate;
    json(folder, "paper", "survey.csv", "--what", "estimate", "--out", "budget.pdf", ...STEPS, ...args);
    const [budget = ""] = textOf(bytesOf(folder, "budget.pdf")).split("Totals are sums of the lines as printed.");
    const printed = [...budget.matchAll(/ (\d+\.\d\d) +(\d+\.\d\d) +(\d+\.\d\d)$/gm)];
    // What has no price has no money either, and is listed under the budget.
    const priced = lines.filter(({ notInCost }) => notInCost === undefined);
    expect(priced.length).toBeLessThan(lines.length);
    const money = [...priced, { cost, contingency, total }].map((line) =>
      [line.cost, line.contingency, line.total].map((sum) => sum.toFixed(2)),
    );
    expect(money.length).toBeGreaterThan(3);
    expect(printed.map(([, ...sums]) => sums)).toEqual(money);
  },
);

test("paper searches longer when seconds are given, says how far it is, and refuses what is no time", () => {
  const folder = withSurvey();
  const { code: found, err: progress } = run(folder, "paper", "survey.csv", "--what", "plans", "--seconds", "0.2");
  expect([found, progress]).toEqual([0, expect.stringMatching(/conservation board 2: \d+ sheets?, .*\d\.\d s/)]);
  const { code, err } = run(folder, "paper", "survey.csv", "--what", "plans", "--seconds", "soon");
  expect([code, err]).toEqual([2, expect.stringContaining('seconds: got "soon"')]);
});

test("paper --help fits the screen and names every option", () => {
  const { out } = run(".", "paper", "--help");
  expect(out.split("\n").filter((line) => line.length > 120)).toEqual([]);
  for (const option of [
    "--what",
    "--paper",
    "--two-up",
    "--labels",
    "--label-margin",
    "--label-order",
    "--seconds",
    "--replace",
  ])
    expect(out).toContain(option);
});

test("many tickets are in one file, and above 200 pages the command says what could be left out", () => {
  const folder = newFolder();
  const plain = Array.from({ length: 100 }, (_, index) => [`LK ${index}`, "165", "120", "12", "folded tray"]);
  writeFileSync(join(folder, "many.csv"), writeCsv([["id", "height", "width", "depth", "enclosure"], ...plain]));
  const { code, out } = run(folder, "paper", "many.csv");
  expect(code).toBe(0);
  expect(out).toMatch(/These are 2\d\d pages: tickets 2\d\d, front \d+\. Fewer: /);
});
