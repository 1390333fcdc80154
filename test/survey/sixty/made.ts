import { OBJECTS, type Kind, type SurveyObject } from "./objects";

export type Cell = string | number | boolean | null | { readonly date: string; readonly format: string };

export interface MadeSheet {
  readonly name: string;
  readonly rows: readonly (readonly Cell[])[];
  /** Number formats by column, counted from 1. */
  readonly formats?: Readonly<Record<number, string>>;
}

export type Writer = "csv" | "exceljs" | "write-excel-file" | "xml" | "libreoffice";

/** A survey, and what must be read of it. */
export interface MadeSurvey {
  readonly name: string;
  readonly language: string;
  readonly writer: Writer;
  readonly hard: boolean;
  readonly sheets: readonly MadeSheet[];
  /** The options to choose, in the order in which they are asked for; none where nothing may be asked. */
  readonly answers: readonly string[];
  /** A line for each row below the headings. */
  readonly expected: readonly string[];
  /** What must be said besides. */
  readonly said?: string;
}

/** A sized row, as the manifest writes it. */
export function line(
  { id, size, kg, kind }: SurveyObject,
  change: Partial<{ id: string; kg: number | undefined; kind: string; size: readonly number[] }> = {},
): string {
  const { id: name = id, kind: what = kind, size: sizes = size } = change;
  const weight = "kg" in change ? change.kg : kg;
  return `${name}: ${sizes.map(Math.round).join(" x ")}, ${weight === undefined ? "no weight" : `${weight} kg`}, ${what}`;
}

export const cm = (mm: number) => mm / 10;

export const inches = (mm: number) => Math.round((mm / 25.4) * 100) / 100;

export const grams = (kg: number) => Math.round(kg * 1000);

export const text = ({ size }: SurveyObject, by = " x ") => size.map((mm) => String(cm(mm))).join(by);

export type Kinds = Readonly<Record<Kind, string>>;

export type Row = (object: SurveyObject, index: number) => readonly Cell[];

export const ALL = OBJECTS.map((each) => line(each));

export const UNWEIGHED = OBJECTS.map((each) => line(each, { kg: undefined }));

export interface Layout {
  readonly headings: readonly string[];
  readonly row: Row;
  readonly writer?: Writer;
  readonly above?: readonly (readonly Cell[])[];
  readonly below?: readonly (readonly Cell[])[];
  readonly units?: readonly Cell[];
  readonly formats?: Readonly<Record<number, string>>;
  readonly expected?: readonly string[];
  readonly answers?: readonly string[];
  readonly said?: string;
  readonly more?: readonly MadeSheet[];
  readonly sheet?: string;
}

export function survey(name: string, language: string, hard: boolean, layout: Layout): MadeSurvey {
  const {
    headings,
    row,
    writer = "exceljs",
    above = [],
    below = [],
    units,
    formats,
    expected = ALL,
    more = [],
  } = layout;
  const rows = [
    ...above,
    ...(headings.length === 0 ? [] : [headings]),
    ...(units === undefined ? [] : [units]),
    ...OBJECTS.map(row),
    ...below,
  ];
  const sheet = { name: layout.sheet ?? "Survey", rows, ...(formats === undefined ? {} : { formats }) };
  return {
    name,
    language,
    writer,
    hard,
    sheets: [sheet, ...more],
    answers: layout.answers ?? [],
    expected,
    ...(layout.said === undefined ? {} : { said: layout.said }),
  };
}
