/**
 * What each way of writing the columns asks of Excel, by the rows of a survey: rounds and bytes of the write, then of a
 * whole calculation the calls, their bytes, and how long the thread of the page is held by a call.
 *
 * npm run bench -- excelPaths [--rows 10000]
 */
import { readFileSync } from "node:fs";
import { surveyEdits } from "../../src/filling/surveyEdits";
import { withProblem, DEFAULT_FIGURES } from "../../src/item/figureCatalogue";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import { isFormula, type CellContent } from "../../src/workbook/edits";
import { typedFormula } from "../../src/workbook/formulaText";
import { openInExcel } from "../host/openInExcel";
import { DEPLOYED, loadExcelRuntime, readBuild, type ExcelRuntime } from "../runtime/excelRuntime";
import { pageThreads } from "../runtime/pageThreads";
import type { Argument } from "../runtime/marshal";
import { settingsOf } from "../../src/settings/settingsOf";
import { settingsTable } from "../../src/settings/settingsTable";
import { STARTER_STOCK, stockCells } from "../../src/settings/starterStock";
import { GUIDE_CELLS } from "../../src/settings/starterGuide";

const given = process.argv.indexOf("--rows");
const rows = given < 0 ? 10_000 : Number(process.argv[given + 1]);

const HEADINGS = ["shelfmark", "height mm", "width mm", "depth mm", "enclosure"];
const KINDS = ["tray", "lidded box", "slipcase", "clamshell box"];
const items = Array.from({ length: rows }, (_, i): (string | number)[] => [
  `B ${i + 1}`,
  200 + (i % 90),
  150 + (i % 50),
  20 + (i % 40),
  KINDS[i % KINDS.length]!,
]);
const RANGES: Readonly<Record<string, number>> = {
  settings: bytesOf(settingsTable(settingsOf([])).map((row) => row.slice(0, 2))),
  stock: bytesOf(stockCells(STARTER_STOCK)),
  board_guide: bytesOf(GUIDE_CELLS),
};

function bytesOf(value: unknown): number {
  return Buffer.byteLength(JSON.stringify(value));
}

const WAYS = {
  "a formula in every cell": {},
  "one formula": { oneFormula: true },
  values: { values: true },
};

async function main(): Promise<void> {
  const bytes = createWorkbook([{ name: "Survey", rows: [HEADINGS, ...items], headingRow: 1, table: "Survey" }]);
  for (const [name, way] of Object.entries(WAYS)) {
    const at = openInExcel(bytes);
    const { edits } = surveyEdits(await at.port.read(), {
      ...{ figures: withProblem(DEFAULT_FIGURES), settings: [], recognise: {}, values: false, cutList: false },
      ...way,
    });
    const before = at.excel.rounds();
    await at.port.write(edits);
    const rounds = at.excel.rounds() - before;
    await at.close();
    const columns = edits.columns!.columns;
    const cells = columns.flatMap((column) => column.cells);
    const formulas = cells.filter(isFormula).map(({ formula }) => typedFormula(formula));
    const calls = formulas.flatMap((formula) => [...formula.matchAll(/ENC\.[A-Z.]+\(/g)]).length;
    const sent = formulas.reduce((sum, formula) => sum + argumentBytes(formula), 0);
    console.log(
      `${name}: ${columns.length} columns; the write ${rounds} rounds, ${kb(cells.reduce<number>((sum, cell) => sum + writtenBytes(cell), 0))}; ` +
        `a calculation ${calls.toLocaleString("en")} calls (${(calls / rows).toFixed(2)} a row), ${kb(sent)} of arguments (${kb(sent / rows)} a row)`,
    );
  }
  await threadTimes();
}

/** What the named ranges and the survey weigh in each call; what else is in a formula is about its own length. */
function argumentBytes(formula: string): number {
  const named = Object.entries(RANGES).reduce(
    (sum, [name, weight]) => sum + (formula.match(new RegExp(`\\b${name}\\b`, "g"))?.length ?? 0) * weight,
    0,
  );
  return named + (formula.includes("ENC.SURVEY(") ? bytesOf([HEADINGS, ...items]) : formula.length);
}

function writtenBytes(cell: CellContent): number {
  return isFormula(cell) ? typedFormula(cell.formula).length : bytesOf(cell);
}

function kb(bytes: number): string {
  return `${(bytes / 1000).toFixed(2)} kB`;
}

async function threadTimes(): Promise<void> {
  const runtime = loadExcelRuntime();
  const shared: Argument[] = [settingsTable(settingsOf([])).map((row) => row.slice(0, 2)), stockCells(STARTER_STOCK)];
  const calls = items.slice(0, 2000).map((item) => ["MASS", [...item.slice(1), ...shared]] as const);
  await runtime.callMany(calls);
  const start = worked();
  await runtime.callMany(calls);
  const each = (worked() - start) / calls.length;
  console.log(`a call of one figure holds the thread ${each.toFixed(3)} ms`);
  await wholeSurveys(shared);
}

/** The longest that each function of a whole survey holds the page's thread: with a thread beside it, and without. */
async function wholeSurveys(shared: readonly Argument[]): Promise<void> {
  const survey = [HEADINGS, ...items];
  const asks: readonly (readonly [id: string, args: readonly Argument[]])[] = [
    ["SURVEY", [survey, [withProblem(DEFAULT_FIGURES)], ...shared]],
    ["CUTLIST", [survey, ...shared]],
    ["SHEETS", [survey, "all", ...shared]],
    ["LAYOUT", [survey, "all", ...shared]],
    ["ESTIMATE", [survey, ...shared]],
    ["SHELF", [survey, ...shared]],
    ["SIZES", [survey, "12", ...shared]],
  ];
  const threads = pageThreads(DEPLOYED);
  const [beside, alone] = [loadExcelRuntime(readBuild(), "null", threads), loadExcelRuntime()];
  for (const [id, args] of asks) {
    const [first, again, held] = [
      await heldBy(beside, id, args),
      await heldBy(beside, id, args),
      await heldBy(alone, id, args),
    ];
    console.log(
      `ENC.${id} of ${rows} rows holds the page ${first.longest.toFixed(0)} ms at a time, ${again.longest.toFixed(0)} ms when asked again, ` +
        `and answers in ${(first.all / 1000).toFixed(2)} s; in a host without threads it holds it ${(held.longest / 1000).toFixed(2)} s`,
    );
  }
  await threads.end();
}

/** The longest time in which nothing else could run on the page's thread, and the whole time, ms. */
async function heldBy(
  runtime: ExcelRuntime,
  id: string,
  args: readonly Argument[],
): Promise<{ readonly longest: number; readonly all: number }> {
  let longest = 0;
  let last = worked();
  let watches = true;
  const look = (): void => {
    const now = worked();
    longest = Math.max(longest, now - last);
    last = now;
  };
  const watch = (): void => {
    look();
    if (watches) setImmediate(watch);
  };
  const start = performance.now();
  setImmediate(watch);
  await runtime.callCell(id, args);
  watches = false;
  look();
  return { longest, all: performance.now() - start };
}

/** How long this thread has worked, ms: what other programs take is not in it where the system can tell, which Linux can. */
function worked(): number {
  try {
    return Number(readFileSync("/proc/thread-self/schedstat", "utf8").split(" ")[0]) / 1e6;
  } catch {
    return performance.now();
  }
}

void main().then(() => process.exit(0));
