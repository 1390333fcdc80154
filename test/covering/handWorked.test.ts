import { templateOfBlank } from "../../src/drawing/templateOfBlank";
import { book, enclosed, partNamed, partsOf } from "../enclosure/sizing";
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
    ["inside turn=20", { "wall strip": [1, 1063, 82], "base panel": [1, 303, 213], "floor lining": [1, 301, 211] }],
    // Longer than full is full.
    ["inside turn=80", { "wall strip": [1, 1063, 120], "base panel": [1, 303, 213], "floor lining": [1, 301, 211] }],
    ["turn-in=20.5", { "wall strip": [1, 1069, 131], "base panel": [1, 303, 213], "floor lining": [1, 301, 211] }],
    ["covering=none", { "floor lining": [1, 301, 211] }],
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
    "cut away the corners 104.4 x 89.4, leaving tabs 15 wide",
  );
});

test("corner sizes are along the grain first, then across, in the table as in the drawing", () => {
  // A landscape tray's grain runs along its width, in which the tabs are left.
  const landscape = enclosed(book(210, 300, 40), "tray");
  const settings = settledOf("cover style=one piece");
  const [blank] = landscape.kind.blanks(landscape, settings);
  expect(blank!.note).toContain("corners 89.4 x 104.4,");
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

test("a three-tray box: bottom 36 and lid 11 deep inside, 314 x 224 outside", () => {
  expect(blanksOf("three-tray box")).toEqual({
    "inner wall strip": [1, 1063, 120],
    "inner base panel": [1, 303, 213],
    "inner floor lining": [1, 301, 211],
    // 15 + 38.4 + 2 + 36 + 15 = 106.4; 15 + 13 + 2 + 11 + 15 = 56.
    "bottom wall strip": [1, 1091, 107],
    "bottom base panel": [1, 310, 220],
    "bottom floor lining": [1, 308, 218],
    "lid wall strip": [1, 1091, 56],
    "lid base panel": [1, 310, 220],
    "lid floor lining": [1, 308, 218],
  });
});

test("a folded tray is covered like a tray of one board: outside 307 x 217 x 44.5", () => {
  expect(blanksOf("folded tray")).toEqual({
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
