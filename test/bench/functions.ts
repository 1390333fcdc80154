/**
 * Scalar cell functions a second, as a filled column calls them: a 40-row settings range and a 12-row stock table
 * arrive as fresh arrays with every call. Beside it, in the same run, the same figures with settings already read, and
 * the rate through Microsoft's own runtime.
 */
import { execFileSync } from "node:child_process";
import { wallAnswer } from "../../src/item/answers";
import { sizeRow } from "../../src/item/sizeItem";
import { settingsOf } from "../../src/settings/settingsOf";
import { STARTER_STOCK, stockCells } from "../../src/settings/starterStock";
import { settingsTable } from "../../src/settings/settingsTable";
import { loadExcelRuntime } from "../runtime/excelRuntime";

const SECONDS = 2;
const KINDS = ["tray", "lidded box", "slipcase", "clamshell box"] as const;
const WALLS = ["side wall", "side wall", "back wall", "fore-edge wall"] as const;

class CellError extends Error {}
Object.assign(globalThis, { CustomFunctions: { associate: () => undefined, Error: CellError, ErrorCode: {} } });

const settingsRange = settingsTable(settingsOf([]))
  .slice(0, 41)
  .map((row) => row.slice(0, 2));
const stockTable = [...stockCells(STARTER_STOCK), ...stockCells(STARTER_STOCK).slice(1, 5)].map((row, index) =>
  index > STARTER_STOCK.length ? [`${row[0]} second size`, ...row.slice(1)] : row,
);
/** The row's board, as the formulas of a filled survey pass it. */
const BOARD = "wall board=2 mm";
const fresh = () => [settingsRange.map((row) => [...row]), stockTable.map((row) => [...row])];

async function main(): Promise<void> {
  const { wallLength } = await import("../../functions/item");
  const functionsRate = rate((i) =>
    wallLength(
      200 + (i % 90),
      150 + (i % 50),
      20 + (i % 17),
      KINDS[i % 4],
      [[WALLS[i % 4]]],
      [...copies[i % copies.length]!, [[BOARD]]],
    ),
  );
  const settings = settingsOf([...fresh(), BOARD]);
  const coreRate = rate((i) => {
    const row = { height: 200 + (i % 90), width: 150 + (i % 50), depth: 20 + (i % 17), enclosure: KINDS[i % 4] };
    return wallAnswer(sizeRow(row, settings)!, WALLS[i % 4] as string, "length");
  });
  const runtimeRate = await throughRuntime();
  const line = (what: string, perSecond: number) =>
    console.log(`${what.padEnd(58)} ${Math.round(perSecond).toLocaleString("en").padStart(10)} a second`);
  line("cell function, settings and stock as fresh arrays", functionsRate);
  line("same figure, settings already read", coreRate);
  console.log(`${"ratio".padEnd(58)} ${(coreRate / functionsRate).toFixed(2).padStart(10)}`);
  line("through the custom-functions runtime, batches of 10,000", runtimeRate);
}

// Copies are made before the clock starts: the host makes them, not the function.
const copies = Array.from({ length: 2000 }, fresh);

function rate(call: (i: number) => unknown): number {
  for (let i = 0; i < 20_000; i++) call(i);
  const start = performance.now();
  let calls = 0;
  while (performance.now() - start < SECONDS * 1000) for (let i = 0; i < 1000; i++) call(calls++);
  return (calls / (performance.now() - start)) * 1000;
}

async function throughRuntime(): Promise<number> {
  execFileSync("npx", ["webpack", "--mode", "production"], { stdio: "ignore" });
  const runtime = loadExcelRuntime();
  const batch = (size: number) =>
    Array.from({ length: size }, (_, i) => {
      const [settingsCells, stockCellsCopy] = fresh();
      return [
        "WALL.LENGTH",
        [200 + (i % 90), 150, 20, KINDS[i % 4], WALLS[i % 4], settingsCells, stockCellsCopy, BOARD],
      ] as const;
    });
  await runtime.callMany(batch(1000));
  const calls = batch(10_000) as Parameters<typeof runtime.callMany>[0];
  const start = performance.now();
  await runtime.callMany(calls);
  return (calls.length / (performance.now() - start)) * 1000;
}

void main().then(() => process.exit(0));
