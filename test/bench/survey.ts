/**
 * A whole survey at once: ENC.SURVEY's own work on 10,000 and 100,000 rows of ten figures, then `fill` on a workbook of
 * 10,000 rows, through the built command line. Memory is that of the process at its greatest. Processor time, that of the
 * collector's threads included, says what a busy machine hides.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { availableParallelism, tmpdir } from "node:os";
import { join } from "node:path";
import { readSurvey } from "../../src/survey/sizeSurvey";
import { surveyTable } from "../../src/survey/surveyAnswers";
import { settingsOf } from "../../src/settings/settingsOf";
import { settingsTable } from "../../src/settings/settingsTable";
import { STARTER_STOCK, stockCells } from "../../src/settings/starterStock";
import { createWorkbook } from "../../src/workbook/createWorkbook";

const FIGURES = [
  "outside height",
  "outside width",
  "outside depth",
  "inside height",
  "inside width",
  "base length",
  "wall strip length",
  "board area",
  "base stock",
  "problem",
];
const HEADINGS = ["Shelfmark", "Title", "Height", "Width", "Depth", "Enclosure", "Quantity", "Fit", "Cushion base"];
const KINDS = ["tray", "lidded box", "three-tray box", "clamshell box", "folded tray"];
const FITS = ["", "", "", "snug", "loose", "2.5"];

/** A survey as lived in as most: kinds mixed, some rows with settings of their own, one in a hundred with a mistake. */
function surveyOf(rows: number): (string | number)[][] {
  return [
    HEADINGS,
    ...Array.from({ length: rows }, (_, i) => [
      `S ${i + 1}`,
      `Item ${i + 1}`,
      i % 100 === 99 ? "21O" : 150 + ((i * 7) % 300),
      100 + ((i * 5) % 200),
      8 + ((i * 3) % 70),
      KINDS[i % KINDS.length] as string,
      1 + (i % 3),
      FITS[i % FITS.length] as string,
      i % 20 === 0 ? 5 : "",
    ]),
  ];
}

const shared = () => [settingsTable(settingsOf([])), stockCells(STARTER_STOCK)];

function timeSurvey(rows: number, rounds: number): void {
  const times: number[] = [];
  const busy: number[] = [];
  let answered = 0;
  for (let round = 0; round < rounds; round++) {
    const cells = surveyOf(rows);
    const settings = shared();
    const cpu = process.cpuUsage();
    const start = performance.now();
    const table = surveyTable(readSurvey(cells, settings), FIGURES, cells);
    times.push(performance.now() - start);
    busy.push(process.cpuUsage(cpu).user / 1000);
    answered = table.length - 1;
  }
  const [first = 0] = times;
  const seconds = (ms: number) => `${(ms / 1000).toFixed(3)} s`;
  const middle = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length >> 1] as number;
  console.log(
    `survey of ${answered.toLocaleString("en")} rows x ${FIGURES.length} figures: first ${seconds(first)}, median of ${rounds} ${seconds(middle(times))} (processor ${seconds(middle(busy))}); ` +
      `process so far at most ${megabytes(process.resourceUsage().maxRSS * 1024)}`,
  );
}

function timeFill(rows: number): void {
  const folder = mkdtempSync(join(tmpdir(), "fill-bench-"));
  const survey = join(folder, "survey.xlsx");
  writeFileSync(survey, createWorkbook([{ name: "Survey", rows: surveyOf(rows), headingRow: 1, table: "Survey" }]));
  const watch = `process.on("exit", () => {
    const { maxRSS, userCPUTime } = process.resourceUsage();
    process.stderr.write([maxRSS, userCPUTime].join());
  });`;
  const start = performance.now();
  const run = spawnSync(
    process.execPath,
    [
      "-e",
      `${watch} process.argv.splice(1, 0, "fill"); require("./dist/enclosure-columns.js").start()`,
      "--",
      "fill",
      survey,
    ],
    { encoding: "utf8" },
  );
  const seconds = (performance.now() - start) / 1000;
  rmSync(folder, { recursive: true });
  if (run.status !== 0) throw new Error(`fill: exit ${run.status}: ${run.stderr}`);
  const [kilobytes = 0, microseconds = 0] = run.stderr.split(",").map(Number);
  console.log(
    `fill of ${rows.toLocaleString("en")} rows, workbook to workbook: ${seconds.toFixed(2)} s ` +
      `(processor ${(microseconds / 1e6).toFixed(2)} s), at most ${megabytes(kilobytes * 1024)}`,
  );
}

function megabytes(bytes: number): string {
  return `${Math.round(bytes / 1e6).toLocaleString("en")} MB`;
}

const part = process.argv[2] ?? "all";
console.log(`${availableParallelism()} cores, Node ${process.version}`);
if (part !== "fill") {
  timeSurvey(10_000, 7);
  timeSurvey(100_000, 3);
}
if (part !== "survey") timeFill(10_000);
