import fc from "fast-check";
import { enclosureMass } from "../../src/board/mass";
import { partList } from "../../src/covering/partList";
import { restingItem } from "../../src/enclosure/restingItem";
import { InputError } from "../../src/measure/errors";
import type { SettledSettings } from "../../src/settings/schema";
import { settingsOf } from "../../src/settings/settingsOf";
import { anyItem, EVERY_STRUCTURE } from "../enclosure/everyEnclosure";
import { settled } from "../settings/settledOf";
import { sized } from "./itemLoads";

function grams(kind: string, text = "", hwd: readonly [number, number, number] = [300, 210, 40]): number {
  const { assembly, settings } = sized(hwd, kind, undefined, text);
  return 1000 * enclosureMass(partList(assembly, settings), settings);
}

const GLUE = 80;
/** Grams to the square metre: board of 2 mm, card, cloth and paper, the last three with adhesive where they are glued. */
const [BOARD, CARD, GLUED_CARD, CLOTH, PAPER] = [1290, 300, 300 + GLUE, 240 + GLUE, 120 + GLUE] as const;

/** Pieces of one stock: count, length, width in mm. */
const m2 = (...pieces: readonly (readonly [number, number, number])[]) =>
  pieces.reduce((sum, [count, length, width]) => sum + count * length * width, 0) / 1e6;

// Item 300 x 210 x 40, sizes by hand in the worked examples of the sizing chapter and test/functions/goodRows.test.ts.
describe("by hand, 300 x 210 x 40", () => {
  test.each([
    [
      "tray",
      "",
      BOARD * m2([1, 303, 213], [2, 307, 44.5], [2, 213, 44.5]) +
        // The flange card is cut 327 x 237 and trimmed to 307 x 217.
        GLUED_CARD * m2([1, 307, 217]) +
        CLOTH * m2([1, 1063, 120], [1, 303, 213]) +
        PAPER * m2([1, 301, 211]),
    ],
    [
      "tray",
      "end cards=yes; covering=none; lining=none; construction=around base",
      // Head and tail face, 217 x 44.5.
      BOARD * m2([1, 303, 213], [2, 307, 44.5], [2, 213, 44.5]) + GLUED_CARD * m2([2, 217, 44.5]),
    ],
    [
      "lidded box",
      "covering=none; lining=none",
      BOARD * m2([1, 303, 213], [2, 307, 44.5], [2, 213, 44.5], [1, 314, 224], [2, 314, 42.5], [2, 220, 42.5]) +
        GLUED_CARD * m2([1, 307, 217]),
    ],
    [
      "three-tray box",
      "covering=none; lining=none",
      BOARD *
        m2(
          [1, 303, 213],
          [2, 307, 44.5],
          [2, 213, 44.5],
          [1, 310, 220],
          [2, 314, 37],
          [2, 220, 37],
          [1, 314, 224],
          [2, 314, 11],
          [2, 220, 11],
        ) +
        GLUED_CARD * m2([1, 307, 217], [1, 314, 224]),
    ],
    [
      "slipcase",
      "",
      BOARD * m2([2, 306, 212.5], [1, 306, 42], [2, 210.5, 42]) +
        // Head panel 212.5 - 2 + 15 = 225.5 by 46 - 4; linings 302 x 210.5, 302 x 42, 210.5 x 42, down.
        CLOTH * m2([1, 501, 336], [2, 225, 42]) +
        PAPER * m2([2, 302, 210], [1, 302, 42], [2, 210, 42]),
    ],
    [
      "clamshell box",
      "construction=flanged base; through=side; lining=none; covering=none",
      // Large inside 310 x 217 x 47; case boards 321 x 222.5, spine 51.4.
      BOARD *
        m2(
          [1, 303, 213],
          [1, 307, 44.5],
          [2, 213, 44.5],
          [1, 310, 217],
          [1, 314, 49],
          [2, 217, 49],
          [2, 321, 222.5],
          [1, 321, 51.4],
        ) +
        GLUED_CARD * m2([1, 307, 215], [1, 314, 219]),
    ],
    [
      "folded tray",
      "covering=none; lining=none",
      // 388 x 298 without its corners 42.5 x 40.5; four strips 42.5 x 30, pasted on.
      BOARD * (m2([1, 388, 298]) - m2([4, 42.5, 40.5])) + PAPER * m2([4, 42.5, 30]),
    ],
    [
      "folded tray",
      "fold=crease; covering=none; lining=none",
      // Walls 43.5: 392 x 306, of whose corners 43.5 x 43.5 the tabs, 15 x 42.5, stay.
      BOARD * (m2([1, 392, 306]) - m2([4, 43.5, 43.5]) + m2([4, 15, 42.5])),
    ],
    // Nothing of a wrapper is laminated: 831 x 210 and 609 x 301.
    ["four-flap wrapper", "closure=none", CARD * m2([1, 831, 210], [1, 609, 301])],
  ])("%s %s", (kind, text, sum) => {
    expect(grams(kind, text)).toBeCloseTo(sum, 6);
  });

  test("without adhesive the parts alone", () => {
    expect(grams("slipcase") - grams("slipcase", "adhesive=none")).toBeCloseTo(
      GLUE * m2([1, 501, 336], [2, 225, 42], [2, 302, 210], [1, 302, 42], [2, 210, 42]),
      6,
    );
  });

  test("a board that is not in stock weighs 645 kg/m3", () => {
    // 5 mm: 3225 g/m2; walls 313 and 213 long, 47.5 high.
    expect(grams("tray", "wall board=5; construction=around base; covering=none; lining=none")).toBeCloseTo(
      3225 * m2([1, 303, 213], [2, 313, 47.5], [2, 213, 47.5]),
      6,
    );
  });

  test("cushioning weighs 35 kg/m3, or by the stock's mass as often as its caliper goes into the thickness", () => {
    const bare = "construction=around base; covering=none; lining=none";
    // Floor 303 x 213 less coverings and 1 mm: 301 x 211; walls 10 higher.
    const walls = BOARD * m2([2, 307, 10], [2, 213, 10]);
    const added = grams("tray", `${bare}; cushion base=10`) - grams("tray", bare);
    expect(added - walls).toBeCloseTo(350 * m2([1, 301, 211]), 6);
    const stock = [
      ["stock", "material", "caliper", "mass"],
      ["grey", "board", 2, 1290],
      ["foam", "cushion", 5, 200],
    ];
    const settings = settingsOf([stock, [[`${bare}; cushion base=10`]]]);
    const item = { height: 300, width: 210, depth: 40 };
    const kind = sized([300, 210, 40], "tray").kind;
    const foam = partList(kind.assemble(restingItem(item, settings), settled(settings)), settings).filter(
      ({ stock: name }) => name === "foam",
    );
    expect(1000 * enclosureMass(foam, settings)).toBeCloseTo(400 * m2([1, 301, 211]), 6);
  });
});

describe("in every kind, construction and option", () => {
  const board = (caliper: number) => ({
    plies: 1,
    stock: `${caliper} mm board, not in stock`,
    caliper,
    listed: undefined,
  });

  test("the mass is the sum of its parts' and grows with the caliper", () => {
    for (const { kind, settings, text } of EVERY_STRUCTURE)
      fc.assert(
        fc.property(anyItem, (item) => {
          const massOf = (caliper: number) => {
            // No rounding and no lid that is cut to a step: a thicker board never shortens a part but the lid's walls.
            const all: SettledSettings = {
              ...settings,
              wallBoard: board(caliper),
              wrapperCard: board(caliper / 4),
              roundTo: 0,
              lidReveal: 0,
            };
            const parts = partList(kind.assemble(restingItem(item, all), all), all);
            const sum = parts.reduce((total, part) => total + enclosureMass([part], all), 0);
            const mass = enclosureMass(parts, all);
            expect(mass).toBeCloseTo(sum, 9);
            expect(Math.min(...parts.map((part) => enclosureMass([part], all)))).toBeGreaterThan(0);
            return mass;
          };
          let masses: number[];
          try {
            masses = [1.5, 2, 3].map(massOf);
          } catch (error) {
            // Some items leave no room for a part.
            if (error instanceof InputError) return;
            throw error;
          }
          if (!(masses[0]! < masses[1]! && masses[1]! < masses[2]!))
            throw new Error(`${kind.name} ${text}: ${masses.join(" ")}`);
        }),
        { numRuns: Math.ceil(1000 / EVERY_STRUCTURE.length) },
      );
  });
});
