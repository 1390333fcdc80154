import type { DimensionTerm } from "./dimensionWords";
import { dimensionLines } from "./dimensionLines";
import { InputError, shown } from "./errors";
import { asReading, figureLengths, requireAgreement, type FigureLength } from "./figureLengths";
import {
  DEFAULT_ORDER,
  placeByOrder,
  placeByTerm,
  readOrder,
  type PlacedDimensions,
  type Refuse,
} from "./placeDimensions";
import { scanDimensionLine, weightOfLine, type DimensionLine } from "./scanDimensionLine";
import type { Figure } from "./scanMeasure";
import { AMBIGUOUS_COMMA } from "./scanNumber";
import type { LengthUnit } from "./units";

export interface DimensionOptions {
  /** The argument, in the user's words, for messages. */
  readonly argument: string;
  /** H (or L), W and D in the order in which numbers without a term stand: HWD unless said. */
  readonly order?: string;
  /** What numbers are in where the text gives no unit; without it such a text is refused. */
  readonly unit?: LengthUnit;
}

/** What a dimension text says of an item: lengths in mm, weight in kg. */
export interface ReadDimensions extends PlacedDimensions {
  readonly weightKg?: number;
  /** What was measured, when the text says: `support (left)`, `frame`. */
  readonly label?: string;
  /** Further lines, which were not read. */
  readonly unread?: readonly string[];
}

/** Ten times the longest that a public catalogue of 2,700 texts holds. */
const LONGEST_TEXT = 2_000;
const CURE = "give height x width x depth, such as 31.5 x 24 x 4.2 cm";

/**
 * A catalogue's dimension text, read into height, width, depth and weight.
 *
 *     readDimensions("31.5 x 24 x 4.2 cm, 1 kg", { argument: "text" }) // { height: 315, width: 240, depth: 42, weightKg: 1 }
 *
 * The first line that holds a figure is read, and all of it must be understood; a second reading in brackets is checked
 * against the first. Of a range the larger figure counts. Two measures are height and width, without a depth.
 *
 * @throws InputError naming the part that is not understood, or saying what is missing
 * Source: Cataloging Cultural Objects (height x width x depth; the second reading); terms as in Spectrum.
 */
export function readDimensions(text: string, options: DimensionOptions): ReadDimensions {
  const refuse: Refuse = (expected, cure = CURE) => {
    throw new InputError(options.argument, shown(text.trim() === "" ? "" : text), expected, cure);
  };
  if (text.length > LONGEST_TEXT) return refuse(`a dimension text has up to ${LONGEST_TEXT} letters`);
  const order = readOrder(options.order ?? DEFAULT_ORDER);
  const lines = dimensionLines(text);
  const first = lines.findIndex((line) => /\d/.test(line) && weightOfLine(line) === undefined);
  const line = scanDimensionLine(lines[first] ?? refuse("there is no measure in it"));
  if (line.rest !== "") return refuse(...notUnderstood(line.rest));
  const placed = placeLine(line, order, options.unit, refuse);
  const unread = lines.slice(first + 1).filter((other) => weightOfLine(other) === undefined);
  const weightKg = line.weightKg ?? lines.map(weightOfLine).find((kg) => kg !== undefined);
  return {
    ...placed,
    ...(weightKg === undefined ? {} : { weightKg }),
    ...(line.label === undefined ? {} : { label: line.label }),
    ...(unread.length === 0 ? {} : { unread }),
  };
}

function placeLine(
  line: DimensionLine,
  order: readonly DimensionTerm[],
  unit: LengthUnit | undefined,
  refuse: Refuse,
): PlacedDimensions {
  const { figures, second } = line;
  const lengths = figureLengths(figures, line.unit, unit, refuse);
  const placed = placeFigures(figures, lengths, line.order, order, refuse);
  const repeatedFigures = figures.flatMap((figure) => figure.again ?? []);
  if (repeatedFigures.length > 0) {
    const repeated = figureLengths(repeatedFigures, undefined, undefined, refuse);
    const once = lengths.filter((_, index) => figures[index]?.again !== undefined);
    requireAgreement(asReading(once), asReading(repeated), refuse);
  }
  if (second !== undefined) {
    const terms = line.order ?? figures.flatMap((figure) => figure.term ?? []);
    const repeated = figureLengths(second, undefined, undefined, refuse);
    const inOrder = terms.length === second.length && second.every((figure) => figure.term === undefined);
    const replaced = placeFigures(second, repeated, inOrder ? terms : undefined, order, refuse);
    requireAgreement(asReading(lengths, placed), asReading(repeated, replaced), refuse);
  }
  return placed;
}

function placeFigures(
  figures: readonly Figure[],
  lengths: readonly FigureLength[],
  said: readonly DimensionTerm[] | undefined,
  order: readonly DimensionTerm[],
  refuse: Refuse,
): PlacedDimensions {
  const mm = lengths.map((length) => length.mm);
  const terms = figures.flatMap((figure) => figure.term ?? []);
  if (terms.length === 0 && said === undefined) return placeByOrder(mm, order, refuse);
  const names = said ?? terms;
  if (names.length !== mm.length || (said !== undefined && terms.length > 0)) {
    return refuse("height, width and depth are named for some of the numbers only");
  }
  return placeByTerm(mm, names, refuse);
}

function notUnderstood(rest: string): [expected: string, cure: string] {
  return AMBIGUOUS_COMMA.test(rest)
    ? ["a comma before three figures may mean thousands or decimals", "write 1234 or 1.234"]
    : [`${shown(rest)} is not understood`, CURE];
}
