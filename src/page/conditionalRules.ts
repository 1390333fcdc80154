import type { IStyleBase } from "@univerjs/core";
import { areaName, type Area } from "../workbook/cellRef";
import type { RuleLook } from "../workbook/cellLooks";
import type { ConditionalRule } from "../workbook/conditionalFormats";
import { rangeOf } from "./gridTerms";
import { borderData, fontData } from "./styleData";
import { typedFromStored } from "./storedFormulas";

/** The rules of one sheet as the grid's plugin reads them; a rule that it does not know is left out. */
export function conditionalRules(sheetId: string, rules: readonly ConditionalRule[]): readonly object[] {
  return rules.flatMap((each, place) => {
    const rule = ruleOf(each);
    if (rule === undefined) return [];
    return [{ cfId: `${sheetId}-rule-${place + 1}`, ranges: each.areas.map(rangeOf), stopIfTrue: each.stops, rule }];
  });
}

/** Comparisons of the file, in the words of the grid: both have the same but for two. */
const COMPARED: Readonly<Record<string, string>> = {
  greaterThan: ">",
  greaterThanOrEqual: ">=",
  lessThan: "<",
  lessThanOrEqual: "<=",
  equal: "=",
  notEqual: "<>",
};

const TEXTS = ["containsText", "notContainsText", "beginsWith", "endsWith"];
const KINDS: Readonly<Record<string, string>> = {
  containsText: "containsText",
  notContainsText: "notContainsText",
  beginsWith: "beginsWith",
  endsWith: "endsWith",
  containsBlanks: "containsBlanks",
  notContainsBlanks: "notContainsBlanks",
  containsErrors: "containsErrors",
  notContainsErrors: "notContainsErrors",
};

function ruleOf({ type, look, formulas, says, points, colours, areas }: ConditionalRule): object | undefined {
  const highlight = { type: "highlightCell", style: look === undefined ? {} : ruleStyle(look) };
  const isYes = (name: string, or: boolean): boolean => (says[name] === undefined ? or : /^(1|true)$/.test(says[name]));
  const text = KINDS[type];
  if (text !== undefined)
    return {
      ...highlight,
      subType: "text",
      operator: text,
      ...(TEXTS.includes(type) ? { value: says["text"] ?? "" } : {}),
    };
  switch (type) {
    case "cellIs":
      return { ...highlight, ...comparison(says["operator"] ?? "", formulas, areas[0]!) };
    case "expression":
      return formulas[0] === undefined
        ? undefined
        : { ...highlight, subType: "formula", value: `=${typedFromStored(formulas[0])}` };
    case "duplicateValues":
    case "uniqueValues":
      return { ...highlight, subType: type };
    case "top10":
      return {
        ...highlight,
        subType: "rank",
        isBottom: isYes("bottom", false),
        isPercent: isYes("percent", false),
        value: Number(says["rank"] ?? 10),
      };
    case "aboveAverage": {
      const side = isYes("aboveAverage", true) ? "greaterThan" : "lessThan";
      return { ...highlight, subType: "average", operator: isYes("equalAverage", false) ? `${side}OrEqual` : side };
    }
    case "timePeriod":
      return { ...highlight, subType: "timePeriod", operator: says["timePeriod"] };
    case "colorScale":
      return {
        type: "colorScale",
        config: points.map((point, index) => ({ index, color: colours[index] ?? "#ffffff", value: pointOf(point) })),
      };
    case "dataBar": {
      const [min, max] = points;
      if (min === undefined || max === undefined) return undefined;
      const colour = colours[0] ?? "#638ec6";
      return {
        type: "dataBar",
        isShowValue: true,
        config: {
          min: pointOf(min),
          max: pointOf(max),
          isGradient: true,
          positiveColor: colour,
          nativeColor: "#ff0000",
        },
      };
    }
    default:
      return undefined;
  }
}

/** A comparison with numbers, or as a formula where it is with a text or another cell. */
function comparison(operator: string, formulas: readonly string[], { top, left }: Area): object {
  const numbers = formulas.map(Number);
  const isPlain = formulas.length > 0 && numbers.every((number) => Number.isFinite(number));
  if (isPlain) {
    const value = operator.endsWith("etween") ? numbers : numbers[0];
    return { subType: "number", operator, value };
  }
  const cell = areaName({ top, left, bottom: top, right: left });
  const [first = "0", second = first] = formulas.map((formula) => `(${typedFromStored(formula)})`);
  const between = `AND(${cell}>=${first},${cell}<=${second})`;
  const value =
    operator === "between"
      ? between
      : operator === "notBetween"
        ? `NOT(${between})`
        : `${cell}${COMPARED[operator] ?? "="}${first}`;
  return { subType: "formula", value: `=${value}` };
}

/** A point of a scale: the least, the most, a number, a share of the way or of the cells. */
function pointOf({ type, value }: { readonly type: string; readonly value: string | undefined }): object {
  const number = Number(value);
  if (type === "formula") return { type, value: `=${typedFromStored(value ?? "0")}` };
  const kind = type === "autoMin" ? "min" : type === "autoMax" ? "max" : type;
  return value === undefined || Number.isNaN(number) ? { type: kind } : { type: kind, value: number };
}

function ruleStyle({ font, fill, borders }: RuleLook): IStyleBase {
  return { ...fontData(font), ...(fill === undefined ? {} : { bg: { rgb: fill } }), ...borderData(borders) };
}
