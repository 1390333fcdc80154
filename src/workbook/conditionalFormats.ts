import { parseArea, type Area } from "./cellRef";
import { ruleLooksOf, type RuleLook } from "./cellLooks";
import { colourReader } from "./colourReader";
import { isTrue, type Workbook } from "./openWorkbook";
import { neededPart } from "./parts";
import { attribute, readXml, textOf, type XmlTag } from "./readXml";
import { sheetNamed } from "./sheetNamed";

/** One rule of a conditional format, in the words of the file format (ECMA-376 part 1, 18.3.1.10). */
export interface ConditionalRule {
  readonly areas: readonly Area[];
  /** `cellIs`, `expression`, `colorScale`, ... */
  readonly type: string;
  readonly priority: number;
  readonly stops: boolean;
  readonly look: RuleLook | undefined;
  readonly formulas: readonly string[];
  /** The attributes that tell the rest: `operator`, `text`, `rank`, `percent`, `bottom`, `aboveAverage`, `timePeriod`. */
  readonly says: Readonly<Record<string, string>>;
  /** Points of a scale of colours, with their colours. */
  readonly points: readonly { readonly type: string; readonly value: string | undefined }[];
  readonly colours: readonly (string | undefined)[];
}

/** The rules of a sheet, the first to apply first; those of extensions are left out. */
export function conditionalFormatsOf(workbook: Workbook, sheet: string): readonly ConditionalRule[] {
  const entry = neededPart(workbook.zip, sheetNamed(workbook, sheet).part);
  // Most sheets have none, and to find a word takes a quarter of reading every cell.
  if (!textOf(entry).includes("conditionalFormatting")) return [];
  const [looks, colourOf] = [ruleLooksOf(workbook), colourReader(workbook)];
  const found: ConditionalRule[] = [];
  let areas: readonly Area[] = [];
  let rule: ConditionalRule | undefined;
  let formula: string | undefined;
  readXml(entry, {
    open: (tag) => {
      if (tag.uri !== workbook.namespace) return;
      if (tag.local === "conditionalFormatting")
        areas = (attribute(tag, "sqref") ?? "")
          .trim()
          .split(/\s+/)
          .flatMap((each) => parseArea(each) ?? []);
      else if (tag.local === "cfRule") rule = ruleOf(tag, areas, looks);
      else if (rule === undefined) return;
      else if (tag.local === "formula") formula = "";
      else if (tag.local === "cfvo")
        rule = {
          ...rule,
          points: [...rule.points, { type: attribute(tag, "type") ?? "num", value: attribute(tag, "val") }],
        };
      else if (tag.local === "color") rule = { ...rule, colours: [...rule.colours, colourOf(tag)] };
    },
    text: (piece) => {
      if (formula !== undefined) formula += piece;
    },
    close: (tag) => {
      if (tag.uri !== workbook.namespace || rule === undefined) return;
      if (tag.local === "formula" && formula !== undefined) {
        rule = { ...rule, formulas: [...rule.formulas, formula] };
        formula = undefined;
      }
      if (tag.local !== "cfRule") return;
      if (rule.areas.length > 0 && found.length < MOST_RULES) found.push(rule);
      rule = undefined;
    },
  });
  return found.sort((a, b) => a.priority - b.priority);
}

/** More than these in one sheet are not shown; a save keeps them. */
const MOST_RULES = 2_000;

const SAYS = ["operator", "text", "rank", "percent", "bottom", "aboveAverage", "equalAverage", "stdDev", "timePeriod"];

function ruleOf(tag: XmlTag, areas: readonly Area[], looks: readonly RuleLook[]): ConditionalRule {
  const look = attribute(tag, "dxfId");
  return {
    areas,
    type: attribute(tag, "type") ?? "",
    priority: Number(attribute(tag, "priority") ?? 0),
    stops: isTrue(attribute(tag, "stopIfTrue")),
    look: look === undefined ? undefined : looks[Number(look)],
    formulas: [],
    says: Object.fromEntries(
      SAYS.flatMap((name) => {
        const value = attribute(tag, name);
        return value === undefined ? [] : [[name, value]];
      }),
    ),
    points: [],
    colours: [],
  };
}
