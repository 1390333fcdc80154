import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
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

/** Runs the built command line in a folder. */
export function run(folder: string, ...args: readonly string[]): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, [PROGRAM, ...args], { cwd: folder, encoding: "utf8" });
  return { code: status, out: stdout, err: stderr };
}

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
