import type { PrintedTable } from "../estimate/printedTable";

/** A part of the text: paragraphs, then tables with their titles. */
export interface Section {
  readonly heading: string;
  readonly paragraphs: readonly string[];
  readonly tables: readonly (readonly [title: string, rows: PrintedTable])[];
}

/** The text of an application, the same for every form in which it is written. */
export interface Narrative {
  readonly title: string;
  /** What must be known before anything is read; empty for nothing. */
  readonly notice: string;
  readonly sections: readonly Section[];
}
