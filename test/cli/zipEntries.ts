import { unzipSync } from "fflate";

/** The parts of a package by name, unpacked. */
export function readZipEntries(bytes: Uint8Array): ReadonlyMap<string, Uint8Array> {
  return new Map(Object.entries(unzipSync(bytes)));
}
