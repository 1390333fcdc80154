import fc from "fast-check";
import { cutBlanks } from "../../src/covering/cutBlanks";
import type { Blank } from "../../src/enclosure/blank";
import { wholeDown, wholeUp } from "../../src/enclosure/part";
import { settingsOf } from "../../src/settings/settingsOf";

const BLANK: Blank = {
  name: "wall strip",
  tray: "",
  material: "covering",
  count: 1,
  along: 1063,
  across: 119.4,
  within: false,
  note: "round the walls",
};

const shop = (sheetLength: number | string, more = "") =>
  settingsOf([
    [
      ["stock", "material", "caliper", "sheet length", "sheet width"],
      ["cloth", "covering", 0.3, sheetLength, 1000],
    ],
    `turn-in=15; ${more}`,
  ]);

const cut = (blank: Partial<Blank>, settings = shop("")) => cutBlanks([{ ...BLANK, ...blank }], settings);

describe("rounding to whole millimetres", () => {
  test.each([
    [119.4, 120, 119],
    [119, 119, 119],
    [119.0000005, 119, 119],
    [118.9999995, 119, 119],
    [119.00001, 120, 119],
    [118.99999, 119, 118],
  ])("%p is %p over an edge and %p within a face; a millionth is noise", (size, up, down) => {
    expect([wholeUp(size), wholeDown(size)]).toEqual([up, down]);
    expect(cut({ across: size })[0]?.width).toBe(up);
    expect(cut({ across: size, within: true })[0]?.width).toBe(down);
  });

  test("length is the longer side, and the grain says which way it runs", () => {
    expect(cut({})[0]).toMatchObject({ length: 1063, width: 120, grain: "along length" });
    expect(cut({ along: 120, across: 963 })[0]).toMatchObject({ length: 963, width: 120, grain: "along width" });
  });
});

describe("a blank longer than the sheet allows is split, with a lap of the turn-in at each join", () => {
  test("on a roll any length goes in one piece", () => {
    expect(cut({})).toMatchObject([{ count: 1, length: 1063, note: "round the walls" }]);
  });

  test("a strip round the walls is at most 1200 long on a roll too; what covers a face goes in one piece", () => {
    expect(cut({ along: 1200 })).toMatchObject([{ count: 1, length: 1200 }]);
    // (1201 + 15) / 2
    expect(cut({ along: 1201 })).toMatchObject([{ count: 2, length: 608, width: 120 }]);
    expect(cut({ name: "case covering", along: 1500 })).toMatchObject([{ count: 1, length: 1500 }]);
  });

  test("wider than the roll, two strips of cloth are lapped; what may turn is turned", () => {
    // 1000 less the trim is 990: (1300 + 15) / 2, rounded up.
    expect(cut({ along: 800, across: 1300 })).toMatchObject([
      { count: 2, length: 800, width: 658, grain: "along length" },
    ]);
    const free = settingsOf([
      [
        ["stock", "material", "sheet width", "grain"],
        ["tissue", "covering", 1000, "free"],
      ],
      "turn-in=15",
    ]);
    expect(cut({ along: 800, across: 1300 }, free)).toMatchObject([{ count: 1, length: 1300, width: 800 }]);
  });

  test("1063 on sheets of 700, 5 trimmed off each end: two pieces of (1063 + 15) / 2 = 539", () => {
    expect(cut({}, shop(700))).toMatchObject([
      {
        count: 2,
        length: 539,
        width: 120,
        note: "round the walls; in 2 pieces, each lapped by the turn-in at the join",
      },
    ]);
  });

  test("just as long as the sheet allows, one piece; a millimetre more, two", () => {
    expect(cut({ along: 690 }, shop(700))).toMatchObject([{ count: 1, length: 690 }]);
    // (691 + 15) / 2
    expect(cut({ along: 691 }, shop(700))).toMatchObject([{ count: 2, length: 353 }]);
  });

  test("of a sheet of 705.5 no more than whole millimetres is of use", () => {
    // 695.5 less the trim is 695: 2 x 695 - 15 = 1375 go in two pieces, 1376 do not.
    expect(cut({ along: 1375 }, shop(705.5))).toMatchObject([{ count: 2, length: 695 }]);
    expect(cut({ along: 1376 }, shop(705.5))).toMatchObject([{ count: 3, length: 469 }]);
  });

  test("two blanks of three pieces are six pieces to cut", () => {
    expect(cut({ count: 2, along: 1376, note: "" }, shop(705.5))).toMatchObject([
      { count: 6, note: "in 3 pieces, each lapped by the turn-in at the join" },
    ]);
  });

  test("the grain of a split blank stays along the join's lap, even where a piece is wider than long", () => {
    expect(cut({ along: 700, across: 500 }, shop(400))).toMatchObject([
      { count: 2, length: 500, width: 358, grain: "along width" },
    ]);
  });

  test("the pieces laid with their laps cover the whole, each fits the sheet, and none is needless", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 5000, noNaN: true }),
        fc.double({ min: 60, max: 2000, noNaN: true }),
        fc.integer({ min: 10, max: 250 }).map((tenths) => tenths / 10),
        fc.boolean(),
        (along, sheetLength, turnIn, within) => {
          const usable = Math.floor(sheetLength - 10);
          fc.pre(usable > turnIn);
          const [part] = cut({ along, across: 50, within }, shop(sheetLength, `turn-in=${turnIn}`));
          const { count, length, width, grain } = part!;
          const each = grain === "along length" ? length : width;
          const whole = within ? wholeDown(along) : wholeUp(along);
          expect(each).toBeLessThanOrEqual(usable);
          expect(count * each - (count - 1) * turnIn).toBeGreaterThanOrEqual(whole - 1e-6);
          if (count > 1) expect((count - 1) * usable - (count - 2) * turnIn).toBeLessThan(whole);
          expect(Number.isInteger(each)).toBe(true);
        },
      ),
    );
  });
});

describe("stock", () => {
  test("the covering named, else the first of the table; none leaves it out", () => {
    const two = (text: string) =>
      settingsOf([
        [
          ["stock", "material", "caliper"],
          ["first", "covering", 0.3],
          ["second", "covering", 0.5],
        ],
        text,
      ]);
    expect(cut({}, two("turn-in=15"))[0]).toMatchObject({ stock: "first", caliper: 0.3 });
    expect(cut({}, two("covering=Second"))[0]).toMatchObject({ stock: "second", caliper: 0.5 });
    expect(cut({}, two("covering=none"))).toEqual([]);
    expect(cut({ material: "lining" }, two("covering=none"))[0]?.stock).toBe("lining, not in stock");
  });

  test("grain free lets a piece lie either way", () => {
    const free = settingsOf([
      [
        ["stock", "material", "grain"],
        ["tissue", "covering", "free"],
      ],
    ]);
    expect(cut({}, free)[0]?.grain).toBe("either");
  });

  test.each([
    [0, 50],
    [50, 0],
    [-3, 50],
    [0.9, 50],
  ])("a blank of %p x %p within a face is left out", (along, across) => {
    expect(cut({ along, across, within: true })).toEqual([]);
  });
});
