import type { EditResult } from "./edits";
import { openWorkbook, type Workbook } from "./openWorkbook";
import { readXml } from "./readXml";
import { sameBytes, type ZipEntry } from "./zip";

/**
 * Proves a written file against the workbook it came from: it opens, every part that the edit did not name is there
 * with the same bytes, every part that it did name is well-formed, and none has come or gone unsaid.
 *
 * @param written the bytes as read back from the disk
 * @throws Error when anything differs; the file must then not take the place of another
 */
export function verifyEdit(original: Workbook, edit: Omit<EditResult, "bytes">, written: Uint8Array): void {
  const now = openWorkbook(written).zip;
  const changed = new Set(edit.changed);
  const removed = new Set(edit.removed);
  const added = new Set(edit.added);
  for (const entry of original.zip.values()) {
    const after = now.get(entry.name);
    if (removed.has(entry.name)) {
      if (after) throw new Error(`the part ${entry.name} should be gone`);
    } else if (!after) throw new Error(`the part ${entry.name} is lost`);
    else if (!changed.has(entry.name)) compare(entry, after);
  }
  for (const entry of now.values()) {
    if (!original.zip.has(entry.name) && !added.has(entry.name))
      throw new Error(`the part ${entry.name} came from nowhere`);
    if (changed.has(entry.name) || added.has(entry.name)) readXml(entry, {});
  }
}

/** A part that was not changed is copied as it was packed, damaged or not. */
function compare(before: ZipEntry, after: ZipEntry): void {
  const { method, crc, size, packed } = before;
  const same = after.method === method && after.crc === crc && after.size === size && sameBytes(after.packed, packed);
  if (!same) throw new Error(`the part ${before.name} has changed`);
}
