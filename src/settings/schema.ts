import type { Mm, WorkbookUnit } from "../measure/units";
import { BOARD_SETTINGS } from "./definitions/boardSettings";
import { BUDGET_SETTINGS } from "./definitions/budgetSettings";
import { BUILD_SETTINGS } from "./definitions/buildSettings";
import { CUTTING_SETTINGS } from "./definitions/cuttingSettings";
import { FIT_SETTINGS } from "./definitions/fitSettings";
import { KIND_SETTINGS } from "./definitions/kindSettings";
import { MATERIAL_SETTINGS } from "./definitions/materialSettings";
import { SHELF_SETTINGS } from "./definitions/shelfSettings";
import { WORKSHOP_SETTINGS } from "./definitions/workshopSettings";
import type { BoardGuide } from "./boardGuide";
import type { Board } from "./boards";
import type { ListedSize } from "./sizesList";
import type { StockRow } from "./stock";

/** Every setting, in the order in which they are shown. */
export const DEFINITIONS = {
  ...FIT_SETTINGS,
  ...BUILD_SETTINGS,
  ...MATERIAL_SETTINGS,
  ...KIND_SETTINGS,
  ...BOARD_SETTINGS,
  ...CUTTING_SETTINGS,
  ...WORKSHOP_SETTINGS,
  ...BUDGET_SETTINGS,
  ...SHELF_SETTINGS,
} as const;

export type SettingKey = keyof typeof DEFINITIONS;

type Values = { readonly [K in SettingKey]: (typeof DEFINITIONS)[K]["fallback"] };

export type Construction = NonNullable<Values["construction"]>;
export type Fit = NonNullable<Values["fit"]>;

/** Settings that are read into another form than their value. */
type ReadOtherwise = BoardSetting | "answerUnit" | "roundTo" | "coveringAllowance" | "turnIn";

type BoardSetting = "wallBoard" | "baseBoard" | "flangeCard" | "wrapperCard";

/** The settings in force for one row. Lengths in mm. */
export interface Settings extends Omit<Values, ReadOtherwise> {
  readonly answerUnit: WorkbookUnit;
  readonly wallBoard: Board | "auto";
  /** Undefined: the wall board. */
  readonly baseBoard: Board | "auto" | undefined;
  readonly flangeCard: Board;
  readonly wrapperCard: Board;
  readonly roundTo: Mm;
  readonly coveringAllowance: Mm;
  readonly turnIn: Mm;
  /** Lengths that are `auto`: the value in force is the least, and an enclosure that needs more takes more. */
  readonly leftAuto: ReadonlySet<SettingKey>;
  readonly stock: readonly StockRow[];
  /** Standard sizes that rows may name; none where no table of them is given. */
  readonly sizes: readonly ListedSize[];
  /** The shop's board guide; undefined where none is in force. */
  readonly guide: BoardGuide | undefined;
  /** Where each given value came from, in words. */
  readonly origins: ReadonlyMap<SettingKey, string>;
  /** Settings given in a row's own text or column. */
  readonly ownOfRow: ReadonlySet<SettingKey>;
}

/** Settings in which every board is decided: what an enclosure is put together from. */
export interface SettledSettings extends Settings {
  readonly wallBoard: Board;
  readonly baseBoard: Board | undefined;
  readonly caseBoard: Board | undefined;
}
