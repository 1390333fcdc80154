import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";

/** Content types by the end of a name. */
export const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".png": "image/png",
};

/** What the page has in common with the add-in. */
const SHARED = ["functions.js", "functions.json", "surveyWorker.js", "pane.css", "icons/icon-32.png"];

/** The files of the page by the name it asks for: its own, and the add-in's functions. */
export function pageFiles(dist: string): ReadonlyMap<string, string> {
  const own = readdirSync(join(dist, "page")).map((name) => [name, join(dist, "page", name)] as const);
  // A script that is loaded later has a mark of its content in its name.
  const later = readdirSync(dist).filter((name) => /^(?:survey|surveyAsks)\.(?:[0-9a-f]{8}\.)?js$/.test(name));
  const shared = [...SHARED, ...later].map((name) => [name, join(dist, name)] as const);
  const fonts = join(dist, "fonts");
  const printed = (existsSync(fonts) ? readdirSync(fonts) : []).map(
    (name) => [`fonts/${name}`, join(fonts, name)] as const,
  );
  return new Map([...shared, ...printed, ...own].filter(([, path]) => existsSync(path)));
}
