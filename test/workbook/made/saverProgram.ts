import { transformFileSync } from "@swc/core";
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";

/** What the program that is killed, starved or shut out needs: a folder with the survey and the bytes to save over it. */
export const SAVER = "saver.js";

/** Calls of node:fs that change something on the disk. */
const STEPS = [
  ...["openSync", "writeSync", "fchmodSync", "fsyncSync", "closeSync"],
  ...["linkSync", "copyFileSync", "renameSync", "rmSync"],
];

const SOURCES = [
  ...[
    "access",
    "backup",
    "leftovers",
    "readRegularFile",
    "refuseUnasked",
    "saveBeside",
    "systemErrors",
    "writeFlushed",
  ].map((name) => `files/${name}`),
  "measure/errors",
];

/**
 * Compiles the saver to plain JavaScript in a folder, with a program that saves `new.bin` over `survey.xlsx`:
 * `node saver.js <folder>` says `done` or the message of the error. With `KILL_AT=7` it kills itself in place of the
 * seventh thing that it asks of the disk.
 */
export function writeSaverProgram(folder: string): void {
  for (const source of SOURCES) {
    const target = join(folder, `${source}.js`);
    mkdirSync(dirname(target), { recursive: true });
    const options = {
      jsc: { parser: { syntax: "typescript" as const }, target: "es2022" as const },
      module: { type: "commonjs" as const },
    };
    writeFileSync(target, transformFileSync(join(__dirname, "../../../src", `${source}.ts`), options).code);
  }
  writeFileSync(
    join(folder, SAVER),
    `const fs = require("node:fs");
     const { readFileSync, writeSync } = fs;
     const wrapped = ${JSON.stringify(STEPS)};
     let left = Number(process.env.KILL_AT ?? Infinity);
     for (const name of wrapped) {
       const original = fs[name];
       fs[name] = (...given) => {
         if (--left === 0) process.kill(process.pid, "SIGKILL");
         return original(...given);
       };
     }
     const { saveBeside } = require("./files/saveBeside.js");
     const survey = process.argv[2] + "/survey.xlsx";
     const inputBytes = readFileSync(survey);
     const bytes = readFileSync(process.argv[3] ?? process.argv[2] + "/new.bin");
     try {
       const verify = (written) => { if (!bytes.equals(written)) throw new Error("differs"); };
       saveBeside({ input: survey, inputBytes, output: survey, bytes, verify, inPlace: true });
       writeSync(1, "done\\n");
     } catch (error) {
       writeSync(1, error.name + " " + error.message + "\\n");
     }`,
  );
}
