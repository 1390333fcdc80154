import fc from "fast-check";
import type { Board } from "../../src/settings/boards";
import type { SettingKey, SettledSettings } from "../../src/settings/schema";
import { InputError } from "../../src/measure/errors";
import type { Assembly } from "../../src/enclosure/assembly";
import { restingItem, type Item } from "../../src/enclosure/restingItem";
import { DEFINITIONS } from "../../src/settings/schema";
import { settledOf } from "../settings/settledOf";
import { KINDS } from "../../src/enclosure/registry";
import type { Kind } from "../../src/enclosure/kind";

/** Structural options to be tried in every combination that a kind can use. */
const STRUCTURES: Partial<Record<SettingKey, readonly string[]>> = {
  construction: ["around base", "on base", "flanged base"],
  lidConstruction: ["around base", "on base", "flanged base"],
  through: ["side", "head"],
  wallLayers: ["1", "2"],
  endCards: ["no", "yes"],
  fold: ["cut", "crease"],
  clamshellSpine: ["hinged", "creased"],
  lidDepth: ["full", "6 mm"],
  chemise: ["no", "card", "board"],
  flaps: ["0.5 / 1", "1 / 1", "0.5 / 0.5", "0.3 / 0.4"],
};

/** Tried of each kind that takes them, in its usual construction. */
const ARRANGED = ["arrangement=3 x 1", "arrangement=3 x 2", "arrangement=2 x 2; dividers=no"];

export interface Structure {
  readonly kind: Kind;
  /** `construction=on base; through=head` */
  readonly text: string;
  readonly settings: SettledSettings;
}

/** Each kind in every construction and combination of options that it accepts. */
export function structuresOf(kinds: readonly Kind[]): readonly Structure[] {
  return kinds.flatMap((kind) =>
    kind.options
      .filter((key) => STRUCTURES[key] !== undefined)
      .reduce<readonly string[]>(
        (texts, key) =>
          texts.flatMap((text) => STRUCTURES[key]!.map((value) => `${text}${DEFINITIONS[key].name}=${value}; `)),
        [""],
      )
      .concat(kind.options.includes("arrangement") ? ARRANGED : [])
      .map((text) => ({ kind, text, settings: settledOf(text) }))
      .filter(isAccepted),
  );
}

/** Whether the kind can be built so at all, around an ordinary item. */
function isAccepted({ kind, settings }: Structure): boolean {
  return assemblyOf(kind, { height: 300, width: 210, depth: 40 }, settings) !== undefined;
}

/** The assembly around an item; undefined where settings of the kind leave no room for a part, which it must name. */
export function assemblyOf(kind: Kind, item: Item, settings: SettledSettings): Assembly | undefined {
  try {
    return kind.assemble(restingItem(item, settings), settings);
  } catch (error) {
    const names = [...kind.options.map((key) => DEFINITIONS[key].name), "height", "width", "depth"];
    if (error instanceof InputError && names.includes(error.argument)) return undefined;
    throw error;
  }
}

export const EVERY_STRUCTURE: readonly Structure[] = structuresOf(KINDS);

/** The rows of `test.each` over structures: the name of the kind, its settings, the structure. */
export function titled(structures: readonly Structure[]): readonly (readonly [string, string, Structure])[] {
  return structures.map((structure) => [structure.kind.name, structure.text, structure] as const);
}

/** Items of every usual and unusual size, landscape and square, thinner than a board, up to 2 m. */
export const anyItem = fc
  .record({
    size: fc.constantFrom([20, 120], [80, 450], [400, 2000]),
    height: fc.nat(10_000),
    width: fc.nat(10_000),
    depth: fc.nat(10_000),
    square: fc.constantFrom(false, false, false, true),
  })
  .map(({ size: [least, most], height, width, depth, square }) => {
    const between = (share: number, low: number, high: number) =>
      Math.round((low + (share / 10_000) * (high - low)) * 10) / 10;
    const tall = between(height, least, most);
    return {
      height: tall,
      width: square ? tall : between(width, least, most),
      depth: between(depth, 0.5, (most as number) / 4),
    };
  });

const board = (caliper: number): Board => ({ stock: `${caliper} mm`, caliper, plies: 1, listed: undefined });
const calipers = fc.constantFrom(1, 1.5, 2, 2.03, 2.5, 3);
const play = fc.constantFrom(0, 0.5, 1, 1.7);

/** Allowances, calipers and clearances of a shop. */
export const anyShop = fc
  .record({
    coveringAllowance: fc.constantFrom(0, 0.6, 1, 1.5),
    fit: fc.constantFrom("snug" as const, "standard" as const, "loose" as const, 0, 0.7),
    wall: calipers,
    base: calipers,
    case: calipers,
    card: fc.constantFrom(0.3, 0.4, 0.65),
    lidClearance: play,
    nestClearance: play,
    lidReveal: fc.constantFrom(0, 0.3, 1),
    square: fc.constantFrom(0, 3, 4.5),
    cushionBase: fc.constantFrom(0, 0, 3),
    cushionSides: fc.constantFrom(0, 0, 6),
    cushionTop: fc.constantFrom(0, 0, 2),
    restsOn: fc.constantFrom("back" as const, "back" as const, "foot" as const, "edge" as const),
    roundTo: fc.constantFrom(0, 0.5, 25.4 / 32, 1),
    turnIn: fc.constantFrom(12, 15, 20),
    flapRelief: fc.constantFrom(0, 0.4, 3),
  })
  .map(({ wall, base, case: caseCaliper, card, ...others }) => ({
    ...others,
    wallBoard: board(wall),
    baseBoard: board(base),
    caseBoard: board(caseCaliper),
    flangeCard: board(card),
    wrapperCard: board(card),
  }));

/** How many items each structure is tried with; in a soak, each kind or each structure. */
export const RUNS = Number(process.env["SOAK_RUNS"] ?? 200);

/**
 * How many items a structure is tried with in a soak: so many are shared out over the structures of its kind, or, with
 * SOAK_EACH=structure, each structure has as many.
 */
export function soakRuns({ kind }: Structure): number {
  if (process.env["SOAK_EACH"] === "structure") return RUNS;
  return Math.ceil(RUNS / EVERY_STRUCTURE.filter((each) => each.kind === kind).length);
}
