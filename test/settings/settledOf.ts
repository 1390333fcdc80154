import type { Settings, SettledSettings } from "../../src/settings/schema";
import { settingsOf } from "../../src/settings/settingsOf";

/** Settings by text alone, in which no board is left to be decided. */
export function settledOf(text = ""): SettledSettings {
  return settled(settingsOf(text === "" ? [] : [text]));
}

export function settled(settings: Settings): SettledSettings {
  const { wallBoard, baseBoard, caseBoard } = settings;
  if (wallBoard === "auto" || baseBoard === "auto" || caseBoard === "auto") throw new Error("a board is still auto");
  return { ...settings, wallBoard, baseBoard, caseBoard };
}
