import { isByGuide, settledBoards } from "../board/boardInForce";
import { weightOf } from "../board/itemWeight";
import { settledAllowance } from "../covering/settledAllowance";
import type { Assembly } from "../enclosure/assembly";
import type { Kind } from "../enclosure/kind";
import { restingItem, type Item } from "../enclosure/restingItem";
import { isBlankRow, itemsOfRow, type ItemMeasures, type Measures } from "./itemsOfRow";
import { inStandardSize } from "./standardSize";
import { together } from "./together";
import { kindNamed } from "../enclosure/kindNamed";
import { isBlank } from "../measure/blank";
import { InputError, NoAnswer } from "../measure/errors";
import { readLength } from "../measure/readLength";
import { readMass } from "../measure/readMass";
import { severalMeasures } from "../measure/severalMeasures";
import { massUnitOf } from "../measure/units";
import type { Board } from "../settings/boards";
import type { Settings, SettledSettings } from "../settings/schema";
import { settingsOfKind } from "./settingsOfKind";

/** A survey row as its cells hold it. */
export interface Row extends Measures {
  readonly enclosure: unknown;
}

/** An item with its enclosure put together around it. */
export interface Sized {
  readonly item: Item;
  readonly kind: Kind;
  /** Undefined where it was not given. */
  readonly weightKg: number | undefined;
  /** The board in force: of the walls, of a wrapper or of a folded blank. */
  readonly board: Board;
  readonly assembly: Assembly;
  /** With every board decided. */
  readonly settings: SettledSettings;
  /** As asked for, `auto` boards still `auto`: what other boards are judged by. */
  readonly requested: Settings;
}

/** Enclosure of an item that gets none: no answer and no cost. */
export const NO_ENCLOSURE = "none";

/**
 * Sizes one row.
 *
 * @returns undefined when there is nothing to size: height, width and depth all blank, or enclosure `none`
 * @throws InputError naming the argument or setting that cannot be used
 */
export function sizeRow(row: Row, settings: Settings): Sized | undefined {
  if (isBlankRow(row) || isNoEnclosure(row.enclosure)) return undefined;
  const items = itemsOfRow(row);
  const [first] = items as readonly [ItemMeasures];
  const isAlone = items.length === 1 && first.copies === 1;
  const read = isAlone ? [readMeasures(first, settings)] : readEach(items, settings);
  const { item, weightKg: added, settings: inForce } = asOne(read, row.enclosure, settings);
  const isWhole = !isBlank(row.weight) && severalMeasures(row.weight) === undefined;
  const weightKg = (isWhole ? readWeight(row.weight, settings) : added) ?? weightSet(settings);
  // A function without an argument for the weight takes it from the settings, or that it is not known.
  if (row.weight === undefined && settings.weight === undefined)
    refuseUnasked(kindNamed(isBlank(row.enclosure) ? "" : row.enclosure), { item, weightKg }, settings);
  return sizeItem(item, row.enclosure, weightKg, inForce);
}

/** An item with its weight, undefined where it is not known. */
export type WeighedItem = Item & Pick<Sized, "weightKg">;

/**
 * Items that share an enclosure as one, with the settings in which it lies so: one item alone, several as they are
 * arranged. Their weight is known where each is.
 */
export function asOne(
  items: readonly WeighedItem[],
  enclosure: unknown,
  settings: Settings,
): Pick<Sized, "item" | "weightKg"> & { readonly settings: Settings } {
  if (items.length === 1) {
    const { height, width, depth, weightKg } = items[0]!;
    return { item: { height, width, depth }, weightKg, settings };
  }
  const { arrangement, ...item } = together(items, settingsOfKind(kindNamed(enclosure), settings));
  const known = items.flatMap(({ weightKg }) => weightKg ?? []);
  const weightKg = known.length < items.length ? undefined : known.reduce((sum, each) => sum + each, 0);
  return { item, weightKg, settings: { ...settings, arrangement } };
}

/** Each item of a row as often as the row has it. @throws InputError that says of which item it is */
function readEach(items: readonly ItemMeasures[], settings: Settings): readonly WeighedItem[] {
  return items.flatMap((each, index) => {
    const item = naming(items.length === 1 ? "" : `item ${index + 1}, `, () => readMeasures(each, settings));
    return Array.from({ length: each.copies }, () => item);
  });
}

function readMeasures({ height, width, depth, weight }: Measures, settings: Settings): WeighedItem {
  const { surveyUnit: unit } = settings;
  return {
    height: readLength(height, { argument: "height", unit }),
    width: readLength(width, { argument: "width", unit }),
    depth: readLength(depth, { argument: "depth", unit }),
    weightKg: isBlank(weight) ? undefined : readWeight(weight, settings),
  };
}

function readWeight(weight: unknown, { surveyUnit: unit }: Settings): number {
  return readMass(weight, { argument: "weight", unit: massUnitOf(unit) });
}

/** Says of which item an error is. */
export function naming<T>(which: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof InputError) || which === "") throw error;
    throw new InputError(`${which}${error.argument}`, error.got, error.expected, error.cure);
  }
}

/**
 * Puts an enclosure together around an item that is read already.
 *
 * @param enclosure the name of a kind
 * @param weightKg undefined where it was not given
 */
export function sizeItem(item: Item, enclosure: unknown, weightKg: number | undefined, settings: Settings): Sized {
  const kind = kindNamed(enclosure);
  const boards = settledBoards({ item, kind, weightKg }, settingsOfKind(kind, settings));
  const resting = restingItem(item, boards.settings);
  const settled = settledAllowance(kind, resting, boards.settings);
  const { board } = boards;
  const own = kind.assemble(resting, settled);
  const assembly = settled.size === "" ? own : inStandardSize({ item, kind, assembly: own, settings: settled });
  return { item, kind, weightKg, board, assembly, settings: settled, requested: settings };
}

/** The weight that the settings give; undefined where they give none. */
export function weightSet({ weight }: Settings): number | undefined {
  return weight === "none" ? undefined : weight;
}

function refuseUnasked(kind: Kind, load: Pick<Sized, "item" | "weightKg">, settings: Settings): void {
  if (!isByGuide(kind, settings) || weightOf(load, settings) !== undefined) return;
  throw new InputError(
    "weight",
    "a blank",
    "the board guide needs it: give weight=1.2, or weight=none to choose by size alone",
    "or name a wall board",
  );
}

/** Why a row cannot be sized; empty when it can, or when there is nothing to size. Never throws for what a user gave. */
export function problemOf(row: Row, settings: Settings): string {
  try {
    sizeRow(row, settings);
    return "";
  } catch (error) {
    if (error instanceof InputError || error instanceof NoAnswer) return problemText(error);
    throw error;
  }
}

/** A problem as a survey shows it. */
export function problemText(error: InputError | NoAnswer): string {
  return (error instanceof InputError ? error.inShort : undefined) ?? error.message;
}

export function isNoEnclosure(enclosure: unknown): boolean {
  return typeof enclosure === "string" && enclosure.trim().toLowerCase() === NO_ENCLOSURE;
}
