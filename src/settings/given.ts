import { isBlank, isEmpty } from "../measure/blank";
import { InputError, shown } from "../measure/errors";
import { isGuideHeading } from "./boardGuide";
import { takesNone } from "./choices";
import { refuseErrorCell } from "./errorCell";
import { didYouMean, plainName } from "./names";
import { DEFINITIONS, type SettingKey } from "./schema";
import { isSizesHeading } from "./sizesList";
import { isStockHeading } from "./stockTable";

export type Cells = readonly (readonly unknown[])[];

/** What one settings argument holds, before any value is read. */
export type Given =
  | { readonly holds: "nothing" }
  | { readonly holds: "stock"; readonly rows: Cells }
  | { readonly holds: "guide"; readonly rows: Cells }
  | { readonly holds: "sizes"; readonly rows: Cells }
  | { readonly holds: "values"; readonly values: readonly GivenValue[]; readonly ownOfRow: boolean };

export interface GivenValue {
  readonly key: SettingKey;
  readonly value: unknown;
  readonly origin: string;
}

/**
 * Whether an argument is a settings text, a settings range or a stock table.
 *
 * @param argument a text such as `fit=loose; wall board=3 mm`, or a range of cells
 * @param place how messages and origins call it, such as `settings 2`
 * @throws InputError with the cure when it is none of these, or a name is not a setting
 */
export function readGiven(argument: unknown, place: string): Given {
  const cells: Cells = Array.isArray(argument) ? (argument as Cells) : [[argument]];
  const only = cells.length === 1 && cells[0]?.length === 1 ? cells[0][0] : undefined;
  if (cells.every((row) => row.every((cell) => isBlank(cell)))) return { holds: "nothing" };
  if (only !== undefined) return { holds: "values", values: readText(only, place), ownOfRow: true };
  // Blank rows below the headings stay, so that messages count rows as the user sees them.
  const rows = cells.slice(cells.findIndex((row) => row.some((cell) => !isEmpty(cell))));
  const headings = rows[0] ?? [];
  if (isGuideHeading(headings)) return { holds: "guide", rows };
  if (isSizesHeading(headings)) return { holds: "sizes", rows };
  if (isStockHeading(headings)) return { holds: "stock", rows };
  const names = headings.map((cell) => (typeof cell === "string" ? plainName(cell) : ""));
  const setting = names.indexOf("setting");
  const value = names.indexOf("value");
  if (setting >= 0 && value >= 0)
    return { holds: "values", values: readRange(rows.slice(1), setting, value, place), ownOfRow: false };
  if (headings.length === 2) return { holds: "values", values: readRange(rows, 0, 1, place), ownOfRow: false };
  throw new InputError(
    "settings",
    `a range of ${headings.length} ${headings.length === 1 ? "column" : "columns"} without headings that are known`,
    "give two columns, or columns headed setting and value",
    "or a stock table with its heading row, such as Stock[#All]",
  );
}

/** The key of a setting by its name; letter case, hyphens and spaces do not count. */
export function settingKey(name: string): SettingKey | undefined {
  return KEYS.get(name) ?? KEYS.get(plainName(name));
}

export const SETTING_KEYS = Object.keys(DEFINITIONS) as readonly SettingKey[];

export const SETTING_NAMES = SETTING_KEYS.map((key) => DEFINITIONS[key].name);

const KEYS: ReadonlyMap<string, SettingKey> = new Map([
  ...SETTING_KEYS.flatMap((key) =>
    [DEFINITIONS[key].name, ...DEFINITIONS[key].otherNames].map((name) => [plainName(name), key] as const),
  ),
]);

const EXAMPLE = "fit=loose; wall board=3 mm";

/** Words that leave a setting as if it were not given, so that a printed settings table can be read back. */
const NOT_GIVEN = new Set(["default", "by kind", "as fit", "not given", "-"]);

/** Whether a value is one of the words for a setting that is left as it is. */
export function isNotGiven(value: unknown): boolean {
  return typeof value === "string" && NOT_GIVEN.has(plainName(value));
}

function readText(argument: unknown, place: string): readonly GivenValue[] {
  refuseErrorCell(argument, "settings");
  if (typeof argument !== "string" || !argument.includes("="))
    throw new InputError(
      "settings",
      shown(argument),
      `give a text such as ${EXAMPLE}`,
      "or a range with the headings setting and value, or a stock table with its headings",
    );
  const values: GivenValue[] = [];
  for (const assignment of argument.split(/[;\n]/)) {
    if (assignment.trim() === "") continue;
    const equals = assignment.indexOf("=");
    if (equals < 0) throw new InputError("settings", shown(assignment.trim()), `write name=value, such as ${EXAMPLE}`);
    const value = assignment.slice(equals + 1).trim();
    const key = knownKey(assignment.slice(0, equals).trim());
    if (value !== "" && !isNotGiven(value)) values.push({ key, value, origin: place });
  }
  return values;
}

function readRange(rows: Cells, settingColumn: number, valueColumn: number, place: string): readonly GivenValue[] {
  const values: GivenValue[] = [];
  for (const row of rows) {
    const name = row[settingColumn];
    const value = row[valueColumn];
    refuseErrorCell(name, "settings");
    if (isBlank(name)) {
      if (isBlank(value)) continue;
      throw new InputError("settings", `the value ${shown(value)} without a setting`, "name the setting beside it");
    }
    // A row without a value may be the title of a group of settings.
    if (isEmpty(value) || isNotGiven(value)) continue;
    if (value === 0 && settingKey(String(name)) === undefined) continue;
    const key = knownKey(name);
    if (value === 0) throw zeroRefused(key);
    refuseErrorCell(value, DEFINITIONS[key].name);
    values.push({ key, value, origin: place });
  }
  return values;
}

/** An empty cell can reach a function as 0, so that a bare 0 does not say that zero is meant. */
function zeroRefused(key: SettingKey): InputError {
  const { name, accepts, takes } = DEFINITIONS[key];
  const got = "0 or a blank";
  if (takesNone(takes.choices)) return new InputError(name, got, "write none, or delete the row");
  return new InputError(name, got, `give ${accepts}`, "or delete the row");
}

function knownKey(name: unknown): SettingKey {
  const key = typeof name === "string" ? settingKey(name) : undefined;
  if (key !== undefined) return key;
  const cure = didYouMean(String(name), SETTING_NAMES, "ENC.SETTINGS() lists them");
  throw new InputError("settings", shown(name), "give the name of a setting", cure);
}
