import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { planCutting } from "../../src/cutting/planCutting";
import type { BenchStyle, Plan, Stock } from "../../src/cutting/types";
import { verifyPlan } from "../../src/cutting/verify";
import { boardJob, cutUpSheets, type Instance, publishedClasses } from "./cuttingClasses";
import { compareStyles } from "./cuttingStyles";
import { peers } from "./cuttingPeers";

/*
 * npm run bench -- cutting [--seconds S] [--iterations I] [--peers] [--quiet] and one of
 *   --instances FILE   [{"name","sheet":{"length","width"},"pieces":[{"length","width"}, ...]}, ...]
 *   --classes N        N instances of each published class and size (10 makes 500), --seed K
 *   --known N          N sheets at most, cut up at random: the least is known
 *   --growth N         100 pieces and ten times as many again, up to N
 *   --survey demo|N    the demo survey, or N boxes of books: both styles of plan, or one with --style bench; --seeds K for
 *                      the mean of K, --rolls with all stocks, --guide with boards of the board guide, not of 2 mm;
 *                      --set "NAME=VALUE" for any other setting, such as "batch size=40"
 * --style bench, or --stages N, limits the changes of direction of the instances (to 3, or N), without a least waste.
 * --iterations takes the place of the seconds: the same plans on any machine, however busy it is.
 */

interface Line {
  readonly instance: Instance;
  readonly plan: Plan;
  readonly milliseconds: number;
  readonly firstMs: number;
  readonly peers: ReadonlyMap<string, number>;
}

const { values } = parseArgs({
  options: {
    instances: { type: "string" },
    classes: { type: "string" },
    known: { type: "string" },
    growth: { type: "string" },
    seconds: { type: "string", default: "1" },
    seed: { type: "string", default: "1" },
    peers: { type: "boolean", default: false },
    iterations: { type: "string" },
    survey: { type: "string" },
    style: { type: "string" },
    seeds: { type: "string", default: "1" },
    guide: { type: "boolean", default: false },
    rolls: { type: "boolean", default: false },
    stages: { type: "string" },
    set: { type: "string", multiple: true, default: [] },
    quiet: { type: "boolean", default: false },
  },
});

if (values.survey !== undefined) {
  const styles = values.style === undefined ? (["least sheets", "bench"] as const) : [values.style as "bench"];
  const [seconds, seeds] = [Number(values.seconds), Number(values.seeds)];
  compareStyles({
    survey: values.survey,
    styles,
    seconds,
    iterations: values.iterations === undefined ? undefined : Number(values.iterations),
    seeds,
    settings: [...(values.guide ? [] : [["wall board", "2 mm"]]), ...values.set.map((each) => each.split("="))],
    allStocks: values.rolls,
  });
} else {
  const lines = chosenInstances().map((instance) => {
    const line = measure(instance, Number(values.seconds) * 1000);
    if (!values.quiet) console.log(shown(line));
    return line;
  });
  summarise(lines);
}

function chosenInstances(): readonly Instance[] {
  const seed = Number(values.seed);
  if (values.instances !== undefined) return JSON.parse(readFileSync(values.instances, "utf8")) as readonly Instance[];
  if (values.growth !== undefined) {
    const sizes = [100, 1000, 10_000, 100_000].filter((size) => size <= Number(values.growth));
    return sizes.map((size) => boardJob(size, seed));
  }
  if (values.known !== undefined)
    return Array.from({ length: Number(values.known) }, (_, index) => knownJob(index + 1, seed));
  return publishedClasses(Number(values.classes ?? 1), seed);
}

/** Sheets of 1400 mm square cut up to the millimetre, 4 to 9 pieces of each. */
function knownJob(sheets: number, seed: number): Instance {
  return cutUpSheets(sheets, 1400, 3 + ((sheets + seed) % 6), seed * 1000 + sheets);
}

function measure(instance: Instance, milliseconds: number): Line {
  const pieces = instance.pieces.map(({ length, width }, index) => ({
    id: String(index + 1),
    item: instance.name,
    part: "piece",
    length,
    width,
    turn: false,
  }));
  const stock: Stock = { kind: "sheets", sheets: [{ name: "sheet", ...instance.sheet, price: 1 }] };
  const start = performance.now();
  let firstMs = Number.NaN;
  const onProgress = () => (firstMs = Number.isNaN(firstMs) ? performance.now() - start : firstMs);
  const budget = values.iterations === undefined ? { milliseconds } : { iterations: Number(values.iterations) };
  const options = { bench: limitedStages(), budget, onProgress };
  const plan = planCutting(pieces, stock, options);
  const taken = performance.now() - start;
  const faults = verifyPlan(plan, pieces, stock, options);
  if (faults.length > 0) throw new Error(`${instance.name}: ${faults.slice(0, 5).join("; ")}`);
  const others = values.peers ? peers.map(({ name, sheets }) => [name, sheets(instance)] as const) : [];
  return { instance, plan, milliseconds: taken, firstMs, peers: new Map(others) };
}

function limitedStages(): BenchStyle | undefined {
  if (values.stages === undefined && values.style !== "bench") return undefined;
  return { stages: Number(values.stages ?? 3), leastWaste: 0, matchAllowance: 0, spareSheets: 0, benchLength: 1500 };
}

function shown({ instance, plan, milliseconds, firstMs, peers: others }: Line): string {
  const own = `${plan.sheets.length} sheets, bound ${plan.sheetBound}, first plan ${firstMs.toFixed(0)} ms, ${milliseconds.toFixed(0)} ms`;
  return [`${instance.name}: ${own}`, ...[...others].map(([name, sheets]) => `${name} ${sheets}`)].join(", ");
}

function summarise(all: readonly Line[]): void {
  const sum = (value: (line: Line) => number) => all.reduce((total, line) => total + value(line), 0);
  const sheets = sum(({ plan }) => plan.sheets.length);
  const bound = sum(({ plan }) => plan.sheetBound);
  const proved = all.filter(({ plan }) => plan.provedLeast).length;
  console.log(
    `${all.length} instances: ${sheets} sheets, bound ${bound} (${percent(sheets, bound)} above), ${proved} proved`,
  );
  console.log(
    `time ${(sum((line) => line.milliseconds) / 1000).toFixed(1)} s, memory ${(process.memoryUsage().rss / 2 ** 20).toFixed(0)} MB`,
  );
  for (const kind of new Set(all.map(({ instance }) => kindOf(instance)))) {
    const own = all.filter(({ instance }) => kindOf(instance) === kind);
    const total = own.reduce((count, { plan }) => count + plan.sheets.length, 0);
    const least = own.reduce((count, { plan }) => count + plan.sheetBound, 0);
    if (own.length > 1) console.log(`  ${kind}: ${total} sheets, bound ${least} (${percent(total, least)} above)`);
  }
  for (const { name } of values.peers ? peers : []) {
    const total = sum((line) => line.peers.get(name)!);
    console.log(`${name}: ${total} sheets; ours ${percent(sheets, total)} against it`);
  }
}

/** The published class, or the whole file as one. */
function kindOf({ name }: Instance): string {
  return /^class \d+/.exec(name)?.[0] ?? "all";
}

function percent(value: number, base: number): string {
  return `${((value / base - 1) * 100).toFixed(2)} %`;
}
