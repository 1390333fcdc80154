/** How long 500 bench tickets in one file take, through the built command line: fails over 30 s. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { manyItems } from "../paper/manyItems";

const TICKETS = 500;
const LONGEST_SECONDS = 30;

const folder = mkdtempSync(join(tmpdir(), "paper-bench-"));
writeFileSync(join(folder, "many.csv"), manyItems(TICKETS));
const start = performance.now();
const run = spawnSync(process.execPath, ["dist/enclosure-columns.js", "paper", join(folder, "many.csv"), "--json"], {
  encoding: "utf8",
});
const seconds = (performance.now() - start) / 1000;
rmSync(folder, { recursive: true });
if (run.status !== 0) throw new Error(`paper: exit ${run.status}: ${run.stderr}`);
const { pages } = JSON.parse(run.stdout) as { pages: number };
console.log(`${TICKETS} tickets, ${pages} pages: ${seconds.toFixed(1)} s`);
if (seconds > LONGEST_SECONDS) process.exitCode = 1;
