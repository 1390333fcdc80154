import { bareOutsideOf, book, enclosed, expectLengths, hwd, insideOf, partNamed, partsOf } from "./sizing";

// By hand: item 300 x 210 x 40, boards 2 mm, covering allowance 1, standard fit, inside sizes in steps of 0.5, through
// side. Inside 303 x 213 x 42.5 (300 + 1 + 2, 210 + 1 + 2, 40 + 0.5 + 2).
const item = book(300, 210, 40);

describe.each([
  [
    "tray",
    "construction=around base",
    { base: [303, 213, 1], "side wall": [307, 44.5, 2], "head wall": [213, 44.5, 2] },
  ],
  ["tray", "construction=on base", { base: [307, 217, 1], "side wall": [307, 42.5, 2], "head wall": [213, 42.5, 2] }],
  [
    "tray",
    "construction=flanged base",
    { base: [303, 213, 1], "side wall": [307, 44.5, 2], "head wall": [213, 44.5, 2], "flange card": [327, 237, 1] },
  ],
  [
    "tray",
    "construction=around base; wall layers=2",
    {
      base: [307, 217, 1],
      "inner side wall": [307, 42.5, 2],
      "inner head wall": [213, 42.5, 2],
      "outer side wall": [307, 44.5, 2],
      "outer head wall": [221, 44.5, 2],
    },
  ],
  ["tray", "construction=around base; through=head", { "side wall": [303, 44.5, 2], "head wall": [217, 44.5, 2] }],
  // End cards of a flanged tray: 217 wide and 42.5 + 2 + 0.4 high, cut 10 larger on each edge and to whole millimetres.
  ["tray", "end cards=yes", { "end card": [237, 65, 2] }],
  // The box's outside 307 x 217 x 44.9 makes the lid's inside 310 x 220 x 42.5.
  ["lidded box", "", { "lid base": [314, 224, 1], "lid side wall": [314, 42.5, 2], "lid head wall": [220, 42.5, 2] }],
  [
    "three-tray box",
    "",
    { "bottom side wall": [314, 37, 2], "lid side wall": [314, 11, 2], "inner side wall": [307, 44.5, 2] },
  ],
  [
    "slipcase",
    "",
    { side: [306, 212.5, 2], "back wall": [306, 42, 1], "head wall": [210.5, 42, 2], wrap: [501, 336, 1] },
  ],
  [
    "slipcase",
    "construction=flanged base",
    { side: [302, 210.5, 2], "flange card": [326, 233, 2], "back wall": [306, 46, 1], "head wall": [210.5, 46, 2] },
  ],
  ["slipcase", "construction=around base; through=head", { "back wall": [302, 46, 1], "head wall": [212.5, 46, 2] }],
  [
    "clamshell box",
    "construction=flanged base",
    {
      "small base": [303, 213, 1],
      "small fore-edge wall": [307, 44.5, 1],
      "case board": [321, 222.5, 2],
      "case spine": [321, 51.4, 1],
    },
  ],
  // Blank 303 + 2 x 42.5 by 213 + 2 x 42.5.
  ["folded tray", "fold=cut", { blank: [388, 298, 1], "joint strip": [42.5, 30, 4] }],
  // Tabs take a board on each side: inside width 210 + 1 + 2 + 4 = 217; blank 303 + 85 + 4 by 217 + 85 + 4.
  ["folded tray", "fold=crease", { blank: [392, 306, 1] }],
  // Snug: 301 x 211 x 41, card 0.4. Inner: base 301.4, walls 41.4 and 41.8, flaps 1.5 x (301 - 3) = 447: 831.6 down;
  // 1 narrower than 211. Outer: base 211.4, walls 42.6 and 43, flaps 1.5 x 208 = 312: 609; 301 + 0.8 wide, down.
  ["four-flap wrapper", "", { "inner piece": [831, 210, 1], "outer piece": [609, 301, 1] }],
  // No relief: flaps of the whole panel, 301 x 1.5 and 211 x 1.5: 836.1 and 613.5, both down; the inner as wide as 211.
  ["four-flap wrapper", "flap relief=none", { "inner piece": [836, 211, 1], "outer piece": [613, 301, 1] }],
  // Snug: boards 301 x 211. Riser 40 + 1 + 1 = 42; its flap half of 301 - 3. The fore-edge riser is a board and two
  // coverings higher, 42 + 2 + 1, its flap 211 - 3; the spine once more as much.
  [
    "flap portfolio",
    "",
    {
      "portfolio board": [301, 211, 2],
      "portfolio spine": [301, 48, 1],
      "head riser": [211, 42, 2],
      "head flap": [211, 149, 2],
      "fore-edge riser": [301, 45, 1],
      "fore-edge flap": [301, 208, 1],
      // 15 + 211 + 5 + 48 + 5 + 211 + 5 + 45 + 5 + 208 + 15, joints of 5; 301 + 30.
      "case covering": [773, 331, 1],
      // 25 + 5 + 42 + 5 + 149 + 15; 211 + 30.
      "flap covering": [241, 241, 2],
      // Into a joint 5 + 2 x 2: 25 + 9 + 48 + 9 + 25; 25 + 9 + 42 + 9 + 25; 25 + 9 + 45 + 9 + 25.
      "spine lining": [301, 116, 1],
      "head riser lining": [211, 110, 2],
      "fore-edge riser lining": [301, 113, 1],
      "head flap lining": [207, 145, 2],
    },
  ],
  // Risers of 4 mm must stand off by 4 + 1 = 5: a joint of hypot(2, 5) = 5.385, not 5, and over the flap hypot(5, 4) =
  // 6.403. Spine 42 + 8 + 2, riser 47: 15 + 211 + 5.385 + 52 + 5.385 + 211 + 5.385 + 47 + 6.403 + 208 + 15 = 781.6.
  ["flap portfolio", "case board=2; wall board=4", { "portfolio spine": [301, 52, 1], "case covering": [782, 331, 1] }],
] as const)("%s, %s", (kind, text, wanted) => {
  const parts = partsOf(item, kind, `${kind === "clamshell box" ? "through=side; " : ""}${text}`);
  test.each(Object.entries(wanted))("%s is %p", (name, [length, width, count]) => {
    const part = partNamed(parts, name);
    expectLengths([part.length, part.width, part.count], [length, width, count]);
  });
});

test("a flange card is finished flush with the walls: 307 x 217", () => {
  const { placed } = partNamed(partsOf(item, "tray"), "flange card");
  expectLengths([placed!.length, placed!.width], [307, 217]);
});

test("the inside of a tray is 303 x 213 x 42.5", () => {
  expectLengths(insideOf(enclosed(item, "tray"), ""), [303, 213, 42.5]);
});

test("a lid's depth is rounded down to 42.5, or its reveal is lost", () => {
  expectLengths(insideOf(enclosed(item, "lidded box"), "lid"), [310, 220, 42.5]);
});

test("a lid of a box over 120 high reaches 75 down it, unless it is set: 115 deep inside 117.5, outside 119.9", () => {
  // Lid depth 75 and covering 0.5: 75.5. Full: 119.9 + 1 - 3 = 117.9, down.
  expectLengths([insideOf(enclosed(book(300, 210, 115), "lidded box"), "lid")[2]!], [117.5]);
  expectLengths([insideOf(enclosed(book(300, 210, 116), "lidded box"), "lid")[2]!], [75.5]);
  expectLengths([insideOf(enclosed(book(300, 210, 116), "lidded box", "lid depth=full"), "lid")[2]!], [118.5]);
});

test("a three-tray box leaves a neck of 10: bottom 35 deep (44.9 - 10 rounded up), lid 11", () => {
  const box = enclosed(item, "three-tray box");
  expectLengths(insideOf(box, "bottom"), [310, 220, 35]);
  expectLengths(insideOf(box, "lid"), [310, 220, 11]);
});

test("a slipcase is 307 x 213.5 x 47 outside, covered", () => {
  expectLengths(hwd(enclosed(item, "slipcase").outside), [307, 213.5, 47]);
});

test("a flanged clamshell: small 307 x 215 x 44.9 outside, large 310 x 217 x 47 inside, 314 x 219 x 49.4 outside", () => {
  const box = enclosed(item, "clamshell box", "construction=flanged base; through=side");
  expectLengths(bareOutsideOf(box, "small"), [307, 215, 44.9]);
  expectLengths(insideOf(box, "large"), [310, 217, 47]);
  expectLengths(bareOutsideOf(box, "large"), [314, 219, 49.4]);
});

test("its joint is 5, and closed it is 322 x 228.08 x 56.4", () => {
  const box = enclosed(item, "clamshell box", "construction=flanged base; through=side");
  expect(box.cover?.joint).toBe(5);
  // 222.5 + sqrt(5^2 - 2^2) + 1
  expectLengths(hwd(box.outside), [322, 222.5 + Math.sqrt(21) + 1, 56.4]);
});

test("the folds of a cut folded tray lie a wall's height from each edge", () => {
  const { folds, corners } = partNamed(partsOf(item, "folded tray"), "blank");
  expectLengths(folds.alongLength, [42.5, 345.5]);
  expectLengths(folds.alongWidth, [42.5, 255.5]);
  expect(corners).toEqual({ form: "notch", alongLength: 40.5, alongWidth: 42.5 });
});

test("the creases of a wrapper's inner piece: flap, wall, base, wall one card higher, flap", () => {
  // (301 - 3) / 2, + 41.4, + 301.4, + 41.8
  const { folds, grain } = partNamed(partsOf(item, "four-flap wrapper"), "inner piece");
  expectLengths(folds.alongLength, [149, 190.4, 491.8, 533.6]);
  expect(grain).toBe("along width");
});

test("what is lost to whole millimetres is lost on the last flap", () => {
  const { folds, length } = partNamed(partsOf(item, "four-flap wrapper"), "inner piece");
  // Flaps 149 and 298; 831.6 is cut 831.
  expectLengths([length - folds.alongLength.at(-1)!], [298 - 0.6]);
});

test("a relief that leaves no panel is refused by its name", () => {
  expect(() => enclosed(item, "four-flap wrapper", "flap relief=211")).toThrow(
    "flap relief: got 211 mm; give none, or less than 211 mm, the shorter side of the panel",
  );
});

test("a standing object lies the way rests on says", () => {
  expectLengths(insideOf(enclosed(item, "tray", "rests on=foot"), ""), [43, 213, 302.5]);
  expectLengths(insideOf(enclosed(item, "tray", "rests on=edge"), ""), [303, 43, 212.5]);
});

test("cushioning is added before rounding: base and top to the depth, sides twice to height and width", () => {
  const box = enclosed(item, "tray", "cushion base=5; cushion sides=6; cushion top=3");
  expectLengths(insideOf(box, ""), [315, 225, 50.5]);
});

test("with a thicker base board the walls of a tray around its base grow by that board", () => {
  expectLengths([partNamed(partsOf(item, "tray", "base board=3"), "side wall").width], [45.5]);
});
