import { execFileSync } from "node:child_process";
import { existsSync, readFileSync, readdirSync, statSync } from "node:fs";
import path from "node:path";

const SOURCES = ["src", "functions", "manifest", "webpack.config.js", "package.json"];
const PRODUCTS = ["functions.js", "functions.json", "pane.html", "pane.js", "manifest.xml"];

/**
 * Before any test: builds dist/ when it is missing, older than a source, or built for development, so that no test
 * passes on a bundle that is not the one in the sources.
 *
 * @throws Error with webpack's own report when the build fails
 */
export default function buildOnce(): void {
  if (!isStale("dist", SOURCES)) return;
  execFileSync(
    process.execPath,
    ["node_modules/webpack/bin/webpack.js", "--mode", "production", "--stats", "errors-only"],
    {
      stdio: ["ignore", "inherit", "inherit"],
    },
  );
}

/** True when one of the built files is missing, older than the newest source, or made for development. */
export function isStale(dist: string, sources: readonly string[]): boolean {
  const products = PRODUCTS.map((name) => path.join(dist, name));
  if (!products.every((file) => existsSync(file))) return true;
  const oldestProduct = Math.min(...products.map((file) => statSync(file).mtimeMs));
  const newestSource = Math.max(...sources.flatMap(filesUnder).map((file) => statSync(file).mtimeMs));
  return newestSource > oldestProduct || readFileSync(path.join(dist, "manifest.xml"), "utf8").includes("localhost");
}

const filesUnder = (source: string): string[] => {
  if (!statSync(source).isDirectory()) return [source];
  const entries = readdirSync(source, { recursive: true, withFileTypes: true });
  // A folder's own time is counted too: it changes when a file in it is deleted.
  return [source, ...entries.map((entry) => path.join(entry.parentPath, entry.name))];
};
