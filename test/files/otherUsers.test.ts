import { spawnSync } from "node:child_process";
import fs from "node:fs";
import {
  chmodSync,
  chownSync,
  existsSync,
  linkSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { readRegularFile } from "../../src/files/readRegularFile";
import { saveBeside, type SaveRequest } from "../../src/files/saveBeside";
import { InputError } from "../../src/measure/errors";
import { damaged } from "../../src/workbook/damaged";

const OLD = Buffer.from("the survey as it was");
const NEW = Buffer.from("the survey with new columns");
const isRoot = process.getuid?.() === 0;
const NOBODY = 65_534;

let folder: string;
let survey: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "others-"));
  chmodSync(folder, 0o755);
  survey = join(folder, "survey.xlsx");
  writeFileSync(survey, OLD);
});
afterEach(() => {
  jest.restoreAllMocks();
  expect(readFileSync(survey).equals(OLD) || files().some((name) => read(name) === OLD.toString())).toBe(true);
  rmSync(folder, { recursive: true, force: true });
});

function request(more: Partial<SaveRequest> = {}): SaveRequest {
  const output = join(folder, "filled.xlsx");
  return { input: survey, inputBytes: OLD, output, bytes: NEW, verify: () => undefined, ...more };
}

const inPlace = (more: Partial<SaveRequest> = {}) => request({ output: survey, inPlace: true, ...more });
const files = (): readonly string[] => readdirSync(folder).sort();
const read = (name: string): string => readFileSync(join(folder, name)).toString();

/** An error as the system gives it. */
function systemError(code: string): Error {
  return Object.assign(new Error(`${code}: made for a test`), { code, syscall: "made" });
}

describe("who may read the survey may read the output, and nobody else", () => {
  test.each([0o600, 0o640, 0o644, 0o660])("a survey of %o", (mode) => {
    chmodSync(survey, mode);
    const modes: number[] = [];
    // The first byte is written to a file that its owner alone may read, or that has its access already.
    const write = fs.writeSync;
    jest.spyOn(fs, "writeSync").mockImplementation(((file: number, ...rest: [Uint8Array]) => {
      modes.push(fs.fstatSync(file).mode & 0o777);
      return write(file, ...rest);
    }) as typeof fs.writeSync);
    saveBeside(request());
    expect(statSync(join(folder, "filled.xlsx")).mode & 0o777).toBe(mode);
    expect(modes).toEqual([mode]);
  });

  test("also where an earlier output was open to all", () => {
    chmodSync(survey, 0o600);
    writeFileSync(join(folder, "filled.xlsx"), "earlier", { mode: 0o644 });
    saveBeside(request({ replace: true }));
    expect(statSync(join(folder, "filled.xlsx")).mode & 0o777).toBe(0o600);
  });

  test("a file without a survey is its owner's alone", () => {
    saveBeside(request({ input: join(folder, "none.csv") }));
    expect(statSync(join(folder, "filled.xlsx")).mode & 0o777).toBe(0o600);
  });

  (isRoot ? test : test.skip)("written by root, it belongs to the survey's owner; another user cannot read it", () => {
    chmodSync(survey, 0o600);
    saveBeside(request());
    const out = join(folder, "filled.xlsx");
    const look = `try { require("fs").readFileSync(process.argv[1]); console.log("read") } catch (e) { console.log(e.code) }`;
    const seen = spawnSync(process.execPath, ["-e", look, out], {
      uid: NOBODY,
      gid: NOBODY,
      encoding: "utf8",
      cwd: "/",
    });
    expect(seen.stdout.trim()).toBe("EACCES");
    rmSync(out);
    chownSync(survey, NOBODY, NOBODY);
    saveBeside(request());
    expect([statSync(out).uid, statSync(out).gid]).toEqual([NOBODY, NOBODY]);
  });
});

describe("plain files alone", () => {
  test("are read: a folder, a pipe and a device are refused, and none keeps the program waiting", () => {
    const pipe = join(folder, "pipe.xlsx");
    spawnSync("mkfifo", [pipe]);
    expect(() => readRegularFile(pipe, "survey")).toThrow("which is a pipe; needs a plain file");
    expect(() => readRegularFile(folder, "survey")).toThrow("which is a folder; needs a plain file");
    expect(() => readRegularFile("/dev/null", "survey")).toThrow("which is a device; needs a plain file");
    expect(() => readRegularFile(join(folder, "none"), "survey")).toThrow("no such file is there");
    rmSync(pipe);
  });

  test("are replaced: a folder, a pipe, a device and a link that leads nowhere stay", () => {
    mkdirSync(join(folder, "folder.xlsx"));
    spawnSync("mkfifo", [join(folder, "pipe.xlsx")]);
    symlinkSync("/dev/null", join(folder, "device.xlsx"));
    symlinkSync(join(folder, "nowhere"), join(folder, "lost.xlsx"));
    const refused = (name: string, why: string): void => {
      const output = join(folder, name);
      expect(() => saveBeside(request({ output, replace: true }))).toThrow(why);
      expect(() => saveBeside(request({ output, replace: true }))).toThrow(InputError);
    };
    const before = files();
    refused("folder.xlsx", "which is a folder");
    refused("pipe.xlsx", "which is a pipe");
    refused("device.xlsx", "which is a device");
    refused("lost.xlsx", "a link that leads nowhere");
    expect(files()).toEqual(before);
    for (const name of before.slice(0, -1)) rmSync(join(folder, name), { recursive: true });
  });
});

describe("in place", () => {
  test("a file with several names is kept as it is", () => {
    linkSync(survey, join(folder, "twin.xlsx"));
    expect(() => saveBeside(inPlace())).toThrow("a file that has 2 names (hard links)");
    expect([statSync(survey).nlink, files()]).toEqual([2, ["survey.xlsx", "twin.xlsx"]]);
  });

  test("a file that may only be read is kept as it is", () => {
    chmodSync(survey, 0o444);
    expect(() => saveBeside(inPlace())).toThrow(isRoot ? "which may only be read" : "may not be written");
    expect([statSync(survey).mode & 0o777, files()]).toEqual([0o444, ["survey.xlsx"]]);
  });

  test("a backup that a killed run left is used, and no other made", () => {
    linkSync(survey, join(folder, "survey.backup-1.xlsx"));
    expect(saveBeside(inPlace()).backup).toBe(join(folder, "survey.backup-1.xlsx"));
    expect([files(), read("survey.backup-1.xlsx")]).toEqual([["survey.backup-1.xlsx", "survey.xlsx"], OLD.toString()]);
  });

  test("a refused rename leaves no backup, however often", () => {
    jest.spyOn(fs, "renameSync").mockImplementation(() => {
      throw systemError("EPERM");
    });
    for (let i = 0; i < 3; i++) expect(() => saveBeside(inPlace())).toThrow("a folder or file that may not be written");
    expect(files()).toEqual(["survey.xlsx"]);
  });

  test("a spreadsheet that opens the file while it is written is seen", () => {
    const verify = (): void => writeFileSync(join(folder, ".~lock.survey.xlsx#"), "");
    expect(() => saveBeside(inPlace({ verify }))).toThrow("is open in a spreadsheet");
    expect(files()).toEqual([".~lock.survey.xlsx#", "survey.xlsx"]);
  });

  test.each(["survey.xlsx", "filled.xlsx"])(
    "%s, changed while the new one is written, is never written over",
    (name) => {
      const output = join(folder, name);
      if (name !== "survey.xlsx") writeFileSync(output, "someone's work");
      const verify = (): void => writeFileSync(output, "edited meanwhile");
      expect(() => saveBeside(request({ output, inPlace: true, replace: true, verify }))).toThrow("has changed since");
      expect(read(name)).toBe("edited meanwhile");
      expect(files().filter((each) => each.includes("backup") || each.endsWith("part"))).toEqual([]);
      writeFileSync(survey, OLD);
    },
  );

  test("changed after the last check of its bytes, it is not written over either", () => {
    const link = fs.linkSync;
    jest.spyOn(fs, "linkSync").mockImplementation((from, to) => {
      link(from, to);
      // Another program saves as ours does: a new file under the old name.
      writeFileSync(join(folder, "theirs"), "edited meanwhile");
      fs.renameSync(join(folder, "theirs"), survey);
    });
    expect(() => saveBeside(inPlace())).toThrow("has changed since");
    expect([read("survey.xlsx"), read("survey.backup-1.xlsx")]).toEqual(["edited meanwhile", OLD.toString()]);
  });
});

test.each([
  ["EIO", "a disk or network that fails"],
  ["ESTALE", "a network folder that has gone away"],
  ["EDQUOT", "a full quota"],
  ["EXDEV", "a file that lies on a disk of its own"],
  ["ENOSPC", "a full disk"],
  ["EUNATCH", "the error EUNATCH of the system"],
])("%s of the disk is told in words, and leaves the survey as it was", (code, words) => {
  for (const step of ["fsyncSync", "renameSync", "writeSync"] as const) {
    const spy = jest.spyOn(fs, step).mockImplementation(() => {
      throw systemError(code);
    });
    const save = (): unknown => saveBeside(inPlace());
    expect(save).toThrow(InputError);
    expect(save).toThrow(words);
    spy.mockRestore();
    expect(files()).toEqual(["survey.xlsx"]);
  }
});

test("a name as long as a name can be is written; one that is longer is refused in words", () => {
  const longest = 255;
  const name = `${"n".repeat(longest - ".xlsx".length)}.xlsx`;
  expect(saveBeside(request({ output: join(folder, name) })).output).toBe(join(folder, name));
  expect(() => saveBeside(request({ output: join(folder, `n${name}`) }))).toThrow("a name that is too long");
  expect(() => saveBeside(request({ output: join(folder, name), bytes: OLD, replace: true }))).toThrow("too long");
  expect(read(name)).toBe(NEW.toString());
});

test("a file that does not prove right is a fault of the program, never of the user's workbook", () => {
  const verify = (): void => {
    throw damaged("a zip archive cut short");
  };
  const save = (): unknown => saveBeside(request({ verify }));
  expect(save).toThrow("the file as written is not right: workbook: got a zip archive cut short");
  expect(save).not.toThrow(InputError);
  expect(existsSync(join(folder, "filled.xlsx"))).toBe(false);
});
