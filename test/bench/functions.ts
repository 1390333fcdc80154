/**
 * Scalar cell functions a second, as a filled column calls them: a 40-row settings range and a stock table arrive as
 * fresh arrays with every call. The table is that of a small shop, 12 rows of 13 columns, and then the whole starter
 * stock, whose cells cost more to hand over. Beside it, in the same run, the same figures with settings already read,
 * and the rate through Microsoft's own runtime.
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
type Cells = (number | string)[][];

const SHOP_STOCK = [
  "conservation board 2",
  "conservation board 3",
  "conservation card 10 pt",
  "conservation card 20 pt",
  "folding card 0.4",
  "book cloth",
  "lining paper",
  "grey board 2",
];
const SHOP_COLUMNS = 13;
const shopRows = stockCells(STARTER_STOCK.filter(({ stock }) => SHOP_STOCK.includes(stock)));
const secondSizes = shopRows.slice(1, 5).map(([name, ...rest]) => [`${name} second size`, ...rest]);
const STOCKS = {
  "a shop's stock": [...shopRows, ...secondSizes].map((row) => row.slice(0, SHOP_COLUMNS)),
  "the starter stock": stockCells(STARTER_STOCK),
} as const;
/** The row's board, as the formulas of a filled survey pass it. */
const BOARD = "wall board=2 mm";
/** Settings and stock as one call gets them. */
const copyOf = (stock: Cells): Cells[] => [settingsRange, stock].map((range) => range.map((row) => [...row]));

async function main(): Promise<void> {
  const { wallLength } = await import("../../functions/item");
  const line = (what: string, perSecond: number) =>
    console.log(`${what.padEnd(64)} ${Math.round(perSecond).toLocaleString("en").padStart(10)} a second`);
  for (const [name, stock] of Object.entries(STOCKS)) {
    // Copies are made before the clock starts: the host makes them, not the function.
    const copies = Array.from({ length: 2000 }, () => copyOf(stock));
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
    line(`cell function, settings and ${name} as fresh arrays`, functionsRate);
  }
  const settings = settingsOf([...copyOf(STOCKS["a shop's stock"]), BOARD]);
  const coreRate = rate((i) => {
    const row = { height: 200 + (i % 90), width: 150 + (i % 50), depth: 20 + (i % 17), enclosure: KINDS[i % 4] };
    return wallAnswer(sizeRow(row, settings)!, WALLS[i % 4] as string, "length");
  });
  line("same figure, settings already read", coreRate);
  execFileSync("npx", ["webpack", "--mode", "production"], { stdio: "ignore" });
  for (const [name, stock] of Object.entries(STOCKS))
    line(`through the custom-functions runtime with ${name}, 10,000 at once`, await throughRuntime(stock));
}

function rate(call: (i: number) => unknown): number {
  for (let i = 0; i < 20_000; i++) call(i);
  const start = performance.now();
  let calls = 0;
  while (performance.now() - start < SECONDS * 1000) for (let i = 0; i < 1000; i++) call(calls++);
  return (calls / (performance.now() - start)) * 1000;
}

async function throughRuntime(stock: Cells): Promise<number> {
  const runtime = loadExcelRuntime();
  const batch = (size: number) =>
    Array.from({ length: size }, (_, i) => {
      const item = [200 + (i % 90), 150, 20, KINDS[i % 4]!, WALLS[i % 4]!];
      return ["WALL.LENGTH", [...item, ...copyOf(stock), BOARD]] as const;
    });
  await runtime.callMany(batch(1000));
  const calls = batch(10_000);
  const start = performance.now();
  await runtime.callMany(calls);
  return (calls.length / (performance.now() - start)) * 1000;
}

void main().then(() => process.exit(0));
