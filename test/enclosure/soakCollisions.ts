import fc from "fast-check";
import { holds } from "../suites/holdsTogether";
import { anyItem, anyShop, assemblyOf, EVERY_STRUCTURE } from "./everyEnclosure";

// The collision test of every structure, many times: `SOAK_RUNS=100000 tsx test/enclosure/soakCollisions.ts [kind]`.
// Outside the test runner, in which it takes four times as long.

const RUNS = Number(process.env["SOAK_RUNS"] ?? 1000);
/** Items that are drawn at a time. */
const BATCH = 1000;
const only = process.argv[2];
const start = Number(process.env["SOAK_SEED"] ?? Date.now() % 2 ** 31);
const tried = EVERY_STRUCTURE.filter(({ kind }) => only === undefined || kind.name === only);
process.stdout.write(`${tried.length} structures, ${RUNS} items each, seed ${start}\n`);

let built = 0;
for (const [index, { kind, text, settings }] of tried.entries()) {
  let here = 0;
  for (let drawn = 0; drawn < RUNS; drawn += BATCH) {
    const numRuns = Math.min(BATCH, RUNS - drawn);
    for (const [item, shop] of fc.sample(fc.tuple(anyItem, anyShop), { numRuns, seed: start + index * RUNS + drawn })) {
      const inForce = { ...settings, ...shop };
      try {
        const assembly = assemblyOf(kind, item, inForce);
        if (assembly === undefined) continue;
        holds(assembly, item, inForce);
      } catch (error) {
        process.stdout.write(`fails: ${kind.name}, ${text} ${JSON.stringify({ item, shop })}\n`);
        throw error;
      }
      here += 1;
    }
  }
  if (here < RUNS / 2) throw new Error(`${kind.name}, ${text}: only ${here} of ${RUNS} items could be built`);
  built += here;
  process.stdout.write(`${index + 1}: ${kind.name}, ${text} ${here}\n`);
}
process.stdout.write(`${built} enclosures hold together, none fails\n`);
