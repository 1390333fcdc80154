/** What a column of a survey can be. `length` is settled into one of the three directions, or asked about. */
export type Field =
  | "identifier"
  | "title"
  | "height"
  | "width"
  | "depth"
  | "length"
  | "dimensions"
  | "weight"
  | "unit"
  | "enclosure"
  | "quantity"
  | "box"
  | "priority"
  | "batch"
  | "hazard";

/**
 * The words of one language, in lower case. Words of one line are separated by commas. Accents, points and hyphens do
 * not count when a heading is compared. Common practice, no source.
 */
export interface Vocabulary {
  readonly language: string;
  /** Headings. Of several lines the first wins: an accession number over a bare number. */
  readonly headings: Readonly<Partial<Record<Field, readonly string[]>>>;
  /** Single letters for a measure: they need company, as H beside W. */
  readonly letters: Readonly<Partial<Record<Field, string>>>;
  /** Headings that often mean another thing, so that they are asked about. */
  readonly maybe: Readonly<Partial<Record<Field, string>>>;
  /** Words around a measure that change nothing, such as `max` in `max height`. */
  readonly harmless: string;
  /** Headings of settings, by the name of the setting. */
  readonly settings: Readonly<Record<string, string>>;
  readonly yes: string;
  readonly no: string;
  /** Values that ask for no enclosure. */
  readonly none: string;
  /** What the first cell of a row of sums says. */
  readonly totals: string;
  /** Everyday words for a kind of enclosure, where only one kind is meant. */
  readonly kinds: Readonly<Record<string, string>>;
  /** Words that two or more kinds answer to: asked about once. */
  readonly unsure: Readonly<Record<string, readonly string[]>>;
  /** Structures that are not made here. */
  readonly notMade: string;
}
