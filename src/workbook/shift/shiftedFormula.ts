import { columnLetters, columnNumber } from "../cellRef";
import { spanAfter, type Shift, type Span } from "./shift";

/**
 * A formula after rows or columns have come or gone: its references go with their cells, and one whose cells are all gone
 * is `#REF!`. Texts, names, columns of tables and references to other workbooks stay as they are.
 *
 * @param formula as stored, without `=`
 * @param sheet that the formula is on; undefined where it belongs to none, such as in a chart
 */
export function shiftedFormula(formula: string, sheet: string | undefined, shift: Shift): string {
  const wanted = shift.sheet.toLowerCase();
  const isHome = sheet?.toLowerCase() === wanted;
  return formula.replace(PIECES, (piece: string, ...groups: unknown[]) => {
    const { book, quoted, plain, reference } = groups.at(-1) as Readonly<Record<string, string | undefined>>;
    if (reference === undefined || book !== undefined) return piece;
    const named = quoted?.replaceAll("''", "'") ?? plain;
    if (named === undefined ? !isHome : named.toLowerCase() !== wanted) return piece;
    return piece.slice(0, piece.length - reference.length) + shiftedReference(reference, shift);
  });
}

/** `$B$2`, `B2:C9`, `B:C` or `2:9` afterwards. */
function shiftedReference(reference: string, shift: Shift): string {
  const [first = "", last] = reference.split(":");
  const [a, b] = [cornerOf(first), cornerOf(last ?? first)];
  const key = shift.axis;
  const [from, to] = [a[key], b[key]];
  // A whole column has no rows, and a whole row no columns.
  if (from === undefined || to === undefined) return reference;
  const turned = from.place > to.place;
  const span: Span = { first: Math.min(from.place, to.place), last: Math.max(from.place, to.place) };
  const after = spanAfter(span, shift);
  if (after === undefined) return "#REF!";
  const start = written({ ...a, [key]: { ...from, place: turned ? after.last : after.first } });
  const end = written({ ...b, [key]: { ...to, place: turned ? after.first : after.last } });
  return last === undefined ? start : `${start}:${end}`;
}

interface Corner {
  readonly row: Coordinate | undefined;
  readonly column: Coordinate | undefined;
}

interface Coordinate {
  readonly place: number;
  /** `$` or nothing. */
  readonly fixed: string;
}

function cornerOf(text: string): Corner {
  const [, columnFixed = "", letters = "", rowFixed = "", digits = ""] =
    /^(\$?)([A-Z]{1,3})?(\$?)(\d{1,7})?$/i.exec(text) ?? [];
  const column = letters === "" ? undefined : columnNumber(letters);
  // In a whole row the one sign of a fixed place stands before the number.
  const fixedRow = letters === "" ? columnFixed + rowFixed : rowFixed;
  return {
    column: column === undefined ? undefined : { place: column, fixed: columnFixed },
    row: digits === "" ? undefined : { place: Number(digits), fixed: fixedRow },
  };
}

function written({ row, column }: Corner): string {
  const letters = column === undefined ? "" : `${column.fixed}${columnLetters(column.place)}`;
  return letters + (row === undefined ? "" : `${row.fixed}${row.place}`);
}

const CELL = String.raw`\$?[A-Za-z]{1,3}\$?\d{1,7}`;
const REFERENCE = String.raw`(?:${CELL}:${CELL}|${CELL}|\$?[A-Za-z]{1,3}:\$?[A-Za-z]{1,3}|\$?\d{1,7}:\$?\d{1,7})(?![\p{L}\p{N}_.(!]|\[)`;
const NAME = String.raw`[\p{L}_\\][\p{L}\p{N}_.\\]{0,254}`;

/** Texts; references, with the sheet they are on; parts of tables; names, functions and numbers. */
const PIECES = new RegExp(
  [
    String.raw`"(?:[^"]|"")*"`,
    // Through several sheets: stays.
    String.raw`${NAME}:${NAME}!${REFERENCE}`,
    String.raw`(?:(?<book>\[\d+\])?(?:'(?<quoted>(?:[^']|''){1,600})'|(?<plain>${NAME}))!)?(?<reference>(?<![\p{L}\p{N}_.$])${REFERENCE})`,
    String.raw`'(?:[^']|''){0,600}'!?`,
    String.raw`\[(?:[^\[\]']|'.|\[(?:[^\[\]']|'.){0,600}\]){0,600}\]`,
    String.raw`[\p{L}_\\][\p{L}\p{N}_.\\?]{0,254}!?`,
    String.raw`\d+(?:\.\d+)?(?:[eE][+-]?\d+)?`,
  ].join("|"),
  "gu",
);
