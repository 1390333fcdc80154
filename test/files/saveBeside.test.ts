import { spawnSync } from "node:child_process";
import {
  chmodSync,
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
import { InputError } from "../../src/measure/errors";
import { saveBeside, type SaveRequest } from "../../src/files/saveBeside";
import { SAVER, writeSaverProgram } from "../workbook/made/saverProgram";

const OLD = Buffer.from("the survey as it was");
const NEW = Buffer.from("the survey with new columns");

let root: string;
let folder: string;
let count = 0;

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), "save-"));
  chmodSync(root, 0o755);
  writeSaverProgram(root);
});
afterAll(() => rmSync(root, { recursive: true, force: true }));
beforeEach(() => {
  folder = join(root, `run${count++}`);
  mkdirSync(folder);
  writeFileSync(join(folder, "survey.xlsx"), OLD);
});

function request(more: Partial<SaveRequest> = {}): SaveRequest {
  return {
    input: join(folder, "survey.xlsx"),
    inputBytes: OLD,
    output: join(folder, "filled.xlsx"),
    bytes: NEW,
    verify: () => undefined,
    ...more,
  };
}

const read = (name: string) => readFileSync(join(folder, name)).toString();
const files = () => readdirSync(folder).sort();

describe("a filled survey", () => {
  test("is written beside the survey, and nothing else is", () => {
    expect(saveBeside(request())).toEqual({ output: join(folder, "filled.xlsx") });
    expect(files()).toEqual(["filled.xlsx", "survey.xlsx"]);
    expect([read("filled.xlsx"), read("survey.xlsx")]).toEqual([NEW.toString(), OLD.toString()]);
  });

  test("never replaces the survey unasked, by whatever name it is called", () => {
    symlinkSync(join(folder, "survey.xlsx"), join(folder, "other.xlsx"));
    linkSync(join(folder, "survey.xlsx"), join(folder, "twin.xlsx"));
    for (const name of ["survey.xlsx", "other.xlsx", "twin.xlsx", "./survey.xlsx"]) {
      expect(() => saveBeside(request({ output: join(folder, name), replace: true }))).toThrow(
        "which is the survey itself",
      );
    }
    expect(read("survey.xlsx")).toBe(OLD.toString());
  });

  test("never replaces another file unasked", () => {
    writeFileSync(join(folder, "filled.xlsx"), "someone's work");
    expect(() => saveBeside(request())).toThrow(
      "which is there already; is written as a new file; choose another name, or say replace",
    );
    expect(() => saveBeside(request({ inPlace: true }))).toThrow("is there already");
    expect(read("filled.xlsx")).toBe("someone's work");
  });

  test("replaces another file when asked, keeping it as a backup", () => {
    writeFileSync(join(folder, "filled.xlsx"), "someone's work");
    expect(saveBeside(request({ replace: true })).backup).toBe(join(folder, "filled.backup-1.xlsx"));
    expect([read("filled.xlsx"), read("filled.backup-1.xlsx")]).toEqual([NEW.toString(), "someone's work"]);
  });

  test("replaces the survey in place when asked, with a new backup each time and its permissions", () => {
    chmodSync(join(folder, "survey.xlsx"), 0o640);
    writeFileSync(join(folder, "survey.backup-1.xlsx"), "older");
    const output = join(folder, "survey.xlsx");
    expect(saveBeside(request({ output, inPlace: true })).backup).toBe(join(folder, "survey.backup-2.xlsx"));
    saveBeside(request({ output, inPlace: true, inputBytes: NEW, bytes: Buffer.from("third") }));
    expect(files()).toEqual(["survey.backup-1.xlsx", "survey.backup-2.xlsx", "survey.backup-3.xlsx", "survey.xlsx"]);
    expect(["survey.backup-1.xlsx", "survey.backup-2.xlsx", "survey.backup-3.xlsx", "survey.xlsx"].map(read)).toEqual([
      "older",
      OLD.toString(),
      NEW.toString(),
      "third",
    ]);
    expect(statSync(output).mode & 0o777).toBe(0o640);
  });

  test("through a link replaces the file that the link leads to, and leaves the link a link", () => {
    mkdirSync(join(folder, "shelf"));
    writeFileSync(join(folder, "shelf", "real.xlsx"), "real");
    symlinkSync(join(folder, "shelf", "real.xlsx"), join(folder, "filled.xlsx"));
    saveBeside(request({ replace: true }));
    expect(readdirSync(join(folder, "shelf")).sort()).toEqual(["real.backup-1.xlsx", "real.xlsx"]);
    expect(read("filled.xlsx")).toBe(NEW.toString());
  });

  test("that would be the same again is not written again", () => {
    writeFileSync(join(folder, "filled.xlsx"), NEW);
    expect(saveBeside(request({ replace: true }))).toEqual({ output: join(folder, "filled.xlsx") });
    expect(files()).toEqual(["filled.xlsx", "survey.xlsx"]);
  });

  test("does not replace a file that is open in a spreadsheet", () => {
    const output = join(folder, "survey.xlsx");
    for (const lock of ["~$survey.xlsx", ".~lock.survey.xlsx#"]) {
      writeFileSync(join(folder, lock), "");
      expect(() => saveBeside(request({ output, inPlace: true }))).toThrow(`is open in a spreadsheet (${lock})`);
      rmSync(join(folder, lock));
    }
    expect(read("survey.xlsx")).toBe(OLD.toString());
  });

  test("does not replace a survey that has changed since it was read", () => {
    writeFileSync(join(folder, "survey.xlsx"), "edited meanwhile");
    expect(() => saveBeside(request({ output: join(folder, "survey.xlsx"), inPlace: true }))).toThrow(
      "has changed since it was read",
    );
    expect(files()).toEqual(["survey.xlsx"]);
    expect(read("survey.xlsx")).toBe("edited meanwhile");
  });

  test("does not replace a file that comes to stand there while it is written", () => {
    const verify = () => writeFileSync(join(folder, "filled.xlsx"), "someone's work");
    expect(() => saveBeside(request({ verify }))).toThrow("came to stand there meanwhile");
    expect(read("filled.xlsx")).toBe("someone's work");
    expect(files()).toEqual(["filled.xlsx", "survey.xlsx"]);
  });

  test("that does not prove right when read back leaves everything as it was", () => {
    const verify = () => {
      throw new Error("the part xl/styles.xml has changed");
    };
    expect(() => saveBeside(request({ output: join(folder, "survey.xlsx"), inPlace: true, verify }))).toThrow(
      "xl/styles.xml has changed",
    );
    expect(files()).toEqual(["survey.xlsx"]);
    expect(read("survey.xlsx")).toBe(OLD.toString());
  });

  test("needs its folder", () => {
    expect(() => saveBeside(request({ output: join(folder, "nowhere", "filled.xlsx") }))).toThrow(InputError);
    expect(() => saveBeside(request({ output: join(folder, "nowhere", "filled.xlsx") }))).toThrow(
      "a folder that is not there",
    );
  });
});

/** Runs the saver in a folder, optionally as a user without rights or through a shell that limits it. */
function runSaver(
  where: string,
  { uid, before = "", bytes = "" }: { uid?: number; before?: string; bytes?: string } = {},
): string {
  const line = `${before} exec "${process.execPath}" "${join(root, SAVER)}" "${where}" ${bytes}`;
  const { stdout, stderr, signal } = spawnSync("bash", ["-c", line], {
    encoding: "utf8",
    ...(uid === undefined ? {} : { uid, gid: uid }),
  });
  // A program that ends without a word was killed, or is broken.
  if (stdout === "" && signal !== "SIGKILL") throw new Error(stderr);
  return stdout;
}

const MEGABYTES = Buffer.alloc(3_000_000, "new columns ");

/** Written in several steps. */
const LARGE = Buffer.alloc(10_000_000, "new columns ");

test("killed before any of its steps, the survey is the old one or the whole new one, and the old one is never lost", () => {
  const outcomes = { old: 0, new: 0, cutShort: 0 };
  const survey = join(folder, "survey.xlsx");
  writeFileSync(join(folder, "new.bin"), LARGE);
  for (let step = 1; ; step++) {
    for (const name of files()) if (name !== "new.bin" && !name.endsWith(".enclosure-part")) rmSync(join(folder, name));
    writeFileSync(survey, OLD);
    const said = runSaver(folder, { before: `KILL_AT=${step}` });
    const now = readFileSync(survey);
    const backups = files().filter((name) => name.includes("backup"));
    for (const backup of backups) expect(read(backup)).toBe(OLD.toString());
    if (now.equals(LARGE)) {
      outcomes.new++;
      expect(backups).toHaveLength(1);
    } else {
      outcomes.old++;
      expect(now.equals(OLD)).toBe(true);
    }
    const remains = files().filter((name) => name.endsWith(".enclosure-part"));
    if (remains.some((name) => statSync(join(folder, name)).size < LARGE.length)) outcomes.cutShort++;
    expect(remains.length).toBeLessThanOrEqual(1);
    if (said !== "") break;
  }
  // All that came before the renaming left the old file; a flush, and the end, came after it.
  expect(outcomes.cutShort).toBeGreaterThanOrEqual(3);
  expect(outcomes.old).toBeGreaterThan(outcomes.cutShort);
  expect(outcomes.new).toBeGreaterThanOrEqual(2);
  expect(files().filter((name) => name.endsWith(".enclosure-part"))).toEqual([]);
});

test("a file larger than is allowed leaves the survey as it was, and no remains", () => {
  writeFileSync(join(folder, "new.bin"), MEGABYTES);
  expect(runSaver(folder, { before: "ulimit -f 1000;" })).toMatch(
    /InputError output: got ".*": a file larger than is allowed here; the original is as it was/,
  );
  expect(files()).toEqual(["new.bin", "survey.xlsx"]);
  expect(read("survey.xlsx")).toBe(OLD.toString());
});

const small = join(tmpdir(), `small-disk-${process.pid}`);
const mounted = mountSmallDisk();
afterAll(() => {
  if (mounted) spawnSync("umount", [small]);
  rmSync(small, { recursive: true, force: true });
});

function mountSmallDisk(): boolean {
  mkdirSync(small, { recursive: true });
  return (
    process.platform === "linux" && spawnSync("mount", ["-t", "tmpfs", "-o", "size=1m", "tmpfs", small]).status === 0
  );
}

(mounted ? test : test.skip)("a full disk leaves the survey as it was, and no remains", () => {
  writeFileSync(join(small, "survey.xlsx"), OLD);
  writeFileSync(join(folder, "new.bin"), MEGABYTES);
  expect(runSaver(small, { bytes: join(folder, "new.bin") })).toMatch(
    /InputError output: got ".*": a full disk; the original is as it was; make room/,
  );
  expect(readdirSync(small)).toEqual(["survey.xlsx"]);
  expect(readFileSync(join(small, "survey.xlsx")).equals(OLD)).toBe(true);
});

test("a folder that may not be written leaves the survey as it was", () => {
  writeFileSync(join(folder, "new.bin"), MEGABYTES);
  chmodSync(folder, 0o555);
  const nobody = 65_534;
  expect(runSaver(folder, process.getuid?.() === 0 ? { uid: nobody } : {})).toMatch(
    /InputError output: got ".*": a folder or file that may not be written/,
  );
  chmodSync(folder, 0o755);
  expect(files()).toEqual(["new.bin", "survey.xlsx"]);
  expect(existsSync(join(folder, "survey.backup-1.xlsx"))).toBe(false);
});
