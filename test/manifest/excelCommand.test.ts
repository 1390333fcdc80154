import { spawnSync } from "node:child_process";
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join, resolve } from "node:path";

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "excel-command-"));
  // Microsoft's tool is half a gigabyte: what it is asked is written down, and its answer is a failure where FAILS is set.
  const npx = join(folder, "npx");
  writeFileSync(npx, '#!/bin/sh\necho "$@" >> asked\nexit ${FAILS:-0}\n');
  chmodSync(npx, 0o755);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function excel(mode: string, env: Readonly<Record<string, string>> = {}) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [resolve(".config/excel.mjs"), mode], {
    cwd: folder,
    env: { ...process.env, ...env, PATH: `${folder}${delimiter}${process.env.PATH}` },
    encoding: "utf8",
  });
  return { status, said: stdout + stderr };
}

describe("npm run excel -- stop", () => {
  test("without a built manifest nothing is in Excel, and it says so", () => {
    expect(excel("stop")).toEqual({
      status: 0,
      said: expect.stringContaining("dist/manifest.xml is not there, so nothing of it is in Excel"),
    });
  });

  test("asks Microsoft's tool to take the add-in out, and fails where that fails", () => {
    mkdirSync(join(folder, "dist"));
    writeFileSync(join(folder, "dist/manifest.xml"), "<OfficeApp/>");
    expect(excel("stop").status).toBe(0);
    expect(readFileSync(join(folder, "asked"), "utf8")).toBe("--yes office-addin-debugging stop dist/manifest.xml\n");
    expect(excel("stop", { FAILS: "3" }).status).toBe(3);
  });

  test("another word is refused with what it takes", () => {
    expect(excel("stopp")).toEqual({
      status: 2,
      said: expect.stringContaining("got stopp; give web, stop or nothing"),
    });
  });
});
