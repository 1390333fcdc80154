import type { Workbook } from "./openWorkbook";
import { parseCell, type Cell } from "./cellRef";
import { partOf, relationsOf } from "./parts";
import { attribute, readXml } from "./readXml";
import { sheetNamed } from "./sheetNamed";

/** A comment on a cell; rows and columns count from 1. */
export interface CellNote extends Cell {
  readonly text: string;
}

/** The comments of a sheet. What newer programs keep as a thread is read from the plain copy that they write beside it. */
export function notesOf(workbook: Workbook, sheet: string): readonly CellNote[] {
  const { part } = sheetNamed(workbook, sheet);
  const comments = relationsOf(workbook.zip, part).find(({ kind, outside }) => kind === "comments" && !outside);
  const entry = comments && partOf(workbook.zip, comments.target);
  if (entry === undefined) return [];
  const found: CellNote[] = [];
  let cell: Cell | undefined;
  let text = "";
  let isText = false;
  let isPhonetic = false;
  readXml(entry, {
    open: (tag) => {
      if (tag.local === "comment") {
        cell = parseCell(attribute(tag, "ref") ?? "");
        text = "";
      } else if (tag.local === "rPh") isPhonetic = true;
      else if (tag.local === "t") isText = !isPhonetic;
    },
    text: (piece) => {
      if (isText) text += piece;
    },
    close: ({ local }) => {
      if (local === "t") isText = false;
      if (local === "rPh") isPhonetic = false;
      if (local === "comment" && cell !== undefined && found.length < MOST_NOTES)
        found.push({ ...cell, text: plain(text) });
    },
  });
  return found;
}

/** More than these in one sheet are not shown; a save keeps them. */
const MOST_NOTES = 10_000;

/** The copy of a thread begins with a notice for older programs; what was said comes after its last line of notice. */
function plain(text: string): string {
  if (!text.startsWith("[Threaded comment]")) return text.trim();
  const said = text.indexOf("Comment:");
  return said < 0 ? text.trim() : text.slice(said + "Comment:".length).trim();
}
