import fc from "fast-check";
import { basePlate, topPlate } from "../../src/board/basePlate";
import { baseSag, boardHolds, neededBoard, settledBoards, weightOf, type ItemLoad } from "../../src/board/neededBoard";
import { sagAllowed } from "../../src/board/neededCaliper";
import { restingItem } from "../../src/enclosure/restingItem";
import { NoAnswer } from "../../src/measure/errors";
import type { Settings, SettledSettings } from "../../src/settings/schema";
import { settingsOf } from "../../src/settings/settingsOf";
import type { StockRow } from "../../src/settings/stock";
import { boardStockAnswer, sagAnswer } from "../../src/item/boardAnswers";
import { sizeItem } from "../../src/item/sizeItem";
import { settledOf } from "../settings/settledOf";
import { anyBurden, anyRule, itemLoad, shared } from "./itemLoads";

const boardOf = (row: StockRow) => ({ stock: row.stock, caliper: row.caliper, listed: row });

/** The board needed; undefined where none holds. */
function needed(asked: ItemLoad, settings: Settings): StockRow | undefined {
  try {
    return neededBoard(asked, settings);
  } catch (error) {
    if (error instanceof NoAnswer) return undefined;
    throw error;
  }
}

describe("the board that an item needs", () => {
  test("is the thinnest whose sag, as baseSag tells it, is within the limit", () => {
    let held = 0;
    fc.assert(
      fc.property(anyBurden, anyRule, (asked, settings) => {
        const plate = basePlate(asked.kind.assemble(restingItem(asked.item, settled(settings)), settled(settings)))!;
        const allowed = sagAllowed(plate, settings);
        const boards = settings.stock.filter(({ material }) => material === "board");
        const thinnest = boards.find((row) => baseSag(asked, boardOf(row), settings) <= allowed);
        expect(needed(asked, settings)?.stock).toBe(thinnest?.stock);
        if (thinnest !== undefined) held++;
      }),
      { numRuns: 400 },
    );
    // Both outcomes are tried.
    expect(held).toBeGreaterThan(80);
    expect(held).toBeLessThan(380);
  });

  test("as a row answers it, is the thinnest of BASE.SAG's table within the limit, auto or not", () => {
    fc.assert(
      fc.property(anyBurden, anyRule, ({ item, kind, weightKg }, settings) => {
        let row;
        try {
          row = sizeItem(item, kind.name, weightKg, settings);
        } catch (error) {
          if (error instanceof NoAnswer) return;
          throw error;
        }
        const [, ...sags] = sagAnswer(row, "all") as readonly (readonly [string, number])[];
        const allowed = sagAllowed(basePlate(row.assembly)!, settings);
        const thinnest = sags.find(([, sag]) => sag <= allowed + 1e-9);
        const answered = thinnest === undefined ? undefined : boardStockAnswer(row);
        expect(answered).toBe(thinnest?.[0]);
        if (settings.baseBoard === "auto" || (settings.baseBoard === undefined && settings.wallBoard === "auto"))
          expect(row.assembly.parts.find(({ role }) => role === "base")!.board.stock).toBe(answered);
      }),
      { numRuns: 300 },
    );
  });

  test("is never thinner for a heavier item, a heavier stack, more creep or a stricter ratio", () => {
    const times = fc.integer({ min: 1, max: 6 });
    const calipers = (asked: ItemLoad, settings: Settings) => needed(asked, settings)?.caliper ?? Infinity;
    fc.assert(
      fc.property(anyBurden, anyRule, times, fc.constantFrom(0, 0.2, 1), (asked, rule, more, stackAbove) => {
        const settings = { ...rule, stackAbove };
        const caliper = calipers(asked, settings);
        const heavier = { ...asked, weightKg: asked.weightKg! * more };
        expect(calipers(heavier, settings)).toBeGreaterThanOrEqual(caliper);
        for (const stricter of [
          { stackAbove: stackAbove + 0.3 * more },
          { creep: rule.creep * more },
          { sagRatio: rule.sagRatio * more },
          { modulusAcross: rule.modulusAcross / more },
        ])
          expect(calipers(asked, { ...settings, ...stricter })).toBeGreaterThanOrEqual(caliper);
      }),
      { numRuns: 200 },
    );
  });

  test("carries the stack over the walls that it is given itself, and no thinner board does", () => {
    fc.assert(
      fc.property(anyBurden, anyRule, fc.constantFrom(0.1, 0.5, 2), (asked, rule, stackAbove) => {
        const settings = { ...rule, stackAbove };
        const row = needed(asked, settings);
        for (const each of settings.stock) {
          if (each.material !== "board" || each.caliper > (row?.caliper ?? Infinity)) continue;
          expect(boardHolds(asked, boardOf(each), settings)).toBe(each === row);
        }
      }),
      { numRuns: 200 },
    );
  });

  test("is found for the lid by its own span, and for a clamshell by the case that it is glued to", () => {
    // By hand in test/functions/boardNeeded.test.ts: the lid spans 204 and holds .0548 t^3 kg.
    const stock = (stack: string) =>
      neededBoard(
        itemLoad([200, 200, 40], "lidded box", 0.1),
        settingsOf([`covering allowance=none; fit=none; lid clearance=none; stack above=${stack}`]),
      ).stock;
    expect([stock("0.18"), stock("0.19"), stock("0.45")]).toEqual(["grey board 1.5", "grey board 2", "grey board 2.5"]);
    const sag = (text: string) => {
      const settings = settingsOf([text]);
      return baseSag(itemLoad([200, 200, 40], "clamshell box", 1), boardOf(settings.stock[1]!), settings);
    };
    // 2 mm on a case of 3, of the walls' 2.5, of the same board again.
    expect(sag("case board=3") / sag("wall board=2.5")).toBeCloseTo((4.5 / 5) ** 3, 9);
    expect(sag("wall board=auto") / sag("wall board=2.5")).toBeCloseTo((4.5 / 4) ** 3, 9);
  });

  test("does not change with a lid depth that only thicker boards leave room for", () => {
    // The box is 42.5 + 3 + .4 = 45.9 deep outside, with boards of 1.5 only 44.4.
    const settings = settingsOf(["wall board=3; lid depth=46"]);
    expect(neededBoard(itemLoad([300, 210, 40], "lidded box", 0.1), settings).stock).toBe("grey board 1.5");
  });

  test("settles both auto boards, and leaves named ones alone", () => {
    const asked = itemLoad([180, 120, 30], "tray", 0.6);
    const stock = neededBoard(asked, settingsOf([])).stock;
    const both = settledBoards(asked, shared(["wall board", "auto"], ["base board", "auto"]));
    expect([both.wallBoard, both.baseBoard]).toEqual([
      expect.objectContaining({ stock }),
      expect.objectContaining({ stock }),
    ]);
    const base = settledBoards(asked, shared(["wall board", "3"], ["base board", "auto"]));
    expect([base.wallBoard, base.baseBoard]).toEqual([
      expect.objectContaining({ stock: "grey board 3" }),
      expect.objectContaining({ stock }),
    ]);
    const named = settingsOf(["wall board=3"]);
    expect(settledBoards(asked, named)).toBe(named);
  });
});

test("weightOf: as given, else by the density of the item's own volume, else unknown", () => {
  const dense = settingsOf(["item density=700; cushion base=10"]);
  expect(weightOf(itemLoad([200, 100, 50], "tray", 1), dense)).toEqual({ kg: 1, estimated: false });
  expect(weightOf(itemLoad([200, 100, 50], "tray"), dense)).toEqual({ kg: 0.7, estimated: true });
  expect(weightOf(itemLoad([200, 100, 50], "tray"), settingsOf([]))).toBeUndefined();
});

describe("the plates of an enclosure", () => {
  const plates = (kind: string, text = "") => {
    const asked = itemLoad([300, 210, 40], kind);
    const settings = settledOf(text);
    const assembly = asked.kind.assemble(restingItem(asked.item, settings), settings);
    return [basePlate(assembly), topPlate(assembly)];
  };

  test.each([
    // Inside 213 x 303; the lid's, 4 + 2 + 1 larger, is 220 x 310; grain long.
    ["tray", "", [213, 303, "none", "y", 0], undefined],
    ["tray", "wall layers=2", [213, 303, "none", "y", 0], undefined],
    ["lidded box", "", [213, 303, "none", "y", 0], [220, 310, "none", "y", 0]],
    ["three-tray box", "", [213, 303, "none", "y", 0], [220, 310, "none", "y", 0]],
    ["slipcase", "", [210.5, 302, "x0", "y", 0], [210.5, 302, "x0", "y", 0]],
    // Grain parallel to the spine, glued to the case; the large tray 215 + 1 + 1 by 307 + 2 + 1.
    ["clamshell box", "", [213, 303, "x0", "y", 2], [217, 310, "x0", "y", 2]],
    ["clamshell box", "case board=3", [213, 303, "x0", "y", 3], [217, 310, "x0", "y", 3]],
    ["folded tray", "", undefined, undefined],
    ["four-flap wrapper", "", undefined, undefined],
  ] as const)("%s %s", (kind, text, base, top) => {
    const told = plates(kind, text).map((plate) =>
      plate === undefined ? undefined : [plate.spanX, plate.spanY, plate.freeEdge, plate.grain, plate.gluedTo],
    );
    expect(told).toEqual([base, top]);
  });

  test("of a landscape item: long grain turns with it, that of a clamshell stays parallel to the spine", () => {
    const grain = (kind: string) => {
      const asked = itemLoad([210, 300, 40], kind);
      return basePlate(asked.kind.assemble(restingItem(asked.item, settledOf()), settledOf()))!.grain;
    };
    expect([grain("tray"), grain("clamshell box"), grain("slipcase")]).toEqual(["x", "y", "y"]);
  });
});

/** Any board in the place of auto: the inside does not depend on it. */
function settled(settings: Settings): SettledSettings {
  const board = boardOf(settings.stock[0]!);
  return {
    ...settings,
    wallBoard: settings.wallBoard === "auto" ? board : settings.wallBoard,
    baseBoard: settings.baseBoard === "auto" ? board : settings.baseBoard,
  };
}
