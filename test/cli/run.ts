import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { MessageChannel, receiveMessageOnPort, Worker } from "node:worker_threads";
import { openWorkbook, type Workbook } from "../../src/workbook/openWorkbook";
import { readCsv } from "../../src/workbook/readCsv";
import { readSheet } from "../../src/workbook/readSheet";
import type { SheetValue } from "../../src/workbook/sheetValue";

/** What a command left: its exit code and what it printed. */
export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

const PROGRAM = resolve("dist/enclosure-columns.js");

/** Runs the built command line in a folder, in a process of its own. */
export function runAlone(folder: string, ...args: readonly string[]): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, [PROGRAM, ...args], { cwd: folder, encoding: "utf8" });
  return { code: status, out: stdout, err: stderr };
}

/**
 * Runs the built command line in a folder, in one process for all runs of a suite: most of what a command takes is
 * starting, and reading code that has not run yet.
 */
export function run(folder: string, ...args: readonly string[]): Ran {
  const { worker, port, turn } = (beside ??= start());
  Atomics.store(turn, 0, 0);
  worker.postMessage({ folder: resolve(folder), args });
  Atomics.wait(turn, 0, 0);
  return (receiveMessageOnPort(port) as { message: Ran }).message;
}

let beside: ReturnType<typeof start> | undefined;

/** A thread passes on what is asked and answered, so that a test can wait for it. */
function start() {
  const { port1, port2 } = new MessageChannel();
  const turn = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
  const workerData = { program: PROGRAM, answers: port2, turn };
  const worker = new Worker(resolve("test/cli/runBeside.mjs"), { workerData, transferList: [port2] });
  return { worker, port: port1, turn };
}

afterAll(async () => {
  await beside?.worker.terminate();
  beside?.port.close();
});

/** Runs a command that must succeed and answer in JSON. */
export function json(folder: string, ...args: readonly string[]): Record<string, unknown> {
  const { code, out, err } = run(folder, ...args, "--json");
  expect({ code, err }).toEqual({ code: 0, err: "" });
  return JSON.parse(out) as Record<string, unknown>;
}

export function newFolder(): string {
  return mkdtempSync(join(tmpdir(), "cli-"));
}

export function bytesOf(folder: string, name: string): Uint8Array {
  return new Uint8Array(readFileSync(join(folder, name)));
}

export function csvRows(folder: string, name: string): readonly (readonly string[])[] {
  return readCsv(bytesOf(folder, name)).rows;
}

export function book(folder: string, name: string): Workbook {
  return openWorkbook(bytesOf(folder, name));
}

export function sheetRows(folder: string, name: string, sheet: string): readonly (readonly SheetValue[])[] {
  return readSheet(book(folder, name), sheet).rows;
}

/** A column by its heading, the headings in the first row. */
export function columnOf<T>(rows: readonly (readonly T[])[], heading: string): (T | undefined)[] {
  const index = rows[0]!.findIndex((cell) => cell === heading);
  expect({ heading, index }).not.toEqual({ heading, index: -1 });
  return rows.slice(1).map((row) => row[index]);
}
