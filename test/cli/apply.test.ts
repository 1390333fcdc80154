import { mkdirSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { DEMO_SURVEY } from "../../src/cli/demoSurvey";
import type { Narrative } from "../../src/application/section";
import type { Sums } from "../../src/estimate/estimate";
import { estimateAnswer } from "../../src/estimate/budget";
import { checkedSurvey } from "../../src/survey/checkedSurvey";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { readSheet } from "../../src/workbook/readSheet";
import { writeCsv } from "../../src/workbook/writeCsv";
import { hasPoppler, textOf } from "../paper/paperTools";
import { bytesOf, columnOf, csvRows, json, newFolder, run } from "./run";
import { readZipEntries } from "./zipEntries";

const [HEADINGS = [], ...ITEMS] = DEMO_SURVEY;
/** Among them copies, a shared box, a hazard, an item that no sheet holds and a row that cannot be sized. */
const ROWS = ITEMS.filter((row) => /^LK 0(01|05|06|07|09|15|25|29|38)$/.test(row[0]!));
const SETTINGS = [
  "--set",
  "currency=EUR; labour rate=24; labour paid=no; match share=25; shipping=40; tax=20; indirect=10; spoilage=5",
  "--set",
  "supplier=Quay Board; quote date=2026-05-31; adhesive price=6",
];

function withSurvey(): string {
  const folder = newFolder();
  const rows = ROWS.map((row, index) => [...row, index % 2 === 0 ? "spine split" : "sound"]);
  writeFileSync(join(folder, "survey.csv"), writeCsv([[...HEADINGS, "Condition"], ...rows]));
  return folder;
}

/** The texts of a document's paragraphs that are in no table, and the cells of its tables, row by row. */
function documentOf(bytes: Uint8Array) {
  const xml = Buffer.from(readZipEntries(bytes).get("word/document.xml")!).toString();
  const words = (part: string) =>
    [...part.matchAll(/<w:t(?: [^>]*)?>([^<]*)<\/w:t>/g)]
      .map(([, text]) =>
        text!
          .replaceAll("&quot;", '"')
          .replaceAll("&lt;", "<")
          .replaceAll("&gt;", ">")
          .replaceAll("&apos;", "'")
          .replaceAll("&amp;", "&"),
      )
      .join("");
  const pieces = (part: string, tag: string) =>
    part.match(new RegExp(`<w:${tag}(?: [^>]*)?>.*?</w:${tag}>`, "gs")) ?? [];
  const tables = pieces(xml, "tbl").map((table) => pieces(table, "tr").map((row) => pieces(row, "tc").map(words)));
  const texts = pieces(xml.replace(/<w:tbl>.*?<\/w:tbl>/gs, ""), "p").map(words);
  return { texts: texts.filter((text) => text !== ""), tables };
}

test("an application has the same numbers in narrative, document, text, workbook, list and PDF", () => {
  const folder = withSurvey();
  const answer = json(folder, "apply", "survey.csv", "--out", "pack", "--steps", "20", ...SETTINGS) as unknown as {
    narrative: Narrative;
  } & Sums;
  expect(readdirSync(join(folder, "pack")).sort()).toEqual([
    "application.pdf",
    "budget.csv",
    "budget.xlsx",
    "drawings",
    "items.csv",
    "narrative.docx",
    "narrative.txt",
    "shelf.csv",
  ]);
  const { narrative } = answer;
  const pack = join(folder, "pack");
  // The document holds every paragraph and every table, word for word.
  const { texts, tables } = documentOf(bytesOf(pack, "narrative.docx"));
  const sections = narrative.sections;
  expect(texts).toEqual([
    narrative.title,
    narrative.notice,
    ...sections.flatMap((section) => [section.heading, ...section.paragraphs, ...section.tables.map(([name]) => name)]),
  ]);
  const own = sections.flatMap((section) => section.tables.map(([, rows]) => rows));
  expect(tables).toEqual(
    own.map(([headings = [], ...rows]) => [headings, ...rows.map((row) => headings.map((_, at) => row[at] ?? ""))]),
  );

  // The sums of the command are those of the list, of the workbook's live sums, of the narrative, and of a budget alone.
  const sums = [answer.cost, answer.contingency, answer.total, answer.match, answer.inKind, answer.requested];
  const totalOf = (rows: readonly (readonly unknown[])[]) => rows.find(([first]) => first === "total")!;
  expect(totalOf(csvRows(pack, "budget.csv")).slice(8, 14).map(Number)).toEqual(sums);
  const sheet = readSheet(openWorkbook(bytesOf(pack, "budget.xlsx")), "Estimate").rows;
  expect(totalOf(sheet).slice(8, 14)).toEqual(sums);
  expect(liveSums(bytesOf(pack, "budget.xlsx"))).toEqual(sums.map((sum) => sum.toFixed(2)));
  const cells = csvRows(folder, "survey.csv");
  const given = SETTINGS.filter((each) => each !== "--set");
  const spilled = estimateAnswer(checkedSurvey(cells, given), cells, { budget: { iterations: 20 } });
  expect(totalOf(spilled as readonly (readonly unknown[])[]).slice(8, 14)).toEqual(sums);
  const [summary = ""] = sections[0]!.paragraphs;
  expect(summary).toMatch(/^We request EUR [\d.]+ to make \d+ enclosures for \d+ objects\./);
  expect(summary).toContain(`request EUR ${answer.requested.toFixed(2)} `);
  expect(summary).toContain(`whole cost is EUR ${answer.total.toFixed(2)}`);
  expect(answer.match + answer.inKind + answer.requested).toBeCloseTo(answer.total, 6);

  const plain = Buffer.from(bytesOf(pack, "narrative.txt")).toString();
  for (const text of [...sections.flatMap((section) => section.paragraphs), ...own.flat(2)])
    expect(plain.replace(/\s+/g, " ")).toContain(text.replace(/\s+/g, " ").trim());
  if (hasPoppler) {
    const printed = textOf(bytesOf(pack, "application.pdf")).replace(/\s+/g, " ");
    for (const sum of [...sums.map((each) => each.toFixed(2)), ...ROWS.map(([id]) => id!)])
      expect(printed).toContain(sum);
  }

  // Every number of enclosures is that of the rows.
  const list = csvRows(pack, "items.csv");
  expect(columnOf(list, "identifier")).toEqual(ROWS.map(([id]) => id));
  expect(columnOf(list, "note").filter((note) => note!.startsWith("width: got"))).toHaveLength(1);
  const made = columnOf(list, "number").reduce((sum, number) => sum + Number(number), 0);
  expect(summary).toContain(`to make ${made} enclosures`);
  const byKind = own.find(([headings]) => headings![1] === "number")!;
  expect(totalOf(byKind)[1]).toBe(String(made));
  const words = sections.flatMap((section) => section.paragraphs).join("\n");
  expect(words).toMatch(/Condition: sound \(\d+\), spine split \(\d+\)/);
  expect(words).toContain("(mercury)");
  expect(words).toContain("5 complete, 1 in part, 1 not sized");
  expect(words).toMatch(/funder's rule/);
  expect(words).not.toMatch(/\b(law|act|regulation|CFR)\b/i);
});

/** What the formulas of the totals row come to, worked out from the plain cells that they name. */
function liveSums(bytes: Uint8Array): readonly string[] {
  const xml = Buffer.from(readZipEntries(bytes).get("xl/worksheets/sheet1.xml")!).toString();
  const cells = new Map<string, { readonly formula?: string; readonly value: number }>();
  for (const [, name, inside] of xml.matchAll(/<c r="([A-Z]+\d+)"[^>]*>(.*?)<\/c>/gs)) {
    const formula = /<f>(.*?)<\/f>/s.exec(inside!)?.[1];
    const value = Number(/<v>(.*?)<\/v>/s.exec(inside!)?.[1]);
    cells.set(name!, { ...(formula === undefined ? {} : { formula }), value });
  }
  const columnsOf = (from: string, to: string) => {
    const [first, last] = [from.charCodeAt(0), to.charCodeAt(0)];
    return Array.from({ length: last - first + 1 }, (_, at) => String.fromCharCode(first + at));
  };
  const valueOf = (name: string): number => {
    const cell = cells.get(name);
    if (cell?.formula === undefined) return Number.isFinite(cell?.value) ? cell!.value : 0;
    return termsOf(cell.formula);
  };
  const termsOf = (formula: string): number => {
    const [first = "", ...rest] = formula.split("-");
    return rest.reduce((sum, term) => sum - termOf(term), termOf(first));
  };
  const termOf = (term: string): number => {
    const [, from, top, to, bottom] = /^SUM\(([A-Z])(\d+):([A-Z])(\d+)\)$/.exec(term) ?? [];
    if (from === undefined) return valueOf(term);
    const rows = Array.from({ length: Number(bottom) - Number(top) + 1 }, (_, at) => Number(top) + at);
    return columnsOf(from, to!)
      .flatMap((column) => rows.map((row) => valueOf(`${column}${row}`)))
      .reduce((a, b) => a + b, 0);
  };
  const totals = [...cells].filter(
    ([, { formula }]) => formula !== undefined && /^SUM\(([A-Z])\d+:\1\d+\)$/.test(formula),
  );
  expect(totals).toHaveLength(6);
  return totals.map(([name]) => valueOf(name).toFixed(2));
}

test("an application needs a currency and a folder, and keeps what is there", () => {
  const folder = withSurvey();
  expect(run(folder, "apply", "survey.csv", "--out", "pack")).toMatchObject({
    code: 2,
    err: expect.stringContaining("currency: got nothing; an application names the currency of its money") as string,
  });
  expect(run(folder, "apply", "survey.csv").err).toContain("out: got nothing; give the folder for the application");
  expect(readdirSync(folder)).toEqual(["survey.csv"]);
  mkdirSync(join(folder, "pack"));
  writeFileSync(join(folder, "pack", "budget.xlsx"), "mine");
  const again = run(folder, "apply", "survey.csv", "--out", "pack", "--set", "currency=EUR");
  expect([again.code, again.err]).toEqual([2, expect.stringContaining("which is there already")]);
  expect(readdirSync(join(folder, "pack"))).toEqual(["budget.xlsx"]);
});
