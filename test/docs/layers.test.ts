import { readdirSync, readFileSync } from "node:fs";
import { isBuiltin } from "node:module";
import path from "node:path";
import ts from "typescript";

/**
 * What each folder of `src` may import besides itself, static, dynamic and type imports alike. A new import between
 * folders is a decision: it is written here.
 */
const ALLOWED: Readonly<Record<string, readonly string[]>> = {
  measure: [],
  workbook: ["measure"],
  settings: ["measure"],
  headings: ["measure", "workbook"],
  enclosure: ["measure", "settings"],
  covering: ["measure", "settings", "enclosure"],
  board: ["measure", "settings", "enclosure", "covering"],
  cutting: ["measure"],
  item: ["measure", "settings", "enclosure", "covering", "board"],
  survey: ["measure", "settings", "headings", "enclosure", "covering", "board", "cutting", "item"],
  estimate: ["measure", "settings", "enclosure", "covering", "board", "cutting", "item", "survey"],
  application: ["measure", "settings", "enclosure", "item", "survey", "estimate"],
  drawing: ["measure", "settings", "enclosure", "covering", "cutting"],
  paper: [
    ...[
      "measure",
      "settings",
      "enclosure",
      "covering",
      "board",
      "cutting",
      "item",
      "survey",
      "estimate",
      "application",
    ],
    "drawing",
  ],
  files: ["measure"],
  filling: ["measure", "settings", "headings", "board", "item", "survey", "estimate", "workbook"],
  pack: [
    ...["measure", "settings", "enclosure", "item", "survey", "estimate", "application", "drawing", "paper", "filling"],
    "workbook",
  ],
  host: ["measure", "workbook"],
  pane: [
    ...["measure", "settings", "headings", "enclosure", "covering", "board", "cutting", "item", "survey", "estimate"],
    ...["drawing", "paper", "workbook", "filling", "application", "pack", "host"],
  ],
  page: ["measure", "workbook", "files", "item", "filling", "host", "pane"],
  cli: [
    ...["measure", "workbook", "settings", "headings", "enclosure", "covering", "board", "cutting", "item", "survey"],
    ...["estimate", "drawing", "paper", "files", "filling", "pack", "page"],
  ],
};

const files = readdirSync("src", { recursive: true, encoding: "utf8" })
  .map((name) => name.replaceAll("\\", "/"))
  .filter((name) => /\.tsx?$/.test(name));
const known = new Set(files);

/** What a file imports, in whatever way, as it is written there. */
function importsOf(name: string): readonly string[] {
  const { importedFiles } = ts.preProcessFile(readFileSync(path.join("src", name), "utf8"), true, true);
  return importedFiles.map(({ fileName }) => fileName);
}

const written = new Map(files.map((name) => [name, importsOf(name)]));

/** The files of `src` that a file imports. */
function filesOf(name: string): readonly string[] {
  return written.get(name)!.flatMap((specifier) => {
    if (!specifier.startsWith(".")) return [];
    const target = path.posix.join(path.posix.dirname(name), specifier);
    return [target, `${target}.ts`, `${target}.tsx`].find((each) => known.has(each)) ?? target;
  });
}

const imports = new Map(files.map((name) => [name, filesOf(name)]));
const folderOf = (name: string): string => name.split("/")[0]!;

test.each(files)("src/%s imports only what its folder may", (name) => {
  const own = folderOf(name);
  expect(Object.keys(ALLOWED)).toContain(own);
  const breaches = imports
    .get(name)!
    .filter((target) => folderOf(target) !== own && !ALLOWED[own]!.includes(folderOf(target)));
  expect(breaches).toEqual([]);
});

test("each folder imports folders above it in the map alone, so that no two import each other", () => {
  const rooms = Object.keys(ALLOWED);
  for (const [folder, allowed] of Object.entries(ALLOWED))
    for (const other of allowed)
      expect([folder, other, rooms.indexOf(other) < rooms.indexOf(folder)]).toEqual([folder, other, true]);
});

test("no file imports itself through others", () => {
  expect(cycles()).toEqual([]);
});

test("Office and Excel appear only in src/host, CustomFunctions only in functions", () => {
  for (const name of files) {
    const code = readFileSync(path.join("src", name), "utf8").replace(/\/\*[\s\S]*?\*\/|\/\/.*|"[^"\n]*"|`[^`]*`/g, "");
    if (!name.startsWith("host")) expect([name, /\b(Office|Excel)\./.test(code)]).toEqual([name, false]);
    expect([name, /\bCustomFunctions\b/.test(code)]).toEqual([name, false]);
  }
});

/** Folders and files for Node alone. An import without a name in it passes the types of every environment. */
const IN_NODE = /^(cli|files|page\/server)\/|\.node\.ts$/;

test("files that run elsewhere than in Node import nothing of Node's", () => {
  const elsewhere = files.filter((name) => !IN_NODE.test(name));
  const ofNode = elsewhere.flatMap((name) =>
    written
      .get(name)!
      .filter(isBuiltin)
      .map((each) => [name, each]),
  );
  expect(ofNode).toEqual([]);
});

test("every folder of src, and the functions, are checked with the types of their environment", () => {
  const configs = readdirSync(".config/types").filter((name) => name.endsWith(".json") && name !== "tsconfig.json");
  const included = configs.flatMap((name) => {
    const { include } = JSON.parse(readFileSync(path.join(".config/types", name), "utf8")) as { include: string[] };
    return include;
  });
  const wanted = ["functions", ...new Set(files.map((name) => `src/${folderOf(name)}`))];
  expect(wanted.filter((folder) => !included.includes(`../../${folder}`))).toEqual([]);
  const { references } = JSON.parse(readFileSync(".config/types/tsconfig.json", "utf8")) as {
    references: { path: string }[];
  };
  expect(references.map((each) => each.path).sort()).toEqual(configs.sort());
});

/** Each ring of files that import each other, as the path round it. */
function cycles(): readonly string[] {
  const found: string[] = [];
  const done = new Set<string>();
  const walk = (name: string, trail: readonly string[]): void => {
    if (trail.includes(name)) found.push([...trail.slice(trail.indexOf(name)), name].join(" > "));
    if (trail.includes(name) || done.has(name)) return;
    for (const next of imports.get(name) ?? []) walk(next, [...trail, name]);
    done.add(name);
  };
  for (const name of files) walk(name, []);
  return found;
}
