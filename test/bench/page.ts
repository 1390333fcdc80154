/**
 * How long the local page takes, in headless Chromium: from asking for it until the stored answers are drawn, until
 * every formula is calculated again, and from one edit to its new answer. Rows have six figures each.
 */
import { rmSync } from "node:fs";
import { chromium, type Page } from "playwright-core";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import { fillWorkbook } from "../../src/filling/fillWorkbook";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { serving } from "../page/serving";

const ROUNDS = 5;
const EDITS = 5;
const HEADINGS = ["Shelfmark", "Title", "Height", "Width", "Depth", "Enclosure", "Quantity"];
const KINDS = ["tray", "lidded box", "three-tray box", "clamshell box", "folded tray"];
const FIGURES = ["outside height", "outside width", "outside depth", "base length", "board area", "problem"];

function filledSurvey(rows: number): Uint8Array {
  const cells = Array.from({ length: rows }, (_, i) => [
    `S ${i + 1}`,
    `Item ${i + 1}`,
    150 + ((i * 7) % 300),
    100 + ((i * 5) % 200),
    8 + ((i * 3) % 70),
    KINDS[i % KINDS.length]!,
    1 + (i % 3),
  ]);
  const survey = createWorkbook([{ name: "Survey", rows: [HEADINGS, ...cells], headingRow: 1, table: "Survey" }]);
  const asked = { figures: FIGURES, settings: [], recognise: {}, values: false, cutList: false };
  return fillWorkbook(openWorkbook(survey), asked).edit.bytes;
}

/** Runs in the page: text, since what builds this file names its functions in a way that a page does not know. */
const EDIT = (height: number): string => `(async () => {
  const sheet = openGrid.workbook().getSheetByName("Survey");
  const answer = sheet.getRange("H3");
  const before = answer.getValue();
  const start = performance.now();
  sheet.getRange("C3").setValue(${height});
  while (answer.getValue() === before) await new Promise((done) => setTimeout(done, 4));
  const took = performance.now() - start;
  await new Promise((done) => setTimeout(done, 600));
  return took;
})()`;

const markOf = (page: Page, name: string): Promise<number> =>
  page.evaluate(`performance.getEntriesByName("${name}")[0].startTime`);

async function main(): Promise<void> {
  const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox"] });
  for (const rows of [200, 2_000, 10_000]) {
    const bytes = filledSurvey(rows);
    const found: { answers: number; ready: number; edit: number }[] = [];
    for (let round = 0; round < ROUNDS; round++) {
      const served = await serving("survey.xlsx", bytes);
      const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
      await page.goto(served.address);
      await page.waitForFunction(() => document.body.dataset["ready"] === "yes");
      const edits: number[] = [];
      for (let edit = 0; edit < EDITS; edit++) edits.push(await page.evaluate<number>(EDIT(200 + edit * 11)));
      const [answers, ready] = [await markOf(page, "answers"), await markOf(page, "ready")];
      found.push({ answers, ready, edit: middle(edits) });
      await page.close();
      await served.close();
      rmSync(served.folder, { recursive: true });
    }
    const told = (of: "answers" | "ready" | "edit") => {
      const values = found.map((each) => each[of]);
      return `${seconds(middle(values))} (${seconds(Math.min(...values))} to ${seconds(Math.max(...values))})`;
    };
    console.log(
      `${rows.toLocaleString("en")} rows: answers drawn ${told("answers")}, ready ${told("ready")}, an edit ${told("edit")} s`,
    );
  }
  await browser.close();
}

function middle(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1]!;
}

function seconds(ms: number): string {
  return (ms / 1000).toFixed(2);
}

void main();
