import { templateOfBlank } from "../../src/drawing/templateOfBlank";
import { book, enclosed, partNamed, partsOf } from "../enclosure/sizing";
import { sizeRow } from "../../src/item/sizeItem";
import { settingsOf } from "../../src/settings/settingsOf";
import { settledOf } from "../settings/settledOf";

// By hand from chapter 9 of the design. Item 300 x 210 x 40, boards 2, card 0.4, covering 0.5 on a face, turn-in 15.
const item = book(300, 210, 40);

/** Name: count, along the grain, across it. */
type Blanks = Readonly<Record<string, readonly [count: number, along: number, across: number]>>;

const blanksOf = (kind: string, text = "", of = item): Blanks =>
  Object.fromEntries(
    partsOf(of, kind, text)
      .filter((part) => ["covering", "lining", "cushion"].includes(part.material))
      .map(({ fullName, count, length, width, grain }) => [
        fullName,
        grain === "along width" ? [count, width, length] : [count, length, width],
      ]),
  );

describe("a tray covered by a strip", () => {
  test("inside 303 x 213 x 42.5, outside 307 x 217 x 44.9", () => {
    expect(blanksOf("tray")).toEqual({
      // 2 x (307 + 217) + 15; under the base 15 + up 44.9 + rim 2 + down 42.5 + on the floor 15 = 119.4, up.
      "wall strip": [1, 1063, 120],
      // 4 less than the outside, 1 less than the floor between the coverings.
      "base panel": [1, 303, 213],
      "floor lining": [1, 301, 211],
    });
  });

  test.each([
    // Rim of two boards: outside 311 x 221; 2 x 532 + 15; 15 + 44.9 + 4 + 57.5 = 121.4.
    ["wall layers=2", { "wall strip": [1, 1079, 122], "base panel": [1, 307, 217], "floor lining": [1, 301, 211] }],
    // Cards at head and tail: outside 307.8 x 217, rim 2.4; 2 x 524.8 + 15 = 1064.6; 119.8; panel 303.8, down.
    ["end cards=yes", { "wall strip": [1, 1065, 120], "base panel": [1, 303, 213], "floor lining": [1, 301, 211] }],
    // Down inside by 20 alone: 15 + 44.9 + 2 + 20 = 81.9.
    // The walls below it are lined: 42.5 - 20 + 7.5 over the turn-in + 15 on to the floor = 45; 303 + 10 and 213 - 2 long.
    [
      "inside turn=20",
      {
        "wall strip": [1, 1063, 82],
        "base panel": [1, 303, 213],
        "side wall lining": [2, 313, 45],
        "head wall lining": [2, 211, 45],
        "floor lining": [1, 301, 211],
      },
    ],
    // Lined before: covering 15 down inside, 15 + 44.9 + 2 + 15 = 76.9; linings 42.5 - 15 + 7.5 = 35 high under it, as
    // long as the inside; the floor of the whole base, 303 x 213.
    [
      "lining order=before",
      {
        "wall strip": [1, 1063, 77],
        "base panel": [1, 303, 213],
        "side wall lining": [2, 303, 35],
        "head wall lining": [2, 213, 35],
        "floor lining": [1, 303, 213],
      },
    ],
    // Longer than full is full.
    ["inside turn=80", { "wall strip": [1, 1063, 120], "base panel": [1, 303, 213], "floor lining": [1, 301, 211] }],
    ["turn-in=20.5", { "wall strip": [1, 1069, 131], "base panel": [1, 303, 213], "floor lining": [1, 301, 211] }],
    // No covering comes down inside: 42.5 + 15 = 57.5, down.
    [
      "covering=none",
      { "side wall lining": [2, 313, 57], "head wall lining": [2, 211, 57], "floor lining": [1, 301, 211] },
    ],
    ["lining=none", { "wall strip": [1, 1063, 120], "base panel": [1, 303, 213] }],
    ["covering=none; lining=none", {}],
  ])("%s", (text, blanks) => {
    expect(blanksOf("tray", text)).toEqual(blanks);
  });

  test("its grain runs along the strip, elsewhere with the base", () => {
    expect(partsOf(item, "tray").map(({ name, grain }) => [name, grain])).toEqual([
      ["base", "along length"],
      ["side wall", "along length"],
      ["head wall", "along length"],
      ["flange card", "along length"],
      ["wall strip", "along length"],
      ["base panel", "along length"],
      ["floor lining", "along length"],
    ]);
  });
});

test("a tray covered by one piece: e = 44.9 + 2 + 57.5 = 104.4, 307 + 2e by 217 + 2e", () => {
  expect(blanksOf("tray", "cover style=one piece")).toEqual({
    "one-piece blank": [1, 516, 426],
    "floor lining": [1, 301, 211],
  });
  expect(partNamed(partsOf(item, "tray", "cover style=one piece"), "one-piece blank").note).toBe(
    "cut away the corners 104.5 x 89.5, leaving tabs 15 wide",
  );
});

test("corner sizes are along the grain first, then across, in the table as in the drawing", () => {
  // A landscape tray's grain runs along its width, in which the tabs are left.
  const landscape = enclosed(book(210, 300, 40), "tray");
  const settings = settledOf("cover style=one piece");
  const [blank] = landscape.kind.blanks(landscape, settings);
  expect(blank!.note).toContain("corners 89.5 x 104.5,");
  const [{ length, width } = { length: 0, width: 0 }] = templateOfBlank(blank!).corners;
  expect([length, width].map((size) => Number(size.toFixed(2)))).toEqual([89.4, 104.4]);
});

test("the lid of a lidded box is covered like a tray: inside 310 x 220 x 42.5, outside 314 x 224 x 44.5", () => {
  expect(blanksOf("lidded box")).toEqual({
    "box wall strip": [1, 1063, 120],
    "box base panel": [1, 303, 213],
    "box floor lining": [1, 301, 211],
    // 2 x 538 + 15; 15 + 44.5 + 2 + 57.5 = 119.
    "lid wall strip": [1, 1091, 119],
    "lid base panel": [1, 310, 220],
    "lid floor lining": [1, 308, 218],
  });
});

test("a three-tray box: bottom 35 and lid 11 deep inside, 314 x 224 outside; what nobody sees is bare", () => {
  expect(blanksOf("three-tray box")).toEqual({
    // Down inside to the floor 42.5 + 15, rim 2, outside the neck of 10 and 15 more: 84.5. Nothing under its base.
    "inner wall strip": [1, 1063, 85],
    "inner floor lining": [1, 301, 211],
    // 15 + 37.4 + 2 + 15 = 69.4, no lining; 15 + 13 + 2 + 11 + 15 = 56.
    "bottom wall strip": [1, 1091, 70],
    "bottom base panel": [1, 310, 220],
    "lid wall strip": [1, 1091, 56],
    "lid base panel": [1, 310, 220],
    "lid floor lining": [1, 308, 218],
  });
});

test("cloth of a three-tray box 300 x 210 x 40: 28 % less than with every face of every tray covered", () => {
  const cloth = (blanks: readonly (readonly [number, number])[]) =>
    blanks.reduce((sum, [length, width]) => sum + length * width, 0);
  // Each tray covered all over: 15 under the base, up, over the rim, down and 15 on to the floor; a panel under each.
  const before = cloth([
    [1063, 120],
    [303, 213],
    [1091, 107],
    [310, 220],
    [1091, 56],
    [310, 220],
  ]);
  const now = cloth(
    partsOf(item, "three-tray box")
      .filter(({ material }) => material === "covering")
      .map(({ length, width, count }) => [length * count, width] as const),
  );
  expect([before, now]).toEqual([506_332, 364_221]);
  expect(1 - now / before).toBeCloseTo(0.28, 2);
});

describe("a deep tray is lined before its boards are put together", () => {
  // 300 x 210 x 100: inside 303 x 213 x 102.5, over 80 deep; covering 15 down inside: 15 + 104.9 + 2 + 15 = 136.9.
  // Linings 102.5 - 15 + 7.5 = 95 high.
  test("over 80 mm", () => {
    expect(blanksOf("tray", "", book(300, 210, 100))).toEqual({
      "wall strip": [1, 1063, 137],
      "base panel": [1, 303, 213],
      "side wall lining": [2, 303, 95],
      "head wall lining": [2, 213, 95],
      "floor lining": [1, 303, 213],
    });
  });

  test("or over half its short side: 60 x 60 x 40 deep inside 63 x 63 x 42.5", () => {
    expect(Object.keys(blanksOf("tray", "", book(60, 60, 40)))).toContain("side wall lining");
    expect(Object.keys(blanksOf("tray", "", book(90, 90, 40)))).not.toContain("side wall lining");
  });

  test("a clamshell's trays have a fore-edge wall to line", () => {
    // Small 303 x 213 x 102.5; its fore-edge wall as long as the inside, 95 high.
    const blanks = blanksOf("clamshell box", "", book(300, 210, 100));
    expect(blanks["small fore-edge wall lining"]).toEqual([1, 303, 95]);
    expect(blanks["small head wall lining"]).toEqual([2, 213, 95]);
  });

  test("unless lining order says after: then the covering runs down to the floor", () => {
    expect(Object.keys(blanksOf("tray", "lining order=after", book(300, 210, 100)))).toEqual([
      "wall strip",
      "base panel",
      "floor lining",
    ]);
  });

  test("a creased tray has tabs inside its side walls, and is lined after", () => {
    expect(Object.keys(blanksOf("folded tray", "fold=crease", book(300, 210, 100)))).not.toContain("side wall lining");
    expect(() => enclosed(item, "folded tray", "fold=crease; lining order=before")).toThrow(
      'lining order: got "before"; give auto or after with fold=crease',
    );
  });
});

test("a folded tray is covered like a tray of one board: outside 307 x 217 x 44.5", () => {
  expect(blanksOf("folded tray")).toEqual({
    // Of lining paper: card shows through the covering.
    "joint strip": [4, 42.5, 30],
    "wall strip": [1, 1063, 119],
    "base panel": [1, 303, 213],
    "floor lining": [1, 301, 211],
  });
});

test("a slipcase: inside 302 x 210.5 x 42, outside 306 x 212.5 x 46", () => {
  expect(blanksOf("slipcase")).toEqual({
    // 306 + 30 along the spine; twice 212.5 + 46 + 30 = 501.
    wrap: [1, 336, 501],
    // 212.5 - 2 + 15 = 225.5 and 46 - 4, within the face, so down.
    "head panel": [2, 225, 42],
    "side lining": [2, 302, 210],
    "back wall lining": [1, 302, 42],
    "head wall lining": [2, 210, 42],
  });
});

test("a clamshell box, around base: small 307 x 215 x 44.5 outside, large 314 x 219 x 48.5", () => {
  expect(blanksOf("clamshell box")).toEqual({
    // Three walls: 2 x 215 + 307 + 30; 15 + 44.5 + 2 + 57.5 = 119. No base panel: the tray is glued to its case.
    "small wall strip": [1, 767, 119],
    // Over the spine edge of the base: 15 + 2 + 15.
    "small spine-edge strip": [1, 307, 32],
    "small floor lining": [1, 301, 211],
    // 2 x 219 + 314 + 30; 15 + 48.5 + 2 + 46.5 + 15 = 127.
    "large wall strip": [1, 782, 127],
    "large spine-edge strip": [1, 314, 32],
    "large floor lining": [1, 308, 215],
    // Boards 321 x 222.5, spine 50.5, joints 5: 321 + 30 by 445 + 10 + 50.5 + 30 = 535.5.
    "case covering": [1, 351, 536],
    // As tall as the large tray; 50.5 + 10 + 4 x 2 + 2 x 25 = 118.5, within the boards, so down.
    "spine lining": [1, 314, 118],
  });
});

test("flanged, the spine-edge strip covers the card too: 15 + 2.4 + 15 = 32.4", () => {
  expect(blanksOf("clamshell box", "construction=flanged base")["small spine-edge strip"]).toEqual([1, 307, 33]);
});

test("a clamshell tray of one piece: 215 + 104 + 2 + 15 by 307 + 208", () => {
  const blanks = blanksOf("clamshell box", "cover style=one piece");
  expect(blanks["small one-piece blank"]).toEqual([1, 515, 336]);
  expect(blanks["small spine-edge strip"]).toBeUndefined();
});

test("a wrapper is bare card", () => {
  expect(blanksOf("four-flap wrapper")).toEqual({});
});

describe("cushioning", () => {
  test("base and top fill the covered floor less a millimetre, the sides stand between them", () => {
    // Inside 315 x 225 x 50.5; between coverings 314 x 224, and 50 high of which 5 and 3 are base and top.
    expect(blanksOf("tray", "cushion base=5; cushion sides=6; cushion top=3")).toMatchObject({
      "cushion base": [1, 313, 223],
      "cushion side": [2, 313, 42],
      "cushion head": [2, 211, 42],
      "cushion top": [1, 313, 223],
    });
  });

  test("in a slipcase and a wrapper as in a tray, in the tray that holds the item", () => {
    expect(Object.keys(blanksOf("clamshell box", "cushion base=3")).at(-1)).toBe("small cushion base");
    // Inside 302 x 210.5 x 45 between coverings of 0.5.
    expect(blanksOf("slipcase", "cushion base=3")["cushion base"]).toEqual([1, 300, 208]);
    expect(blanksOf("four-flap wrapper", "cushion base=3")["cushion base"]).toEqual([1, 300, 210]);
  });
});

describe("a turn-in is never longer than half the face that it lies on", () => {
  // Inside 20 x 15 x 12.5, outside 24 x 19 x 14.9: floor turn 7.5, foot turn 9.5.
  const pebble = book(17, 12, 10);

  test("on a small tray: under the base half of 19, on the floor half of 15", () => {
    expect(blanksOf("tray", "", pebble)).toEqual({
      // 2 x 43 + 9.5 = 95.5; 9.5 + 14.9 + 2 + 12.5 + 7.5 = 46.4.
      "wall strip": [1, 96, 47],
      "base panel": [1, 20, 15],
      "floor lining": [1, 18, 13],
    });
    expect(partNamed(partsOf(pebble, "tray"), "wall strip").note).toBe(
      "round the walls; turn in 9.5 under the base, 20 down inside",
    );
  });

  test("at the spine of a small clamshell tray of one piece, half the floor", () => {
    // Around base: outside 17 x 24 x 14.5; e = 14.5 + 2 + 12.5 + 7.5 = 36.5; 17 + 36.5 + 2 + 7.5 = 63; 24 + 73.
    expect(blanksOf("clamshell box", "cover style=one piece", pebble)["small one-piece blank"]).toEqual([1, 97, 63]);
  });

  test("at the head of a thin slipcase, half its depth; at its mouth, half its width", () => {
    // 300 x 20 x 3, snug: inside 302 x 20.5 x 5, outside 306 x 22.5 x 9: head turn 4.5, mouth turn 10.25.
    const pamphlet = book(300, 20, 3);
    expect(blanksOf("slipcase", "", pamphlet)).toMatchObject({
      wrap: [1, 315, 75], // 306 + 9; 45 + 9 + 20.5 = 74.5
      "head panel": [2, 30, 5], // 22.5 - 2 + 10.25 = 30.75; 9 - 4
    });
  });

  test("on the boards of a small case, and the hinge lap at most half a board", () => {
    // Small outside 24 x 17 x 14.5; large inside 27 x 19 x 16.5, outside 31 x 21 x 18.5. Boards 38 x 24.5; spine 20.5.
    const blanks = blanksOf("clamshell box", "", pebble);
    // Turn-in half of 24.5: 38 + 24.5 = 62.5; 49 + 10 + 20.5 + 24.5 = 104.
    expect(blanks["case covering"]).toEqual([1, 63, 104]);
    // 20.5 + 10 + 8 + 24.5 = 63.
    expect(blanks["spine lining"]).toEqual([1, 31, 63]);
  });

  test("a panel that the turn-ins leave nothing of is left out", () => {
    // Inside 5 x 5 x 4.5 (fit snug): floor lining 3; base panel 9 - 4.
    expect(Object.keys(blanksOf("tray", "fit=none; covering allowance=none", book(1, 1, 1)))).toEqual([
      "wall strip",
      "base panel",
    ]);
  });
});

describe("what auto takes", () => {
  const settled = (text: string, depth = 40, enclosure = "tray") =>
    sizeRow({ height: 300, width: 210, depth, enclosure, weight: null }, settingsOf([text]))!;

  test("covering allowance: cloth of 0.3 and 0.1 of adhesive on both faces, 0.8", () => {
    expect(settled("covering allowance=auto").settings.coveringAllowance).toBeCloseTo(0.8, 9);
    expect(settled("covering allowance=auto; covering=none; lining=none").settings.coveringAllowance).toBe(0);
  });

  test("and where walls are lined 2 x (0.15 + 0.1) more, 1.3, for all directions", () => {
    const { settings, assembly } = settled("covering allowance=auto; round to=none", 100);
    expect(settings.coveringAllowance).toBeCloseTo(1.3, 9);
    // 210 + 1.3 + 2, 300 + 1.3 + 2, 100 + 0.65 + 2.
    const { max } = assembly.holder.inside;
    [213.3, 303.3, 102.65].forEach((size, axis) => expect(max[axis]).toBeCloseTo(size, 9));
    expect(settled("covering allowance=auto", 40, "slipcase").settings.coveringAllowance).toBeCloseTo(1.3, 9);
  });

  test("turn-in: 15, on a case q + t + square + 2c + g where that is more: 2 + 2 + 10 + 1 + 1", () => {
    // Boards 314 + 1 + 20 = 335 high, and 16 turned in at both ends.
    expect(blanksOf("clamshell box", "square=10")["case covering"]![1]).toBe(335 + 32);
    expect(blanksOf("clamshell box", "square=10; turn-in=15")["case covering"]![1]).toBe(335 + 30);
    expect(blanksOf("clamshell box")["case covering"]![1]).toBe(321 + 30);
  });

  test("joint strips: of the lining paper, or of the stock that is named", () => {
    const stock = (text: string) => partNamed(partsOf(item, "folded tray", text), "joint strip").stock;
    expect(stock("")).toBe("lining paper");
    expect(stock("lining=none")).toBe("lining paper");
    expect(stock("lining=unbuffered lining paper")).toBe("unbuffered lining paper");
    expect(stock("joint strips=folding card 0.4")).toBe("folding card 0.4");
  });
});
