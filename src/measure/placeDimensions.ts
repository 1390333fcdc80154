import { shown, InputError } from "./errors";
import { termAt } from "./dimensionTerm";
import type { DimensionTerm } from "./dimensionWords";
import type { Mm } from "./units";

/** Lengths put where the item has them: height head to tail, width spine to fore-edge, depth its thickness; mm. */
export interface PlacedDimensions {
  readonly height: Mm;
  readonly width: Mm;
  readonly depth?: Mm;
}

/** The order museums write in; any other must be said. Source: Cataloging Cultural Objects. */
export const DEFAULT_ORDER = "HWD";

/** Throws the error of the text that is being read. */
export type Refuse = (expected: string, cure?: string) => never;

const LONE = "a single measure lacks the width and the thickness, and a catalogue height is rounded up to whole cm";
const MOST = 3;

/**
 * An order written as letters, such as HWD or L x W x D, as terms.
 *
 * @throws InputError (`order`) unless H (or L), W and D occur once each
 */
export function readOrder(order: string): readonly DimensionTerm[] {
  const letters = [...order.replace(/[\sx×*,/]/gi, "")];
  const terms = letters.flatMap((letter) => termAt(letter, 0)?.term ?? []);
  const sorted = terms.map((term) => (term === "length" ? "height" : term)).sort();
  if (letters.length === MOST && sorted.join() === "depth,height,width") return terms;
  throw new InputError("order", shown(order), "give the letters H (or L), W and D once each, such as HWD or LWD");
}

/** Puts lengths without terms in their places; of two, the depth is left out of the order. */
export function placeByOrder(
  lengths: readonly Mm[],
  order: readonly DimensionTerm[],
  refuse: Refuse,
): PlacedDimensions {
  if (lengths.length === 1) return refuse(LONE);
  if (lengths.length > MOST) return refuse(`${lengths.length} measures in a row are not height, width and depth`);
  const terms = lengths.length === MOST ? order : order.filter((term) => term !== "depth");
  return placeByTerm(lengths, terms, refuse);
}

/**
 * Puts lengths in the places that their terms name.
 *
 * A length stands for the height. A diameter is two directions at once: with a height (a cylinder, upright or lying) it is
 * width and depth, with a depth (a disc) it is height and width; alone it is refused, because it says neither.
 */
export function placeByTerm(lengths: readonly Mm[], terms: readonly DimensionTerm[], refuse: Refuse): PlacedDimensions {
  const twice = terms.find((term, index) => terms.indexOf(term) !== index);
  if (twice !== undefined) return refuse(`the ${twice} is given twice`);
  const of = (term: DimensionTerm) => lengths[terms.indexOf(term)];
  const isBoth = of("height") !== undefined && of("length") !== undefined;
  // `H 30 x L 20 x P 4`: where height and depth are taken, a length can only be the width.
  const isWidth = isBoth && of("depth") !== undefined && of("width") === undefined;
  if (isBoth && !isWidth) return refuse("a length beside a height may be the width or the depth");
  const given = {
    height: of("height") ?? of("length"),
    width: isWidth ? of("length") : of("width"),
    depth: of("depth"),
  };
  const diameter = of("diameter");
  if (diameter !== undefined) return placeRound(diameter, given, refuse);
  if (terms.length === 1) return refuse(LONE);
  const { height, width, depth } = given;
  if (height === undefined) return refuse("the height is missing");
  if (width === undefined) return refuse("the width is missing");
  return depth === undefined ? { height, width } : { height, width, depth };
}

type Given = Readonly<Record<"height" | "width" | "depth", Mm | undefined>>;

function placeRound(diameter: Mm, { height, width, depth }: Given, refuse: Refuse): PlacedDimensions {
  if (width !== undefined || (height !== undefined && depth !== undefined)) {
    return refuse("a diameter stands for two directions, so only a height or a depth may stand beside it");
  }
  if (height !== undefined) return { height, width: diameter, depth: diameter };
  if (depth !== undefined) return { height: diameter, width: diameter, depth };
  return refuse("a diameter alone lacks the height (of a cylinder) or the depth (of a disc)");
}
