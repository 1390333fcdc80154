import fc from "fast-check";
import type { Board } from "../../src/settings/readers";
import type { SettingKey, Settings } from "../../src/settings/schema";
import { DEFINITIONS } from "../../src/settings/schema";
import { settingsOf } from "../../src/settings/settingsOf";
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
  lidDepth: ["full", "6 mm"],
  flaps: ["1 / 0.5", "1 / 1", "0.5 / 0.5", "0.3 / 0.4"],
};

export interface Structure {
  readonly kind: Kind;
  /** `construction=on base; through=head` */
  readonly text: string;
  readonly settings: Settings;
}

/** Every kind in every construction and option. */
export const EVERY_STRUCTURE: readonly Structure[] = KINDS.flatMap((kind) =>
  kind.options
    .filter((key) => STRUCTURES[key] !== undefined)
    .reduce<readonly string[]>(
      (texts, key) =>
        texts.flatMap((text) => STRUCTURES[key]!.map((value) => `${text}${DEFINITIONS[key].name}=${value}; `)),
      [""],
    )
    // Tabs of a creased tray are on its head walls: through=head is refused there.
    .filter((text) => !(text.includes("fold=crease") && text.includes("through=head")))
    .map((text) => ({ kind, text, settings: settingsOf([[[text]]].slice(text === "" ? 1 : 0)) })),
);

/** Items of every usual and unusual size, landscape and square, thinner than a board, up to 2 m. */
export const anyItem = fc
  .record({
    size: fc.constantFrom([20, 120], [80, 450], [400, 2000]),
    height: fc.nat(10_000),
    width: fc.nat(10_000),
    depth: fc.nat(10_000),
    square: fc.constantFrom(false, false, false, true),
  })
  .map(({ size: [least, most] = [0, 0], height, width, depth, square }) => {
    const between = (share: number, low: number, high: number) =>
      Math.round((low + (share / 10_000) * (high - low)) * 10) / 10;
    const tall = between(height, least as number, most as number);
    return {
      height: tall,
      width: square ? tall : between(width, least as number, most as number),
      depth: between(depth, 0.5, (most as number) / 4),
    };
  });

const board = (caliper: number): Board => ({ stock: `${caliper} mm`, caliper, listed: undefined });
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
  })
  .map(({ wall, base, case: caseCaliper, card, ...others }) => ({
    ...others,
    wallBoard: board(wall),
    baseBoard: board(base),
    caseBoard: board(caseCaliper),
    flangeCard: board(card),
    wrapperCard: board(card),
  }));

/** How many items each structure is tried with: 1,000, or many more in a soak. */
export const RUNS = Number(process.env["SOAK_RUNS"] ?? 1000);
