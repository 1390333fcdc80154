import { createHash } from "node:crypto";
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { HOSTILE_FILES } from "../hostile/hostileFiles";

/*
 * npm run bench -- hostile [--program FILE] [--only WORDS]
 *
 * Fills every hostile file with the built program: seconds, most memory, and what it said. The survey must be as it was.
 */
const option = (name: string) => process.argv[process.argv.indexOf(`--${name}`) + 1];
const has = (name: string) => process.argv.includes(`--${name}`);
const program = resolve(has("program") ? option("program")! : "dist/enclosure-columns.js");
const files = HOSTILE_FILES.filter(({ name }) => !has("only") || name.includes(option("only")!));
const MOST_SECONDS = 20;
const MOST_MEGABYTES = 1_000;
const GIVEN_UP_MS = 60_000;

const folder = mkdtempSync(join(tmpdir(), "hostile-"));
const hook = join(folder, "memory.cjs");
writeFileSync(
  hook,
  `process.on("exit", () => require("fs").writeSync(2, "\\nmemory " + process.resourceUsage().maxRSS));`,
);
let failed = 0;
try {
  for (const { name, extension, bytes } of files) {
    const survey = join(folder, `survey${extension}`);
    const content = bytes();
    writeFileSync(survey, content);
    const began = performance.now();
    const { status, stderr, stdout } = spawnSync(
      process.execPath,
      ["-r", hook, program, "fill", survey, "--replace", "--cut-list"],
      { encoding: "utf8", timeout: GIVEN_UP_MS, killSignal: "SIGKILL", maxBuffer: 1e9 },
    );
    const seconds = (performance.now() - began) / 1000;
    const megabytes = Number(/memory (\d+)$/.exec(stderr)?.[1] ?? NaN) / 1024;
    const kept = checksum(readFileSync(survey)) === checksum(content);
    const said = status === 0 ? "filled" : (stderr.split("\n").find((line) => line !== "") ?? stdout);
    const fine = kept && seconds < MOST_SECONDS && megabytes < MOST_MEGABYTES && (status === 0 || status === 2);
    if (!fine) failed++;
    console.log(
      `${fine ? "ok  " : "FAIL"} ${seconds.toFixed(1).padStart(5)} s ${megabytes.toFixed(0).padStart(5)} MB  ${name}: ${said.slice(0, 160)}${kept ? "" : " SURVEY CHANGED"}`,
    );
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
console.log(`${files.length} files, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;

function checksum(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}
