/**
 * What a kind is and what it is for, for a reader who does not make boxes; a kind without a line here is named alone. It is not
 * part of the kinds, so that the cell functions do not carry it. Common practice, no source.
 */
export const KIND_PURPOSES: ReadonlyMap<string, string> = new Map([
  ["tray", "an open tray that keeps an object in place in a drawer or in a larger box"],
  ["folded tray", "a tray folded from one sheet, for light and thin objects"],
  ["lidded box", "a box whose lid lifts off, for loose and bundled material"],
  ["three-tray box", "an inner tray in a bottom, with a lid over its neck, which closes tightly"],
  ["slipcase", "a case open at one side, for sound books that stand on a shelf"],
  ["clamshell box", "two trays that close into each other in one case, for books that need support on every side"],
  ["folded clamshell", "two hinged trays folded from board, a light box for volumes and bundles"],
  ["four-flap wrapper", "card folded round the object from four sides, for thin and light volumes"],
  ["flap portfolio", "boards with three flaps, for flat sheets"],
  ["drop-front box", "a deep box whose front falls open, for objects that stand and are slid out"],
]);
