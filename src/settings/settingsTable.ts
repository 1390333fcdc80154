import { benchFraction, FINEST_DENOMINATOR } from "../measure/benchFraction";
import { fromMm, massIn, tidy } from "../measure/units";
import { SETTING_KEYS } from "./given";
import type { Board } from "./readers";
import { DEFINITIONS, type SettingKey, type Settings } from "./schema";

export const SETTINGS_HEADINGS = ["setting", "value", "from", "default", "unit", "meaning", "standing"] as const;

/**
 * Every setting with the value in force, where it came from, default, unit, meaning and standing.
 * The values are written so that the table can be given back as a settings range.
 */
export function settingsTable(settings: Settings): readonly (readonly (number | string)[])[] {
  return [
    SETTINGS_HEADINGS,
    ...SETTING_KEYS.map((key) => {
      const { name, defaultText, unit, meaning, standing } = DEFINITIONS[key];
      const from = settings.origins.get(key) ?? "default";
      return [name, valueText(key, settings), from, defaultText, unit, meaning, standing];
    }),
  ];
}

/** Left to the kind of enclosure, or to another setting. */
const NOT_GIVEN = "default";

function valueText(key: SettingKey, settings: Settings): number | string {
  const value = settings[key];
  const { unit } = DEFINITIONS[key];
  if (value === undefined || value === "") return NOT_GIVEN;
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "object") return "caliper" in value ? boardText(value, settings) : listText(value);
  if (typeof value === "string") return value;
  if (unit === "length") return lengthText(value, settings);
  if (value === 0) return "none";
  if (unit === "mass") return `${tidy(massIn(value, settings.unit))} ${settings.unit === "in" ? "lb" : "kg"}`;
  return value;
}

/** Exact, so that it reads back as the same length: in inches a fraction of the rule where it is one. */
/** `1 / 0.5`, `tray 1.5 / slipcase 1`. */
function listText(list: readonly (number | readonly [string, number])[]): string {
  if (list.length === 0) return "none";
  return list.map((each) => (typeof each === "number" ? String(each) : each.join(" "))).join(" / ");
}

function lengthText(mm: number, { shopUnit }: Settings): string {
  if (mm === 0) return "none";
  const inShopUnit = fromMm(mm, shopUnit);
  if (shopUnit !== "in") return `${tidy(inShopUnit)} ${shopUnit}`;
  if (tidy(inShopUnit * FINEST_DENOMINATOR) % 1 === 0) return `${benchFraction(mm, FINEST_DENOMINATOR)} in`;
  const [inches, millimetres] = [`${tidy(inShopUnit)} in`, `${tidy(mm)} mm`];
  return inches.length <= millimetres.length ? inches : millimetres;
}

function boardText({ stock, caliper, listed }: Board, settings: Settings): string {
  return listed === undefined ? lengthText(caliper, settings) : stock;
}
