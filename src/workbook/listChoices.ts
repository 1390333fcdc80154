import { areaName, type Area } from "./cellRef";
import { escapeXml } from "./escape";
import { attributeIn, opened, startTag, withAttribute, type Place } from "./scan";

/** Cells that offer a list of values; any other value may be typed too. */
export interface ListChoices {
  readonly area: Area;
  /** A formula that answers the values. */
  readonly formula: string;
}

/** Elements of a sheet that come before its validations, in the order of the file format. */
const BEFORE: ReadonlySet<string> = new Set(
  [
    "sheetPr dimension sheetViews sheetFormatPr cols sheetData sheetCalcPr sheetProtection protectedRanges scenarios",
    "autoFilter sortState dataConsolidate customSheetViews mergeCells phoneticPr conditionalFormatting",
  ].flatMap((names) => names.split(" ")),
);

/** Where validations go into a sheet, and the text that goes there. */
export function choicesChange(
  xml: string,
  parts: readonly Place[],
  prefix: string,
  choices: readonly ListChoices[],
): { readonly from: number; readonly to: number; readonly text: string } | undefined {
  if (choices.length === 0) return undefined;
  const added = choices.map((each) => validation(each, prefix)).join("");
  const known = parts.find(({ name }) => name === "dataValidations");
  if (known === undefined) {
    const last = parts.findLast(({ name }) => BEFORE.has(name))!;
    const text = `<${prefix}dataValidations count="${choices.length}">${added}</${prefix}dataValidations>`;
    return { from: last.end, to: last.end, text };
  }
  const tag = startTag(xml, known);
  const count = Number(attributeIn(tag, "count") ?? 0) + choices.length;
  const inside = xml.slice(known.openEnd, known.closeStart);
  const open = opened(withAttribute(tag, "count", String(count)));
  return { from: known.start, to: known.end, text: `${open}${inside}${added}</${prefix}dataValidations>` };
}

function validation({ area, formula }: ListChoices, prefix: string): string {
  const list = `<${prefix}formula1>${escapeXml(formula)}</${prefix}formula1>`;
  const name = `${prefix}dataValidation`;
  return `<${name} type="list" allowBlank="1" showErrorMessage="0" sqref="${areaName(area)}">${list}</${name}>`;
}
