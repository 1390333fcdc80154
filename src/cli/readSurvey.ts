import { basename, extname } from "node:path";
import { InputError, shown } from "../measure/errors";
import type { RecogniseOptions } from "../headings/recognition";
import { checkedSurvey } from "../survey/checkedSurvey";
import { bookOf } from "../workbook/book";
import { openWorkbook } from "../workbook/openWorkbook";
import { readBookSurvey } from "../filling/readBookSurvey";
import { readCsv } from "../workbook/readCsv";
import { readRegularFile } from "../files/readRegularFile";
import type { ReadSurvey } from "./sheets";

export interface SurveyOptions {
  readonly survey: string;
  readonly sheet: string | undefined;
  readonly recognise: RecogniseOptions;
  readonly settings: readonly unknown[];
}

export const BOOKS = [".xlsx", ".xlsm"];
export const TEXTS = [".csv", ".tsv", ".txt"];

/** Reads and sizes a survey of either form. */
export function readSurvey({ survey: path, sheet, recognise, settings }: SurveyOptions): ReadSurvey {
  const bytes = readRegularFile(path, "survey");
  const kind = extname(path).toLowerCase();
  if (BOOKS.includes(kind)) {
    const options = { recognise, settings, ...(sheet === undefined ? {} : { sheet }) };
    const workbook = openWorkbook(bytes);
    const { sized, cells } = readBookSurvey(bookOf(workbook), options);
    return { path, bytes, workbook, sized, cells };
  }
  if (!TEXTS.includes(kind)) throw wrongKind(path);
  const { rows } = readCsv(bytes);
  return { path, bytes, workbook: undefined, sized: checkedSurvey(rows, settings, recognise), cells: rows };
}

const OTHER_BOOKS = [".xls", ".xlsb", ".ods", ".numbers", ".fods"];

/** A file that is neither a workbook nor a text table. */
export function wrongKind(path: string): InputError {
  const cure = OTHER_BOOKS.includes(extname(path).toLowerCase())
    ? "save it as .xlsx in your spreadsheet program, then give that"
    : "";
  return new InputError("survey", shown(basename(path)), "give an .xlsx, .xlsm or .csv file", cure);
}
