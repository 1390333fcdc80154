/*
 * npm run bench -- NAME [options of its own], one of test/bench: functions, excelPaths, survey, sizes, cutting, workbook, page, paper, hostile.
 *
 * Each is bundled before it runs: a loader that translates file by file renames every function, which halves the speed.
 */
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { build } from "esbuild";

const [name = "", ...options] = process.argv.slice(2);
const source = `test/bench/${name}.ts`;
if (name === "" || !existsSync(source)) {
  console.error(
    `bench: got "${name}"; give functions, excelPaths, survey, sizes, cutting, workbook, page, paper or hostile`,
  );
  process.exit(2);
}
const outfile = `dist/bench/${name}.mjs`;
await build({
  entryPoints: [source],
  outfile,
  bundle: true,
  platform: "node",
  target: "node20",
  format: "esm",
  packages: "external",
  // What is still written as a script of Node's older kind.
  banner: { js: 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);' },
});
process.exit(spawnSync(process.execPath, [outfile, ...options], { stdio: "inherit" }).status ?? 1);
