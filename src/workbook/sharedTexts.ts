import { unescapeText } from "./escape";
import type { Workbook } from "./openWorkbook";
import { neededPart } from "./parts";
import { readXml } from "./readXml";

/** The texts that cells share, runs of one text joined, phonetic guides left out. */
export function sharedTextsOf(workbook: Workbook): readonly string[] {
  return sharedOf(workbook).texts;
}

/** Numbers of the shared texts that are more than their letters: parts with a look of their own, or phonetic guides. */
export function richTextsOf(workbook: Workbook): ReadonlySet<number> {
  return sharedOf(workbook).rich;
}

interface SharedTexts {
  readonly texts: readonly string[];
  readonly rich: ReadonlySet<number>;
}

function sharedOf(workbook: Workbook): SharedTexts {
  const known = cache.get(workbook);
  if (known) return known;
  const texts: string[] = [];
  const rich = new Set<number>();
  const part = workbook.relations.find((relation) => relation.kind === "sharedStrings")?.target;
  if (part !== undefined) {
    let text = "";
    let reading = false;
    let phonetic = false;
    readXml(neededPart(workbook.zip, part), {
      open: (tag) => {
        if (tag.uri !== workbook.namespace) return;
        if (RICH.has(tag.local)) rich.add(texts.length);
        if (tag.local === "si") text = "";
        else if (tag.local === "rPh") phonetic = true;
        else if (tag.local === "t") reading = !phonetic;
      },
      text: (piece) => {
        if (reading) text += piece;
      },
      close: (tag) => {
        if (tag.local === "t") reading = false;
        else if (tag.local === "rPh") phonetic = false;
        else if (tag.local === "si") texts.push(unescapeText(text));
      },
    });
  }
  const read = { texts, rich };
  cache.set(workbook, read);
  return read;
}

/** What makes a text more than its letters: the look of a part of it, or a phonetic guide. */
export const RICH: ReadonlySet<string> = new Set(["rPr", "rPh"]);

const cache = new WeakMap<Workbook, SharedTexts>();
