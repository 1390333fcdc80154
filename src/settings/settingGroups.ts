import { BOARD_SETTINGS } from "./definitions/boardSettings";
import { BUDGET_SETTINGS } from "./definitions/budgetSettings";
import { BUILD_SETTINGS } from "./definitions/buildSettings";
import { CUTTING_SETTINGS } from "./definitions/cuttingSettings";
import { FIT_SETTINGS } from "./definitions/fitSettings";
import { KIND_SETTINGS } from "./definitions/kindSettings";
import { MATERIAL_SETTINGS } from "./definitions/materialSettings";
import { SHELF_SETTINGS } from "./definitions/shelfSettings";
import { WORKSHOP_SETTINGS } from "./definitions/workshopSettings";
import { DEFINITIONS, type SettingKey } from "./schema";

/** Settings by what they are about, for people to find them; the retired ones are left out. */
export const SETTING_GROUPS: readonly { readonly title: string; readonly keys: readonly SettingKey[] }[] = [
  ["Units and fit", FIT_SETTINGS],
  ["How trays are built", BUILD_SETTINGS],
  ["Boards, card, covering and lining", MATERIAL_SETTINGS],
  ["What some kinds have", KIND_SETTINGS],
  ["Sizes, weight and climate", BOARD_SETTINGS],
  ["Cutting", CUTTING_SETTINGS],
  ["The workshop", WORKSHOP_SETTINGS],
  ["The budget", BUDGET_SETTINGS],
  ["The store", SHELF_SETTINGS],
].map(([title, settings]) => ({
  title: title as string,
  keys: (Object.keys(settings as object) as SettingKey[]).filter((key) => !DEFINITIONS[key].retired),
}));
