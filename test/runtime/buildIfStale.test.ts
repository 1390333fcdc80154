import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { isStale } from "../../.config/build/buildIfStale";

const BUILT = [
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

let folder = "";
let dist = "";
let source = "";

beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), "build-if-stale-"));
  dist = path.join(folder, "dist");
  source = path.join(folder, "src");
  mkdirSync(path.join(dist, "page"), { recursive: true });
  mkdirSync(path.join(dist, "addin"), { recursive: true });
  mkdirSync(path.join(source, "deep"), { recursive: true });
  write(path.join(source, "deep", "a.ts"), "", 100);
  [path.join(source, "deep"), source].forEach((name) => utimesSync(name, 100, 100));
  BUILT.forEach((name) => write(path.join(dist, name), "", 200));
});

afterEach(() => rmSync(folder, { recursive: true }));

test("a build newer than every source is not stale", () => {
  expect(isStale(dist, [source])).toBe(false);
});

test.each(BUILT)("a build without %s is stale", (name) => {
  rmSync(path.join(dist, name));
  expect(isStale(dist, [source])).toBe(true);
});

test("one newer source, however deep, makes the build stale", () => {
  write(path.join(source, "deep", "a.ts"), "", 300);
  expect(isStale(dist, [source])).toBe(true);
});

test("a deleted source makes the build stale", () => {
  rmSync(path.join(source, "deep", "a.ts"));
  expect(isStale(dist, [source])).toBe(true);
});

test("a development build is stale", () => {
  write(path.join(dist, "manifest.xml"), "https://localhost:3000", 200);
  expect(isStale(dist, [source])).toBe(true);
});

const write = (file: string, text: string, seconds: number): void => {
  writeFileSync(file, text);
  utimesSync(file, seconds, seconds);
};
