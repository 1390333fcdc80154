import { outsideTexts, typedFormula } from "../workbook/formulaText";
import type { Area } from "../workbook/cellRef";
import { isFormula, type CellContent } from "../workbook/edits";
import { isErrorText, rangeAt, type Matrix } from "./excelRead";

/** Work for Excel, sent in pieces that Excel on the web takes, with no calculation between the steps of a piece. */
export interface Sender {
  readonly context: Excel.RequestContext;
  /** Puts down work of so many bytes; sends what waits when both would be too much. */
  readonly put: (bytes: number, work: () => void) => Promise<void>;
  readonly send: () => Promise<void>;
}

export function senderOf(context: Excel.RequestContext): Sender {
  let waiting = 0;
  let begun = false;
  const send = async (): Promise<void> => {
    if (!begun) return;
    await context.sync();
    begun = false;
    waiting = 0;
  };
  return {
    context,
    put: async (bytes, work) => {
      if (begun && waiting + bytes > MOST_BYTES) await send();
      if (!begun) context.application.suspendApiCalculationUntilNextSync();
      begun = true;
      waiting += bytes;
      work();
    },
    send,
  };
}

/** What is entered in a cell: a formula as it is typed, a text that stays one whatever it looks like. */
export function entered(content: CellContent): string | number | boolean {
  if (content === null) return "";
  if (isFormula(content)) return `=${named(withoutPrefixes(typedFormula(content.formula)))}`;
  if (typeof content === "object") return content.error;
  return typeof content === "string" ? sureText(content) : content;
}

/** What Excel gives for a cell, to be entered again. A text that begins with `=` is its own value, a formula is not. */
export function enteredAgain(formula: unknown, value: unknown): unknown {
  return typeof formula === "string" && formula === value && !isErrorText(formula) ? sureText(formula) : formula;
}

/** Writes a rectangle of formulas and values, or of number formats. */
export async function writeCells(
  { context, put }: Sender,
  sheet: string,
  area: Area,
  what: "formulas" | "numberFormat",
  cells: Matrix,
): Promise<void> {
  let top = area.top;
  while (top <= area.bottom) {
    const rows: (readonly unknown[])[] = [];
    let bytes = 0;
    while (top + rows.length <= area.bottom && (rows.length === 0 || bytes < BYTES_A_PIECE)) {
      const row = cells[top - area.top + rows.length]!;
      bytes += row.reduce<number>((sum, cell) => sum + bytesOf(String(cell)) + AROUND_A_CELL, 0);
      rows.push(row);
    }
    const place = { ...area, top, bottom: top + rows.length - 1 };
    await put(bytes, () => {
      rangeAt(context, sheet, place)[what] = rows as unknown[][];
    });
    top += rows.length;
  }
}

/** At most, in UTF-8. */
function bytesOf(text: string): number {
  return text.length + WIDE * (text.match(/[\u0080-\uffff]/g)?.length ?? 0);
}

/** What a letter outside ASCII takes more. */
const WIDE = 2;

/** Points of a column width given in characters: seven pixels a character and five of margin, 96 pixels to 72 points. */
export function points(characters: number): number {
  return (characters * CHARACTER + MARGIN) * POINTS_A_PIXEL;
}

/** Excel on the web takes requests up to 5 MB. */
const MOST_BYTES = 3_000_000;
const BYTES_A_PIECE = 500_000;
/** Quotes, comma and escapes. */
const AROUND_A_CELL = 5;

const CHARACTER = 7;
const MARGIN = 5;
const POINTS_A_PIXEL = 0.75;

/** Excel makes numbers, dates, truths and formulas of texts that look so; words without a digit are none of these. */
function sureText(text: string): string {
  if (text === "") return "";
  return /^\p{L}\D*$/u.test(text) && !/^(?:true|false)$/i.test(text) ? text : `'${text}`;
}

/** The add-in under development has a namespace of its own, so that it does not meet the one in use. */
declare const ENCLOSURE_NAMESPACE: string | undefined;

function named(formula: string): string {
  const namespace = typeof ENCLOSURE_NAMESPACE === "undefined" ? "ENC" : ENCLOSURE_NAMESPACE;
  if (namespace === "ENC") return formula;
  return outsideTexts(formula, (piece) => piece.replace(/(?<![\w.])ENC\./g, `${namespace}.`));
}

/** Newer functions have a prefix in a file alone. */
function withoutPrefixes(formula: string): string {
  return formula.replace(/"(?:[^"]|"")*"|(?<![\w.])_xlfn\.(?:_xlws\.)?(?=[A-Z])/gi, (piece) =>
    piece.startsWith('"') ? piece : "",
  );
}
