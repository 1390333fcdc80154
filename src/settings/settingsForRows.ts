import { readGiven, type Given, type GivenValue } from "./given";
import { readSettings } from "./readSettings";
import type { Settings } from "./schema";

/**
 * Settings of a whole survey: the arguments are shared by all rows, so that an option which a row's kind cannot use is
 * ignored there; a row's own columns come last and are its own.
 *
 * @returns the settings of a row by its own values; read once for each distinct set of them
 * @throws InputError as `readSettings`, at once for the shared ones
 */
export function settingsForRows(settings: readonly unknown[]): (own: readonly GivenValue[]) => Settings {
  const shared: readonly Given[] = settings.map((argument, place) => {
    const given = readGiven(argument, `settings ${place + 1}`);
    return given.holds === "values" ? { ...given, ownOfRow: false } : given;
  });
  const plain = readSettings(shared, { starterGuide: true });
  const known = new Map<string, Settings>();
  return (own) => {
    if (own.length === 0) return plain;
    const key = JSON.stringify(own.map(({ key, value }) => [key, value]));
    let result = known.get(key);
    if (result === undefined) {
      result = readSettings([...shared, { holds: "values", values: own, ownOfRow: true }], { starterGuide: true });
      known.set(key, result);
    }
    return result;
  };
}
