import type { Construction, SettingKey, Settings, SettledSettings } from "../settings/schema";
import type { AssembledKind, Assembly } from "./assembly";
import type { RestingItem } from "./restingItem";

/** A kind of enclosure: one file in `kinds`, and one line in the registry. */
export interface Kind extends AssembledKind {
  /** The trade's other words for it. */
  readonly otherNames: readonly string[];
  /** Names of its trays; none where it has one. */
  readonly trays: readonly string[];
  /** Board and card parts that some construction or option of it has, without the tray. */
  readonly parts: readonly string[];
  /** Covering and lining pieces that it may have, without the tray. */
  readonly coverings: readonly string[];
  readonly constructions: readonly Construction[];
  /** Open or thin, so that it lies on its shelf unless the user says otherwise. */
  readonly keptFlat?: true;
  /** What it is made of, and so what a decision on its board names. */
  readonly body: (settings: Settings) => Body;
  /** Which way the object lies in it unless it is said; on its back where this is undefined. */
  readonly restsOn?: Settings["restsOn"];
  /** The options that it can use; another in a row's own text is refused. */
  readonly options: readonly SettingKey[];
  /**
   * Puts the enclosure together around an item.
   *
   * @throws InputError when a setting leaves no room for a part
   */
  readonly assemble: (item: RestingItem, settings: SettledSettings) => Assembly;
}

/** Walls may be laminated; a blank and a wrapper are each folded from one piece. */
export type Body = "walls" | "wrapper" | "cut blank" | "creased blank";

export const WALLS = (): Body => "walls";

export const CONSTRUCTIONS: readonly Construction[] = ["flanged base", "on base", "around base"];

/** What lies round an item: options of every kind in which it lies on a floor between walls. */
export const WELL_OPTIONS: readonly SettingKey[] = ["well", "liftingRibbon"];

/** Several items beside each other: options of trays and boxes. */
export const DIVIDERS = ["divider", "cross divider"];
export const ARRANGED: readonly SettingKey[] = ["arrangement", "dividers", "dividerHeight"];

/** The cautions of a kind that needs none of its own. */
export const NO_CAUTIONS = (): readonly string[] => [];
