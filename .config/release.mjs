/*
 * npm run release                 checks, builds and packs the version in package.json
 * npm run release -- 1.1.0        raises the version first: package.json, package-lock.json, manifest, README
 *
 * Leaves dist/addin, an archive of it, and the list of parts. Give ENCLOSURE_ADDRESS, the address it will be served from.
 */
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";
import { zipSync } from "fflate";
import raised from "./build/raised.js";

const ADDIN = join("dist", "addin");
const SBOM = join("dist", "sbom.json");

const fail = (message) => {
  console.error(`release: ${message}`);
  process.exit(2);
};

const run = (command, ...args) => {
  const { status, stdout } = spawnSync(command, args, {
    stdio: ["inherit", "pipe", "inherit"],
    shell: process.platform === "win32",
    maxBuffer: 2 ** 28,
  });
  if (status !== 0) fail(`${[command, ...args].join(" ")} failed`);
  return stdout;
};

const before = JSON.parse(readFileSync("package.json", "utf8")).version;
const version = process.argv[2] ?? before;
if (!process.env.ENCLOSURE_ADDRESS) fail("give ENCLOSURE_ADDRESS, such as https://your.site/enclosures");
try {
  for (const [file, text] of raised(before, version, (name) => readFileSync(name, "utf8"))) writeFileSync(file, text);
} catch (error) {
  fail(error.message);
}
process.stdout.write(run("npm", "test"));
run("npm", "run", "build", "--", "--no-stats");
writeFileSync(SBOM, run("npm", "sbom", "--package-lock-only", "--omit", "dev", "--sbom-format", "cyclonedx"));

const files = readdirSync(ADDIN, { recursive: true })
  .map((name) => join(ADDIN, name))
  .filter((file) => statSync(file).isFile());
const entries = files.map((file) => [relative(ADDIN, file).replaceAll("\\", "/"), new Uint8Array(readFileSync(file))]);
const archive = join("dist", `enclosure-columns-addin-${version}.zip`);
writeFileSync(archive, zipSync(Object.fromEntries(entries)));
console.log(`Version ${version}: ${archive}, ${entries.length} files; ${SBOM}. See HOSTING.md in it.`);
