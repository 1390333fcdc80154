import { damaged, tooMuch } from "./damaged";
import { attribute, readXml } from "./readXml";
import type { Zip, ZipEntry } from "./zip";

/** A relationship of a part: its kind is the last word of the type address (`worksheet`, `styles`). */
export interface Relation {
  readonly id: string;
  readonly kind: string;
  readonly type: string;
  /** The part it leads to, or an outside address. */
  readonly target: string;
  readonly outside: boolean;
}

/** The declared content type of every part. */
export interface ContentTypes {
  readonly of: (part: string) => string | undefined;
}

export const CONTENT_TYPES = "[Content_Types].xml";

/** The entry of a part by its name; part names ignore case. */
export function partOf(zip: Zip, name: string): ZipEntry | undefined {
  const exact = zip.get(name);
  if (exact) return exact;
  let lowered = loweredParts.get(zip);
  if (lowered === undefined) {
    lowered = new Map([...zip].map(([key, entry]) => [key.toLowerCase(), entry]));
    loweredParts.set(zip, lowered);
  }
  return lowered.get(name.toLowerCase());
}

const loweredParts = new WeakMap<Zip, ReadonlyMap<string, ZipEntry>>();
/** A sheet may have 65,530 addresses in its cells, each a relationship. */
const MOST_RELATIONS = 100_000;

/** @throws InputError when the part is missing */
export function neededPart(zip: Zip, name: string): ZipEntry {
  const entry = partOf(zip, name);
  if (!entry) throw damaged(`a workbook without its part ${name}`);
  return entry;
}

/** `xl/workbook.xml` -> `xl/_rels/workbook.xml.rels`. */
export function relationsName(part: string): string {
  const slash = part.lastIndexOf("/") + 1;
  return `${part.slice(0, slash)}_rels/${part.slice(slash)}.rels`;
}

/** The relationships of a part, in file order; none when it has no such part. `""` is the whole package. */
export function relationsOf(zip: Zip, part: string): readonly Relation[] {
  const entry = partOf(zip, relationsName(part));
  const relations: Relation[] = [];
  if (!entry) return relations;
  readXml(entry, {
    open: (tag) => {
      if (tag.local !== "Relationship") return;
      if (relations.length >= MOST_RELATIONS)
        throw tooMuch(`the part ${entry.name} with more than ${MOST_RELATIONS} relationships`);
      const type = attribute(tag, "Type") ?? "";
      const target = attribute(tag, "Target") ?? "";
      const outside = attribute(tag, "TargetMode") === "External";
      relations.push({
        id: attribute(tag, "Id") ?? "",
        kind: type.slice(type.lastIndexOf("/") + 1),
        type,
        target: outside ? target : resolvePart(part, target),
        outside,
      });
    },
  });
  return relations;
}

export function contentTypesOf(zip: Zip): ContentTypes {
  const defaults = new Map<string, string>();
  const overrides = new Map<string, string>();
  readXml(neededPart(zip, CONTENT_TYPES), {
    open: (tag) => {
      const type = attribute(tag, "ContentType") ?? "";
      if (tag.local === "Default") defaults.set((attribute(tag, "Extension") ?? "").toLowerCase(), type);
      if (tag.local === "Override")
        overrides.set((attribute(tag, "PartName") ?? "").replace(/^\//, "").toLowerCase(), type);
    },
  });
  return {
    of: (part) => {
      const lowered = part.toLowerCase();
      return overrides.get(lowered) ?? defaults.get(lowered.slice(lowered.lastIndexOf(".") + 1));
    },
  };
}

/** `resolvePart("xl/worksheets/sheet1.xml", "../tables/table1.xml")` -> `xl/tables/table1.xml`. */
export function resolvePart(from: string, target: string): string {
  const path = decoded(target.split("#")[0]!).replaceAll("\\", "/");
  if (path.startsWith("/")) return path.slice(1);
  const folders = from.split("/").slice(0, -1);
  for (const step of path.split("/")) {
    if (step === "..") {
      if (folders.length === 0)
        throw damaged(`a relationship to ${JSON.stringify(target)}, which points outside the workbook`);
      folders.pop();
    } else if (step !== "." && step !== "") folders.push(step);
  }
  return folders.join("/");
}

function decoded(address: string): string {
  try {
    return decodeURI(address);
  } catch {
    return address;
  }
}
