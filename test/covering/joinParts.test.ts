import fc from "fast-check";
import { joinParts } from "../../src/covering/joinParts";
import { partList } from "../../src/covering/partList";
import type { Part } from "../../src/enclosure/part";
import { joinWords } from "../../src/enclosure/benchInstruction";
import { sizeRow } from "../../src/item/sizeItem";
import { partsAnswer } from "../../src/item/partsAnswer";
import { settingsOf } from "../../src/settings/settingsOf";

const STOCK = [
  ["stock", "material", "caliper", "sheet length", "sheet width"],
  ["board", "board", 2, 1000, 700],
];
const shop = (more = "") => settingsOf([STOCK, `edge trim=0; join=yes; covering=none; lining=none; ${more}`]);

/** A base of a size that no tray has to have. */
function base(length: number, width: number, plies = 1): Part {
  const row = { height: 300, width: 200, depth: 40, enclosure: "tray" };
  const [found] = partList(sizeRow(row, shop("wall board=board"))!.assembly, shop());
  return { ...found!, length, width, plies, count: plies, grain: "along length" };
}

const cut = (part: Part, settings = shop()) =>
  joinParts([part], settings).map(({ length, width, count }) => [length, width, count]);

test.each([
  { fact: "1500 in two halves", asked: base(1500, 400), pieces: [[750, 400, 2]] },
  { fact: "2500 x 900 in three by two", asked: base(2500, 900), pieces: [[834, 450, 6]] },
  {
    fact: "two plies of 1500: 900 and 600 in each, turned end for end",
    asked: base(1500, 400, 2),
    pieces: [
      [900, 400, 2],
      [600, 400, 2],
    ],
  },
  {
    fact: "two plies of 1900: two pieces have no room for joints apart, three have",
    asked: base(1900, 400, 2),
    pieces: [
      [713, 400, 4],
      [474, 400, 2],
    ],
  },
  { fact: "what a sheet holds stays whole", asked: base(1000, 700), pieces: [[1000, 700, 1]] },
  {
    fact: "grain along the width: 1500 lies across the sheet",
    asked: { ...base(1500, 400), grain: "along width" as const },
    pieces: [[500, 400, 3]],
  },
])("a board that no sheet holds is joined: $fact", ({ asked, pieces }) => {
  expect(cut(asked)).toEqual(pieces);
  expect(joinParts([asked], settingsOf([STOCK, "join=no"]))).toEqual([asked]);
});

test("joined pieces cover the whole, and each fits a sheet", () => {
  const side = fc.integer({ min: 200, max: 2500 });
  fc.assert(
    fc.property(side, side, fc.integer({ min: 1, max: 3 }), (length, width, plies) => {
      const pieces = cut(base(length, width, plies), shop("edge trim=10"));
      const area = pieces.reduce((sum, [along, across, count]) => sum + along! * across! * count!, 0);
      expect(area).toBeGreaterThanOrEqual(length * width * plies);
      for (const [along, across] of pieces) expect([along! <= 980, across! <= 680]).toEqual([true, true]);
    }),
    { numRuns: 50 },
  );
});

test("the list of parts has the pieces to cut, and says what they are joined to", () => {
  const settings = shop("wall board=board; fit=0");
  const sized = sizeRow({ height: 1500, width: 300, depth: 40, enclosure: "tray" }, settings)!;
  const rows = partsAnswer(sized) as readonly (readonly (string | number)[])[];
  const found = rows.find(([part]) => String(part).startsWith("base, joined from"))!;
  const whole = partList(sized.assembly, settings)[0]!;
  expect(found.at(-1)).toBe(joinWords(whole, whole, "mm"));
  expect(found.at(-1)).toMatch(
    /^join to 1\d{3}(\.\d)? x 3\d\d(\.\d)?: butt, bridge the joint with a strip of card; trim to size$/,
  );
});
