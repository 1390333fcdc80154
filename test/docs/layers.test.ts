import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";

/** Folders from the ground up: each may import those before it. */
const LAYERS = [
  "measure",
  "settings",
  "enclosure",
  "covering",
  "board",
  "cutting",
  "estimate",
  "survey",
  "drawing",
  "paper",
  "workbook",
  "host",
  "pane",
  "page",
  "cli",
];

const files = readdirSync("src", { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".ts"));

test.each(files.map((name) => [name.replaceAll("\\", "/")]))("src/%s imports only folders below its own", (name) => {
  const own = LAYERS.indexOf(name.split("/")[0]!);
  expect(own).toBeGreaterThanOrEqual(0);
  const text = readFileSync(path.join("src", name), "utf8");
  for (const [, specifier] of text.matchAll(/from "(\.[^"]*)"/g)) {
    const target = path.posix.join(path.posix.dirname(name), specifier!).split("/")[0]!;
    expect([name, target, LAYERS.indexOf(target) <= own]).toEqual([name, target, true]);
  }
});

test("Office and Excel appear only in src/host, CustomFunctions only in functions", () => {
  for (const name of files) {
    const code = readFileSync(path.join("src", name), "utf8").replace(/\/\*[\s\S]*?\*\/|\/\/.*|"[^"\n]*"|`[^`]*`/g, "");
    if (!name.startsWith("host")) expect([name, /\b(Office|Excel)\./.test(code)]).toEqual([name, false]);
    expect([name, /\bCustomFunctions\b/.test(code)]).toEqual([name, false]);
  }
});
