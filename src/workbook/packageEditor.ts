import { escapeXml } from "./escape";
import type { Workbook } from "./openWorkbook";
import { CONTENT_TYPES, neededPart, partOf, relationsName, relationsOf, type Relation } from "./parts";
import { textOf } from "./readXml";
import { attributeIn, childrenOf, rootOf, startTag } from "./scan";
import { append, remove, spliced, type Splice } from "./splice";
import type { Zip, ZipEntry } from "./zip";
import { packText } from "./writeZip";

/** Parts as they will be: changed, added and removed ones over those of the original. */
export interface PackageEditor {
  readonly put: (entry: ZipEntry) => void;
  /** A part as it will be; undefined where it goes. */
  readonly now: (part: string) => ZipEntry | undefined;
  readonly remove: (part: string) => void;
  /** Adds a part of its own with its content type. */
  readonly add: (entry: ZipEntry, contentType: string) => void;
  /** Lists the content type of a new part that is put separately. */
  readonly listType: (part: string, contentType: string) => void;
  /** Adds a relationship from the main part; gives its id. */
  readonly relate: (kind: string, target: string) => string;
  readonly unrelate: (id: string) => void;
  /** A name for a new part that no part has: `freeName("xl/worksheets/sheet", ".xml")`. */
  readonly freeName: (start: string, end: string) => string;
  readonly done: () => PackageChange;
}

export interface PackageChange {
  readonly entries: readonly ZipEntry[];
  readonly changed: readonly string[];
  readonly added: readonly string[];
  readonly removed: readonly string[];
}

export function packageEditor(workbook: Workbook): PackageEditor {
  const put = new Map<string, ZipEntry>();
  const removed = new Set<string>();
  const typesAdded: string[] = [];
  const related: { id: string; kind: string; target: string }[] = [];
  const unrelated = new Set<string>();
  const ids = new Set(workbook.relations.map((relation) => relation.id));
  const taken = new Set([...workbook.zip.keys()].map((name) => name.toLowerCase()));

  const done = (): PackageChange => {
    // A part can be removed and written again, as when a sheet of ours is replaced.
    for (const name of put.keys()) removed.delete(name);
    const types = contentTypes(workbook.zip, typesAdded, removed);
    if (types) put.set(CONTENT_TYPES, types);
    const relations = mainRelations(workbook, related, unrelated);
    if (relations) put.set(relations.name, relations);
    const kept = [...workbook.zip.values()].filter((entry) => !removed.has(entry.name));
    const added = [...put.keys()].filter((name) => !workbook.zip.has(name));
    return {
      entries: [...kept.map((entry) => put.get(entry.name) ?? entry), ...added.map((name) => put.get(name)!)],
      changed: [...put.keys()].filter((name) => workbook.zip.has(name)),
      added,
      removed: [...removed],
    };
  };
  const listType = (part: string, contentType: string): void => {
    typesAdded.push(`PartName="/${escapeXml(part)}" ContentType="${contentType}"`);
  };
  return {
    listType,
    put: (entry) => void put.set(entry.name, entry),
    now: (part) => put.get(part) ?? (removed.has(part) ? undefined : workbook.zip.get(part)),
    remove: (part) => {
      const entry = partOf(workbook.zip, part);
      if (entry) removed.add(entry.name);
    },
    add: (entry, contentType) => {
      put.set(entry.name, entry);
      listType(entry.name, contentType);
    },
    relate: (kind, target) => {
      let number = ids.size + 1;
      while (ids.has(`rId${number}`)) number++;
      ids.add(`rId${number}`);
      related.push({ id: `rId${number}`, kind, target });
      return `rId${number}`;
    },
    unrelate: (id) => void unrelated.add(id),
    freeName: (start, end) => {
      let number = 1;
      while (taken.has(`${start}${number}${end}`.toLowerCase())) number++;
      taken.add(`${start}${number}${end}`.toLowerCase());
      return `${start}${number}${end}`;
    },
    done,
  };
}

/** The parts that only this one leads to, with their lists of relationships; itself not among them. */
export function privateParts(zip: Zip, part: string): readonly string[] {
  const leads = new Map<string, readonly Relation[]>();
  for (const name of zip.keys()) if (!name.endsWith(".rels")) leads.set(name, relationsOf(zip, name));
  const inside = (name: string) =>
    (leads.get(name) ?? []).filter((relation) => !relation.outside).map((relation) => relation.target);
  const found = new Set([part]);
  for (const name of found) for (const target of inside(name)) if (zip.has(target)) found.add(target);
  // One that is also reached from elsewhere stays, and so does all that it leads to.
  const stays: string[] = [...leads.keys()].filter((name) => !found.has(name));
  for (const name of stays) {
    for (const target of inside(name)) {
      if (target !== part && found.delete(target)) stays.push(target);
    }
  }
  found.delete(part);
  return [...found, ...[...found, part].map(relationsName)].filter((name) => partOf(zip, name) !== undefined);
}

/** The list of relationships of a new part. */
export function relationsPart(
  part: string,
  relations: readonly { id: string; kind: string; target: string }[],
): ZipEntry {
  return packText(
    relationsName(part),
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<Relationships xmlns="${PACKAGE}relationships">` +
      `${relations.map((relation) => relationship("", part, relation)).join("")}</Relationships>`,
  );
}

export const PACKAGE = "http://schemas.openxmlformats.org/package/2006/";
export const DOCUMENT_RELATION = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";

function relationship(
  prefix: string,
  from: string,
  { id, kind, target }: { id: string; kind: string; target: string },
): string {
  const address = escapeXml(relativeTarget(from, target));
  return `<${prefix}Relationship Id="${id}" Type="${DOCUMENT_RELATION}${kind}" Target="${address}"/>`;
}

/** The reverse of `resolvePart`: an address from the root is as good, but not every program finds a table by it. */
function relativeTarget(from: string, target: string): string {
  const folders = from.split("/").slice(0, -1);
  const steps = target.split("/");
  let shared = 0;
  while (shared < Math.min(folders.length, steps.length - 1) && folders[shared] === steps[shared]) shared++;
  return [...folders.slice(shared).map(() => ".."), ...steps.slice(shared)].join("/");
}

function contentTypes(zip: Zip, added: readonly string[], removed: ReadonlySet<string>): ZipEntry | undefined {
  const entry = neededPart(zip, CONTENT_TYPES);
  const xml = textOf(entry);
  const root = rootOf(xml);
  const gone = new Set([...removed].map((name) => `/${name.toLowerCase()}`));
  const splices: Splice[] = [...childrenOf(xml, root)]
    .filter((place) => gone.has((attributeIn(startTag(xml, place), "PartName") ?? "").toLowerCase()))
    .map(remove);
  if (added.length > 0)
    splices.push(append(xml, root, added.map((text) => `<${root.prefix}Override ${text}/>`).join("")));
  return splices.length === 0 ? undefined : packText(entry.name, spliced(xml, splices));
}

function mainRelations(
  workbook: Workbook,
  added: readonly { id: string; kind: string; target: string }[],
  removed: ReadonlySet<string>,
): ZipEntry | undefined {
  if (added.length === 0 && removed.size === 0) return undefined;
  const entry = neededPart(workbook.zip, relationsName(workbook.part));
  const xml = textOf(entry);
  const root = rootOf(xml);
  const splices: Splice[] = [...childrenOf(xml, root)]
    .filter((place) => removed.has(attributeIn(startTag(xml, place), "Id") ?? ""))
    .map(remove);
  if (added.length > 0)
    splices.push(
      append(xml, root, added.map((relation) => relationship(root.prefix, workbook.part, relation)).join("")),
    );
  return packText(entry.name, spliced(xml, splices));
}
