import type { Question, Word } from "./questions";
import type { Field } from "./vocabulary/vocabulary";

/** A column that was recognised. Columns count from 1. */
export interface RecognisedColumn {
  readonly column: number;
  readonly heading: string;
  /** From the user, the heading, the heading above it, the row of units below, a number format, or a title above. */
  readonly unit?: string;
  /** Of a column of dimension texts, when the heading says it: `HWD`. */
  readonly order?: string;
}

/** A column that carries a setting for each row. */
export interface RecognisedSetting extends RecognisedColumn {
  readonly setting: string;
}

/** Something that more than one column may be, or that one column only may be: the user is asked, never guessed for. */
export interface Ask {
  readonly field: string;
  readonly candidates: readonly { readonly column: number; readonly heading: string }[];
  readonly reason: string;
  /** Sizes depend on it. A label may be left unrecognised after saying so. */
  readonly needed: boolean;
}

/** A column headed with a kind of enclosure, ticked in the rows that get it. */
export interface TickColumn {
  readonly column: number;
  readonly heading: string;
  readonly kind: string;
}

/** Where the survey lies and what its columns are. Rows and columns count from 1. */
export interface Recognition {
  /** 0 when the survey begins in the first row without headings. */
  readonly headingRow: number;
  readonly firstRow: number;
  /** One less than `firstRow` when there are no rows. */
  readonly lastRow: number;
  readonly firstColumn: number;
  readonly lastColumn: number;
  readonly columns: Readonly<Partial<Record<Field, RecognisedColumn>>>;
  readonly settings: readonly RecognisedSetting[];
  /** Columns headed with kinds of enclosure. */
  readonly ticks: readonly TickColumn[];
  readonly ask: readonly Ask[];
  /** The same for the user, with what to choose from. */
  readonly questions: readonly Question[];
  /** Columns that the user does not use: nothing is asked about them. */
  readonly declined: readonly number[];
  /** Columns with a heading that are left alone, declined ones among them. */
  readonly others: readonly { readonly column: number; readonly heading: string }[];
  /** What was recognised, a line each, in plain words. */
  readonly said: readonly string[];
}

export interface RecogniseOptions {
  /** Names of settings that a column may be headed with. */
  readonly settings?: readonly string[];
  /** Whether a cell can be the value of a setting: single words are settings only where their cells are. */
  readonly settingFits?: (setting: string, cell: unknown) => boolean;
  /** A field's or setting's heading or column letter, as the user gave it: `{ height: "Ht" }`; null when it has none. */
  readonly columns?: Readonly<Record<string, string | null>>;
  /** What headings and values mean: answers of the user, and what the workbook remembers. */
  readonly words?: readonly Word[];
  readonly headingRow?: number;
  /** The survey has no row of headings: columns are named by their letters. */
  readonly noHeadings?: boolean;
  /** The table that holds the survey: nothing outside it is looked at. */
  readonly region?: {
    readonly headingRow: number;
    readonly firstColumn: number;
    readonly lastColumn: number;
    readonly lastRow: number;
  };
  /** Columns to pass over: those of an earlier run. */
  readonly ignore?: readonly number[];
  /** Units that the number formats of columns show, as `0.0 "cm"`. */
  readonly formatUnits?: ReadonlyMap<number, string>;
}
