import { readGiven, type Given } from "./given";
import { sharedSettings, type SharedSettings } from "./readSettings";
import type { Settings } from "./schema";

/**
 * Settings of a whole survey: the arguments are shared by all rows, so that an option which a row's kind cannot use is
 * ignored there; a row's own columns come last and are its own.
 *
 * @returns the settings of a row by its own values; read once for each distinct set of them
 * @throws InputError as `readSettings`, at once for the shared ones
 */
export function settingsForRows(settings: readonly unknown[]): SharedSettings {
  const given: readonly Given[] = settings.map((argument, place) => {
    const one = readGiven(argument, `settings ${place + 1}`);
    return one.holds === "values" ? { ...one, ownOfRow: false } : one;
  });
  const shared = sharedSettings(given, { starterGuide: true });
  const plain = shared.withOwn([]);
  const known = new Map<string, Settings>();
  const withOwn: SharedSettings["withOwn"] = (own) => {
    if (own.length === 0) return plain;
    let key = "";
    for (const each of own) key += `${each.key}=${cellKey(each.value)}\n`;
    let result = known.get(key);
    if (result === undefined) {
      result = shared.withOwn(own);
      if (known.size >= MOST_REMEMBERED) known.clear();
      known.set(key, result);
    }
    return result;
  };
  return { withOwn, takes: shared.takes };
}

/** Settings are long, and a column of measures is different in each of many thousand rows. */
const MOST_REMEMBERED = 4096;

/** A text of a cell that no other cell has: a number is not the same as its figures typed as a text. */
function cellKey(cell: unknown): string {
  return typeof cell === "number" ? String(cell) : JSON.stringify(cell);
}
