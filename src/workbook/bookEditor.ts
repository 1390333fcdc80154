import { escapeXml } from "./escape";
import type { DefinedName } from "./openWorkbook";
import { childOf, childrenOf, rootOf, startTag, withAttribute, attributeIn, type Place } from "./scan";
import { append, insert, remove, spliced, type Splice } from "./splice";

/** What changes in the main part. */
export interface BookChange {
  readonly added: readonly { readonly name: string; readonly sheetId: number; readonly relation: string }[];
  /** Positions of the sheets that go. */
  readonly removed: readonly number[];
  /** Names that go, by position among the defined names. */
  readonly namesRemoved: ReadonlySet<number>;
  readonly namesAdded: readonly Omit<DefinedName, "sheet">[];
  /** New reference of a name, by position. */
  readonly namesMoved: ReadonlyMap<number, string>;
  /** Asks for a full calculation on opening, at which our figures become #NAME? where the add-in is not there. */
  readonly calculates: boolean;
}

/** The main part with its sheets and names changed. */
export function changedBook(xml: string, change: BookChange): string {
  const root = rootOf(xml);
  const parts = [...childrenOf(xml, root)];
  const list = parts.find((part) => part.name === "sheets");
  if (!list) throw new Error("a workbook without a list of sheets");
  const splices = [...sheetSplices(xml, root, list, change), ...nameSplices(xml, root, parts, change)];
  if (change.removed.length > 0) splices.push(...viewSplices(xml, parts, change.removed));
  splices.push(...calculation(xml, root, parts, change.calculates));
  return spliced(xml, splices);
}

const RELATIONSHIPS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
/** What may stand before the defined names, and before the calculation settings, by the schema of the main part. */
const BEFORE_NAMES = ["sheets", "functionGroups", "externalReferences"];
const BEFORE_CALCULATION = [...BEFORE_NAMES, "definedNames"];

function sheetSplices(xml: string, root: Place, list: Place, { added, removed }: BookChange): Splice[] {
  const bound = new RegExp(`\\sxmlns:([\\w.-]+)\\s*=\\s*["']${RELATIONSHIPS}["']`).exec(startTag(xml, root));
  const r = bound?.[1] ?? "r";
  const declared = bound ? "" : ` xmlns:r="${RELATIONSHIPS}"`;
  const places = [...childrenOf(xml, list)];
  const text = added
    .map(
      ({ name, sheetId, relation }) =>
        `<${root.prefix}sheet name="${escapeXml(name)}" sheetId="${sheetId}"${declared} ${r}:id="${relation}"/>`,
    )
    .join("");
  return [...removed.map((position) => remove(places[position]!)), ...(text === "" ? [] : [append(xml, list, text)])];
}

function nameSplices(xml: string, root: Place, parts: readonly Place[], change: BookChange): Splice[] {
  const p = root.prefix;
  const added = change.namesAdded.map(({ name, refersTo, hidden, comment }) => {
    const more = (comment === "" ? "" : ` comment="${escapeXml(comment)}"`) + (hidden ? ` hidden="1"` : "");
    return `<${p}definedName name="${escapeXml(name)}"${more}>${escapeXml(refersTo)}</${p}definedName>`;
  });
  const list = parts.find((part) => part.name === "definedNames");
  if (!list) {
    if (added.length === 0) return [];
    return [insert(after(parts, BEFORE_NAMES), `<${p}definedNames>${added.join("")}</${p}definedNames>`)];
  }
  const places = [...childrenOf(xml, list)];
  const left = places.length - change.namesRemoved.size;
  if (left + added.length === 0) return [remove(list)];
  const splices = places.flatMap((place, i): Splice[] => {
    if (change.namesRemoved.has(i)) return [remove(place)];
    const moved = change.namesMoved.get(i);
    const tag = startTag(xml, place);
    const local = attributeIn(tag, "localSheetId");
    const shift = local === undefined ? 0 : change.removed.filter((position) => position < Number(local)).length;
    const text: Splice[] =
      moved === undefined ? [] : [{ start: place.openEnd, end: place.closeStart, text: escapeXml(moved) }];
    if (shift > 0)
      text.push({
        start: place.start,
        end: place.openEnd,
        text: withAttribute(tag, "localSheetId", String(Number(local) - shift)),
      });
    return text;
  });
  return added.length === 0 ? splices : [...splices, append(xml, list, added.join(""))];
}

/** The views name sheets by position, which moves when one before goes. */
function viewSplices(xml: string, parts: readonly Place[], removed: readonly number[]): Splice[] {
  const views = parts.find((part) => part.name === "bookViews");
  return [...(views ? childrenOf(xml, views) : [])].map((view) => {
    let tag = startTag(xml, view);
    for (const name of ["activeTab", "firstSheet"]) {
      const position = Number(attributeIn(tag, name) ?? 0);
      const shift = removed.filter((gone) => gone < position).length;
      const next = removed.includes(position) ? 0 : position - shift;
      if (next !== position) tag = withAttribute(tag, name, String(next));
    }
    return { start: view.start, end: view.openEnd, text: tag };
  });
}

/** What Excel for Microsoft 365 writes (seen in its files, no source): a lower number, or none, makes it calculate all. */
const CALCULATION_ENGINE = "191029";

function calculation(xml: string, root: Place, parts: readonly Place[], calculates: boolean): Splice[] {
  const settings = childOf(xml, root, "calcPr");
  const wanted = calculates ? `fullCalcOnLoad="1"` : `calcId="${CALCULATION_ENGINE}"`;
  if (!settings) return [insert(after(parts, BEFORE_CALCULATION), `<${root.prefix}calcPr ${wanted}/>`)];
  if (!calculates) return [];
  const text = withAttribute(startTag(xml, settings), "fullCalcOnLoad", "1");
  return [{ start: settings.start, end: settings.openEnd, text }];
}

function after(parts: readonly Place[], names: readonly string[]): number {
  return Math.max(...parts.filter((part) => names.includes(part.name)).map((part) => part.end));
}
