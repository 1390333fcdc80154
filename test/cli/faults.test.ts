import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { bytesOf, newFolder, run } from "./run";

jest.setTimeout(120_000);

const SURVEY = "id,height,width,depth,enclosure\nA,300,210,40,tray\n";

function folderWith(survey: string, name = "survey.csv"): string {
  const folder = newFolder();
  writeFileSync(join(folder, name), survey);
  return folder;
}

test.each(["constructor", "toString", "__proto__", "hasOwnProperty", "valueOf"])("%s is no command", (name) => {
  const { code, out, err } = run(".", name);
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toMatch(/^command: got ".*"; give fill, plan/);
  const help = run(".", "help", name);
  expect([help.code, help.out]).toEqual([0, run(".", "help").out]);
});

describe("a fault of the program", () => {
  // A fault that nobody has found yet cannot be called up: this one is put into the language itself.
  const broken = (folder: string, ...args: readonly string[]) => {
    const hook = join(folder, "broken.cjs");
    writeFileSync(hook, "Array.prototype.findLast = () => { throw new TypeError('\\u001b[2Jnot foreseen'); };");
    const program = resolve("dist/enclosure-columns.js");
    return spawnSync(process.execPath, ["-r", hook, program, ...args], { cwd: folder, encoding: "utf8" });
  };

  test("is told in one line with a reference, and the survey is as it was", () => {
    const folder = folderWith(SURVEY);
    const before = createHash("sha256").update(bytesOf(folder, "survey.csv")).digest("hex");
    const { status, stdout, stderr } = broken(folder, "fill", "survey.csv", "--in-place");
    expect([status, stdout]).toEqual([3, ""]);
    expect(stderr).toMatch(
      /^This is a fault of the program; your survey is as it was\. Reference [0-9a-f]{6}\. Add --debug for details\.\nIf it was already written in place, its backup is beside it\.\n$/,
    );
    expect(createHash("sha256").update(bytesOf(folder, "survey.csv")).digest("hex")).toBe(before);
    expect(broken(folder, "fill", "survey.csv", "--in-place").stderr).toBe(stderr);
  });

  test("with --debug tells its details, in short lines that a terminal does not obey", () => {
    const { stderr } = broken(folderWith(SURVEY), "fill", "survey.csv", "--debug");
    expect(stderr).toMatch(/Reference [0-9a-f]{6}\.\nTypeError: ␛\[2Jnot foreseen\n +at /);
    expect(stderr.split("\n").every((line) => line.length <= 300)).toBe(true);
    expect(stderr).not.toContain("\u001b");
  });
});

test("what cells hold is shown and never obeyed by the terminal", () => {
  const escape = "\u001b[2J\u009b31m\u202eevil\u0007";
  const folder = folderWith(
    `id,height,width,depth,enclosure\n"A${escape}\nFiles",${escape},210,40,tray\nB,300,210,40,tray\nC,300,210,40,tray\n`,
  );
  for (const args of [
    ["fill", "survey.csv"],
    ["plan", "survey.csv"],
    ["estimate", "survey.csv"],
    ["fill", escape],
  ]) {
    const { out, err } = run(folder, ...args, ...(args[1] === "survey.csv" ? ["--replace"] : []));
    const lines = (out + err).replaceAll("\n", "");
    expect([args[0], /[\p{Cc}\u202e]/u.test(lines)]).toEqual([args[0], false]);
  }
  const { out } = run(folder, "fill", "survey.csv", "--replace");
  expect(out).toContain("row 2, A␛[2J‹9B›31m‹202E›evil␇␊Files: height: got");
  const json = run(folder, "fill", "survey.csv", "--replace", "--json").out;
  expect(json).not.toMatch(/[\u007f-\u009f\u202e]/);
  expect(JSON.stringify(JSON.parse(json))).toContain("\u202eevil");
});

test("a folder as output, a name that is too long and a folder as survey are refused in words", () => {
  const folder = folderWith(SURVEY);
  mkdirSync(join(folder, "folder.xlsx"));
  const refused = (...args: readonly string[]) => {
    const { code, err } = run(folder, ...args);
    return [code, err];
  };
  expect(refused("fill", "survey.csv", "--out", "folder.xlsx", "--replace")).toEqual([
    2,
    expect.stringContaining("which is a folder"),
  ]);
  expect(refused("fill", "folder.xlsx")).toEqual([2, expect.stringContaining("which is a folder")]);
  expect(refused("fill", "survey.csv", "--out", `${"n".repeat(260)}.csv`)).toEqual([
    2,
    expect.stringContaining("a name that is too long"),
  ]);
  const long = `${"n".repeat(248)}.csv`;
  writeFileSync(join(folder, long), SURVEY);
  expect(refused("fill", long)).toEqual([2, expect.stringContaining("choose a shorter name with --out")]);
  expect(refused("fill", long, "--out", "short.csv")[0]).toBe(0);
  expect(readFileSync(join(folder, long), "utf8")).toBe(SURVEY);
});
