/** A call of one of our functions under the name by which a workbook stores it. */
export function stored(fn: string, args: readonly string[]): string {
  return `${storedName(fn)}(${args.join(",")})`;
}

const storedNames = new Map<string, string>();

/** Kept, for a survey asks for the same few some ten times a row. */
function storedName(fn: string): string {
  let name = storedNames.get(fn);
  if (name === undefined) storedNames.set(fn, (name = `_xldudf_ENC_${fn.replaceAll(".", "_")}`));
  return name;
}

/** A text in a formula. */
export function quoted(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}

/**
 * A stored formula as a person types it, without `=`: `_xldudf_ENC_WALL_LENGTH(B5)` -> `ENC.WALL.LENGTH(B5)`. Programs
 * change the case of the stored name; texts inside the formula are left alone.
 */
export function typedFormula(formula: string): string {
  return outsideTexts(formula, (piece) =>
    piece.replace(STORED_NAME, (_, name: string) => `${name.toUpperCase().replaceAll("_", ".")}(`),
  );
}

/** The reverse of `typedFormula`. */
export function storedFormula(formula: string): string {
  return outsideTexts(formula, (piece) =>
    piece.replace(TYPED_NAME, (_, name: string) => `_xldudf_${name.toUpperCase().replaceAll(".", "_")}(`),
  );
}

const STORED_NAME = /(?<![\w.])(?:\[\d+\]!)?_xldudf_(ENC(?:_[A-Z]+)+)\(/gi;
const TYPED_NAME = /(?<![\w.])(ENC(?:\.[A-Z]+)+)\(/gi;

/** Changes what is outside the texts and quoted sheet names of a formula. */
export function outsideTexts(formula: string, change: (piece: string) => string): string {
  return formula.replace(/"(?:[^"]|"")*"|'(?:[^']|'')*'|[^"']+/g, (piece) =>
    /^["']/.test(piece) ? piece : change(piece),
  );
}

/**
 * What a text may begin with that a spreadsheet runs as a formula: the four signs, also as wide as an East Asian letter, and
 * the white space that some programs skip before them.
 */
export const FORMULA_SIGN = /^[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/;
