import type { Construction, Settings } from "../settings/schema";
import type { SettingKey } from "../settings/schema";
import type { Assembly } from "./assembly";
import type { RestingItem } from "./restingItem";
import type { Step } from "./order";

/** A kind of enclosure: one file beside this one, and one line in the registry. */
export interface Kind {
  readonly name: string;
  /** The trade's other words for it. */
  readonly otherNames: readonly string[];
  /** Names of its trays; none where it has one. */
  readonly trays: readonly string[];
  /** Board and card parts that some construction or option of it has, without the tray. */
  readonly parts: readonly string[];
  readonly constructions: readonly Construction[];
  /** It is made of board; false for one of card alone. */
  readonly boards: boolean;
  /** The options that it can use; another in a row's own text is refused. */
  readonly options: readonly SettingKey[];
  /**
   * Puts the enclosure together around an item.
   *
   * @throws InputError when a setting leaves no room for a part
   */
  readonly assemble: (item: RestingItem, settings: Settings) => Assembly;
  /** How its boards are put together, covered and lined. */
  readonly order: (settings: Settings) => readonly Step[];
}

export const CONSTRUCTIONS: readonly Construction[] = ["flanged base", "on base", "around base"];
