/** How long 500 bench tickets in one file take, through the built command line. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DEMO_SURVEY } from "../../src/cli/demoSurvey";
import { writeCsv } from "../../src/workbook/writeCsv";

const TICKETS = 500;

const folder = mkdtempSync(join(tmpdir(), "paper-bench-"));
const [headings, ...rows] = DEMO_SURVEY;
const many = Array.from({ length: TICKETS }, (_, index) => {
  const cells = [...rows[index % 37]!];
  cells[0] = `LK ${index + 1}`;
  cells[9] = "";
  if (cells[7] === "none" || cells[7] === "") cells[7] = "tray";
  return cells;
});
writeFileSync(join(folder, "many.csv"), writeCsv([headings!, ...many]));
const start = performance.now();
const run = spawnSync(process.execPath, ["dist/enclosure-columns.js", "paper", join(folder, "many.csv"), "--json"], {
  encoding: "utf8",
});
const seconds = (performance.now() - start) / 1000;
rmSync(folder, { recursive: true });
if (run.status !== 0) throw new Error(`paper: exit ${run.status}: ${run.stderr}`);
const { pages } = JSON.parse(run.stdout) as { pages: number };
console.log(`${TICKETS} tickets, ${pages} pages: ${seconds.toFixed(1)} s`);
