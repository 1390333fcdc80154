import { execFileSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

const { isAllowed, noticesOf } = jest.requireActual<{
  readonly isAllowed: (licence: unknown) => boolean;
  readonly noticesOf: (files: readonly string[]) => string;
}>("../../.config/build/notices");

const read = (name: string): string => readFileSync(join("dist", name), "utf8");

test("each target ships the licences of its packages", () => {
  expect(read("page/NOTICES.txt")).toMatch(/@univerjs\/engine-render 0\.25\.1 \(Apache-2\.0\)[\s\S]*Apache License/);
  expect(read("NOTICES-command-line.txt")).toMatch(/pdfkit [\d.]+ \(MIT\)/);
  // What a package's own build holds is shipped too.
  expect(read("NOTICES-command-line.txt")).toMatch(/docx [\d.]+ \(MIT\)[\s\S]*nanoid [\d.]+ \(MIT\)/);
  expect(read("NOTICES-add-in.txt")).toMatch(/preact [\d.]+ \(MIT\)/);
});

test("the page holds none of the packages of the grid that it never asks, and the same patterns of line breaks", () => {
  const notices = read("page/NOTICES.txt");
  for (const name of ["franc-min", "opentype.js", "unicode-regex"]) expect(notices).not.toContain(`${name} `);
  expect(notices).toContain("cjk-regex ");
  const made = execFileSync(process.execPath, ["--input-type=module", "--eval", MADE], { encoding: "utf8" });
  const [all, letters, punctuations] = JSON.parse(made) as string[];
  const scripts = readdirSync(join("dist", "page")).filter((name) => name.endsWith(".js"));
  const text = scripts.map((name) => read(`page/${name}`)).join("\n");
  for (const pattern of [all, letters, punctuations]) expect(text.includes(pattern!)).toBe(true);
});

/** What the package makes at each start. */
const MADE = `
  import * as cjk from "cjk-regex";
  console.log(JSON.stringify([cjk.all(), cjk.letters(), cjk.punctuations()].map((each) => each.toRegExp().source)));`;

test("the page holds no hyphenation patterns but those of the grid's own script", () => {
  const scripts = readdirSync(join("dist", "page")).filter((name) => name.endsWith(".js"));
  expect(scripts.filter((name) => /^(cs|hu|ga|sk|de-1996|en-gb)-/.test(name))).toEqual([]);
  expect(scripts.filter((name) => read(`page/${name}`).includes("hyphenation/patterns"))).toEqual([]);
});

test("a licence that is not permissive is refused, and one of a choice is enough", () => {
  expect(["MIT", "(MIT AND Zlib)", "(MIT OR GPL-3.0)", "Apache-2.0"].map((each) => isAllowed(each))).toEqual(
    Array.from({ length: 4 }, () => true),
  );
  expect(["GPL-3.0", "(MIT AND GPL-2.0)", "UNLICENSED", "LGPL-2.1", undefined].map((each) => isAllowed(each))).toEqual(
    Array.from({ length: 5 }, () => false),
  );
  expect(() => noticesOf(["node_modules/axe-core/axe.js"])).toThrow("axe-core: the licence MPL-2.0 is not on the list");
});
