import { InputError, shown } from "../measure/errors";
import { readCsv } from "../workbook/readCsv";
import { readRegularFile } from "../files/readRegularFile";
import type { SurveyOptions } from "./readSurvey";
import { manyOf, wordsOfOptions } from "./wordsOfOptions";

/** What was typed behind a command, by the names of its options. */
export type Given = Readonly<Record<string, unknown>>;

export const text = { type: "string" } as const;
export const flag = { type: "boolean", default: false } as const;
export const many = { type: "string", multiple: true } as const;

export const COMMON = { json: flag, debug: flag, help: { ...flag, short: "h" } } as const;
export const SIZING = {
  ...COMMON,
  set: many,
  settings: many,
  stock: many,
  guide: many,
  sizes: many,
  unit: many,
} as const;
export const FIELDS = {
  height: text,
  width: text,
  depth: text,
  weight: text,
  enclosure: text,
} as const;

/** Options of every command that reads a survey. */
export const SURVEY = {
  ...SIZING,
  ...FIELDS,
  dimensions: text,
  identifier: text,
  quantity: text,
  box: text,
  length: text,
  title: text,
  not: many,
  word: many,
  all: text,
  odd: text,
  decimals: text,
  ticks: flag,
  sheet: text,
  "heading-row": text,
  "no-headings": flag,
  out: text,
  replace: flag,
} as const;

/** Which survey, how to read it, and with which settings. */
export function surveyOptions(given: Given, survey: string | undefined): SurveyOptions {
  if (survey === undefined) throw new InputError("survey", "nothing", "give a file, .xlsx or .csv", "see --help");
  return {
    survey,
    sheet: textOf(given["sheet"]),
    recognise: {
      words: wordsOfOptions(given),
      ...(given["no-headings"] === true ? { noHeadings: true } : {}),
      ...headingRow(textOf(given["heading-row"])),
    },
    settings: settingsOfOptions(given),
  };
}

/** Settings files, then stock tables, then texts: later over earlier. */
export function settingsOfOptions(given: Given): readonly unknown[] {
  const files = (name: "settings" | "stock" | "guide" | "sizes") =>
    ((given[name] as readonly string[] | undefined) ?? []).map((path) => readCsv(readRegularFile(path, name)).rows);
  return [
    ...files("settings"),
    ...files("stock"),
    ...files("guide"),
    ...files("sizes"),
    ...manyOf(given["unit"]).flatMap((unit) => (unit.includes("=") ? [] : [`unit=${unit}`])),
    ...((given["set"] as readonly string[] | undefined) ?? []),
  ];
}

export function textOf(value: unknown): string | undefined {
  return typeof value === "string" ? value : undefined;
}

function headingRow(row: string | undefined): { readonly headingRow?: number } {
  if (row === undefined) return {};
  const number = Number(row);
  if (Number.isInteger(number) && number > 0) return { headingRow: number };
  throw new InputError("heading-row", shown(row), "give the number of a row, 1 or more");
}
