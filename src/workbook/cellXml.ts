import { InputError } from "../measure/errors";
import { areaName } from "./cellRef";
import { escapeText } from "./escape";
import { isFormula, type CellContent, type FormulaContent, type PlainContent } from "./edits";

/**
 * A `<c>` element. Texts are written inline, so that the part of shared texts stays untouched; Excel moves them there
 * when it saves.
 *
 * @param prefix of the sheet's namespace, `x:` or nothing
 * @throws InputError when a text or formula is longer than a cell may hold
 */
export function cellXml(name: string, style: number | undefined, content: CellContent, prefix: string): string {
  const p = prefix;
  const head = `<${p}c r="${name}"${style === undefined ? "" : ` s="${style}"`}`;
  const result = isFormula(content) ? content.result : content;
  refuseTooLong(name, content, result);
  if (!isFormula(content)) {
    if (result === null) return style === undefined ? "" : `${head}/>`;
    if (typeof result === "string") {
      return `${head} t="inlineStr"><${p}is><${p}t xml:space="preserve">${escapeText(result)}</${p}t></${p}is></${p}c>`;
    }
  }
  const formula = isFormula(content) ? formulaXml(content, p) : "";
  const { type, text } = typed(result);
  return `${head}${type}>${formula}<${p}v>${text}</${p}v></${p}c>`;
}

/** A `<c>` element with a text of the part of shared texts, given by its number there. */
export function sharedTextXml(name: string, style: number | undefined, shared: number, prefix: string): string {
  const p = prefix;
  return `<${p}c r="${name}"${style === undefined ? "" : ` s="${style}"`} t="s"><${p}v>${shared}</${p}v></${p}c>`;
}

function formulaXml({ formula, fills }: FormulaContent, p: string): string {
  const several = fills === undefined ? "" : ` t="array" ref="${areaName(fills)}"`;
  return `<${p}f${several}>${escapeText(formula)}</${p}f>`;
}

function typed(result: PlainContent): { type: string; text: string } {
  if (typeof result === "number") {
    if (!Number.isFinite(result)) throw new RangeError(`a cell cannot hold ${result}`);
    return { type: "", text: String(result) };
  }
  if (typeof result === "boolean") return { type: ' t="b"', text: result ? "1" : "0" };
  if (result !== null && typeof result === "object") return { type: ' t="e"', text: escapeText(result.error) };
  return { type: ' t="str"', text: escapeText(result ?? "") };
}

function refuseTooLong(name: string, content: CellContent, result: PlainContent): void {
  if (typeof result === "string" && result.length > LONGEST_TEXT) {
    throw new InputError(
      `cell ${name}`,
      `a text of ${result.length} letters`,
      `a cell holds ${LONGEST_TEXT}`,
      "shorten it",
    );
  }
  if (isFormula(content) && content.formula.length > LONGEST_FORMULA) {
    throw new InputError(
      `cell ${name}`,
      `a formula of ${content.formula.length} letters`,
      `a cell holds ${LONGEST_FORMULA}`,
      "put the settings into a range",
    );
  }
}

/** Limits of Excel. */
const LONGEST_TEXT = 32_767;
const LONGEST_FORMULA = 8_192;
