import { unescapeText } from "./escape";
import type { Workbook } from "./openWorkbook";
import { neededPart } from "./parts";
import { readXml } from "./readXml";

/** The texts that cells share, runs of one text joined, phonetic guides left out. */
export function sharedTextsOf(workbook: Workbook): readonly string[] {
  const known = cache.get(workbook);
  if (known) return known;
  const texts: string[] = [];
  const part = workbook.relations.find((relation) => relation.kind === "sharedStrings")?.target;
  if (part !== undefined) {
    let text = "";
    let reading = false;
    let phonetic = false;
    readXml(neededPart(workbook.zip, part), {
      open: (tag) => {
        if (tag.uri !== workbook.namespace) return;
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
  cache.set(workbook, texts);
  return texts;
}

const cache = new WeakMap<Workbook, readonly string[]>();
