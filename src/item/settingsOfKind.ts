import type { Mm } from "../measure/units";
import type { Kind } from "../enclosure/kind";
import { KINDS } from "../enclosure/registry";
import { InputError } from "../measure/errors";
import { STACKED } from "../settings/arrangement";
import { listed } from "../settings/names";
import { DEFINITIONS, type Settings } from "../settings/schema";

/** Settings as one kind reads them: thousands of rows share both. @throws InputError for an option of another kind */
export function settingsOfKind(kind: Kind, settings: Settings): Settings {
  let byKind = remembered.get(settings);
  if (byKind === undefined) remembered.set(settings, (byKind = new Map<Kind, Settings>()));
  let own = byKind.get(kind);
  if (own === undefined) {
    refuseForeignOptions(kind, settings);
    byKind.set(kind, (own = insideByKind(kind, settings)));
  }
  return own;
}

const remembered = new WeakMap<Settings, Map<Kind, Settings>>();

/** Which way an item lies, and what lies round it, where its kind decides. */
function insideByKind({ restsOn, options }: Kind, settings: Settings): Settings {
  const { origins } = settings;
  const alone =
    settings.arrangement.by === "stacked" || options.includes("arrangement")
      ? settings
      : { ...settings, arrangement: STACKED };
  const resting = restsOn === undefined || origins.has("restsOn") ? alone : { ...alone, restsOn };
  if (!settings.well && !settings.liftingRibbon) return resting;
  const well = settings.well && options.includes("well");
  const padded = (key: "cushionBase" | "cushionSides" | "cushionTop") =>
    well && !origins.has(key) ? WELL_CUSHION_MM : settings[key];
  return {
    ...resting,
    well,
    liftingRibbon: settings.liftingRibbon && options.includes("liftingRibbon"),
    cushionBase: padded("cushionBase"),
    cushionSides: padded("cushionSides"),
    cushionTop: padded("cushionTop"),
  };
}

/** Cushion under, round and over an item in a well. From memory. */
const WELL_CUSHION_MM: Mm = 10;

/** In a shared range an option that a kind cannot use is ignored; in the row's own text it is a slip. */
function refuseForeignOptions(kind: Kind, { ownOfRow }: Settings): void {
  for (const key of ownOfRow) {
    if (!DEFINITIONS[key].option || kind.options.includes(key)) continue;
    const users = KINDS.filter((each) => each.options.includes(key)).map((each) => each.name);
    throw new InputError(
      DEFINITIONS[key].name,
      `a value for a ${kind.name}, which has no use for it`,
      `give it for a ${listed(users, "or")}`,
      "or leave it out of this row",
    );
  }
}
