import type { Kind } from "../enclosure/kind";
import type { RestingItem } from "../enclosure/restingItem";
import { bothFaces, stockFor } from "../settings/coverStock";
import type { SettledSettings } from "../settings/schema";

/**
 * An `auto` covering allowance holds the lining too where walls are lined: one number for all directions.
 *
 * @param settings with the allowance of the covering alone
 */
export function settledAllowance(kind: Kind, item: RestingItem, settings: SettledSettings): SettledSettings {
  if (!settings.leftAuto.has("coveringAllowance")) return settings;
  const more = bothFaces(stockFor("lining", settings));
  if (more === 0) return settings;
  const lined = kind.blanks(kind.assemble(item, settings), settings).some(({ lines }) => lines?.face === "wall");
  return lined ? { ...settings, coveringAllowance: settings.coveringAllowance + more } : settings;
}
