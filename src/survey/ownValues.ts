import type { Recognition } from "../headings/recognition";
import { PREFERRED_BOARD } from "../settings/definitions/materialSettings";
import { settingKey, type GivenValue } from "../settings/given";
import { withMaterials, type MaterialWord } from "../board/itemMaterials";
import { isGiven } from "./surveyNotes";

type SettingKeys = readonly (readonly [name: string, key: GivenValue["key"]])[];

/** Looked up once, not for every row; a setting that has two columns counts once. */
export function settingKeys({ settings }: Recognition): SettingKeys {
  return [...new Set(settings.map(({ setting }) => setting))].flatMap((setting): SettingKeys => {
    const key = settingKey(setting);
    return key === undefined ? [] : [[setting, key]];
  });
}

/** What the cells of a row set for it alone. */
export function ownValues(
  own: Readonly<Record<string, unknown>>,
  keys: SettingKeys,
  materialWords: readonly MaterialWord[],
): readonly GivenValue[] {
  const values: GivenValue[] = [];
  for (const [name, key] of keys) {
    const cell = own[name];
    if (!isGiven(cell)) continue;
    if (key === "wallBoard" && name !== PREFERRED_BOARD && isGiven(own[PREFERRED_BOARD])) continue;
    const value = key === "material" && typeof cell === "string" ? withMaterials(cell, materialWords) : cell;
    values.push({ key, value, origin: "its row" });
  }
  return values.length === 0 ? NONE_OF_ITS_OWN : values;
}

/** One for all: a survey may have a hundred thousand rows without a setting of their own. */
const NONE_OF_ITS_OWN: readonly GivenValue[] = [];
