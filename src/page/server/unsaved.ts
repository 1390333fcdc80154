import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, renameSync, rmSync } from "node:fs";
import { basename, dirname, extname, join } from "node:path";
import * as z from "zod/mini";
import { accessLike } from "../../files/access";
import { clearLeftovers, temporaryName } from "../../files/leftovers";
import { explained } from "../../files/systemErrors";
import { writeFlushed } from "../../files/writeFlushed";
import { InputError, shown } from "../../measure/errors";
import type { WorkbookEdits } from "../../workbook/edits";
import type { UnsavedChanges } from "../openedBook";
import { EDITS, plainEdits } from "./readEdits";

/** What was changed in a workbook and not saved: from it and the file, the workbook is made again. */
export interface Unsaved {
  readonly id: string;
  /** Name of the file, beside which this is kept. */
  readonly file: string;
  /** Of the file's bytes. */
  readonly sha256: string;
  /** When it was kept, ISO 8601. */
  readonly time: string;
  /** Where the page was served: a page that is still open finds its program there again. */
  readonly port: number;
  /** Changes of cells and writes of the pane, in their order. */
  readonly steps: readonly WorkbookEdits[];
}

const UNSAVED = z.strictObject({
  id: z.string().check(z.regex(/^[0-9a-f]{12}$/)),
  file: z.string(),
  sha256: z.string(),
  time: z.string(),
  port: z.int(),
  steps: z.array(EDITS),
});

export function fingerprint(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}

/**
 * Keeps unsaved changes beside the file, at any moment either as they were or as they are. What is not on the disk as
 * it was opened, such as a file dropped on the page, is kept too.
 *
 * @param path the file that was opened
 * @param bytes what was opened
 * @throws InputError when the folder cannot be written
 */
export function keepUnsaved(path: string, bytes: Uint8Array, unsaved: Unsaved): void {
  const kept = keptAt(dirname(path), unsaved);
  try {
    const onDisk = existsSync(path) && fingerprint(readFileSync(path)) === unsaved.sha256;
    if (!onDisk && !existsSync(kept.copy)) put(kept.copy, bytes, path);
    put(kept.changes, Buffer.from(JSON.stringify(unsaved)), path);
  } catch (error) {
    throw explained(error, "output", kept.changes);
  }
}

/** Forgets what was kept: it has been saved, or is not wanted. */
export function dropUnsaved(folder: string, unsaved: Pick<Unsaved, "id" | "file">): void {
  const kept = keptAt(folder, unsaved);
  for (const each of [kept.changes, kept.copy]) rmSync(each, { force: true });
}

/** Unsaved changes that lie in a folder, the last first. What cannot be read is left as it is. */
export function unsavedIn(folder: string): readonly Unsaved[] {
  if (!existsSync(folder)) return [];
  const found = readdirSync(folder).flatMap((name) => (KEPT.test(name) ? [readUnsaved(join(folder, name))] : []));
  return found.filter((each) => each !== undefined).sort((a, b) => (a.time < b.time ? 1 : -1));
}

/** The file as it was opened. @throws InputError when it has changed since, and no copy is there */
export function bytesOfUnsaved(folder: string, unsaved: Unsaved): Uint8Array {
  const places = [join(folder, unsaved.file), keptAt(folder, unsaved).copy];
  for (const place of places) {
    if (!existsSync(place)) continue;
    const bytes = readFileSync(place);
    if (fingerprint(bytes) === unsaved.sha256) return bytes;
  }
  throw new InputError(
    "unsaved changes",
    `${shown(unsaved.file)}, which is not as it was when they were made`,
    "belong to the file as it was then",
    `put the earlier ${unsaved.file} back in its place, or throw the changes away`,
  );
}

/** What the page says of them. */
export function toldOf({ id, file, time, steps }: Unsaved): UnsavedChanges {
  return { document: id, file, time, cells: steps.reduce((sum, { cells = [] }) => sum + cells.length, 0) };
}

const KEPT = /\.unsaved-[0-9a-f]{12}\.json$/;

function keptAt(folder: string, { id, file }: Pick<Unsaved, "id" | "file">): { changes: string; copy: string } {
  const start = join(folder, `${basename(file, extname(file))}.unsaved-${id}`);
  return { changes: `${start}.json`, copy: `${start}.copy` };
}

function put(path: string, bytes: Uint8Array, survey: string): void {
  clearLeftovers(path);
  const temporary = temporaryName(path);
  rmSync(temporary, { force: true });
  writeFlushed(temporary, bytes, accessLike(survey));
  renameSync(temporary, path);
}

function readUnsaved(path: string): Unsaved | undefined {
  try {
    const { steps, ...rest } = UNSAVED.parse(JSON.parse(readFileSync(path, "utf8")));
    // The name stands in a file that anyone may have written: it names nothing outside the folder.
    return rest.file === basename(rest.file) ? { ...rest, steps: steps.map(plainEdits) } : undefined;
  } catch {
    return undefined;
  }
}
