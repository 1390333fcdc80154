import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, readdirSync, statSync } from "node:fs";
import path from "node:path";

const SOURCES = ["src", "functions", "manifest", ".config/build", "webpack.config.js", "package.json"];
/** One file or more of each target. */
const PRODUCTS = [
  ...[
    "functions.js",
    "functions.json",
    "surveyWorker.js",
    "pane.html",
    "pane.js",
    "manifest.xml",
    "addin/manifest.xml",
  ],
  ...["page/page.html", "page/page.js", "enclosure-columns.js", "planThread.js"],
];

/**
 * Builds dist/ when it is missing, older than a source, or built for development: before `npm start` and the demo, and
 * before any test, so that none passes on a bundle that does not match the sources. Says so on standard error.
 *
 * @throws Error when the build fails, after webpack's own report
 */
export default function buildIfStale(): void {
  if (!isStale("dist", SOURCES)) return;
  console.error("Building (about 20 s)...");
  const { status } = spawnSync(
    process.execPath,
    ["node_modules/webpack/bin/webpack.js", "--mode", "production", "--stats", "errors-only"],
    { stdio: ["ignore", "inherit", "inherit"] },
  );
  if (status !== 0) throw new Error("The build failed: see above.");
}

/** True when one of the built files is missing, older than the newest source, or made for development. */
export function isStale(dist: string, sources: readonly string[]): boolean {
  const products = PRODUCTS.map((name) => path.join(dist, name));
  if (!products.every((file) => existsSync(file))) return true;
  const oldestProduct = Math.min(...products.map((file) => statSync(file).mtimeMs));
  const newestSource = Math.max(...sources.flatMap(filesUnder).map((file) => statSync(file).mtimeMs));
  return newestSource > oldestProduct || readFileSync(path.join(dist, "manifest.xml"), "utf8").includes("localhost");
}

function filesUnder(source: string): readonly string[] {
  if (!statSync(source).isDirectory()) return [source];
  const entries = readdirSync(source, { recursive: true, withFileTypes: true });
  // A folder's own time is counted too: it changes when a file in it is deleted.
  return [source, ...entries.map((entry) => path.join(entry.parentPath, entry.name))];
}

if (require.main === module) buildIfStale();
