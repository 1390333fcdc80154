import { book, enclosed, expectLengths, partNamed, partsOf } from "./sizing";

const INCH = 25.4;

describe("slipcase: University of Brighton, Bookarts worksheet, book 113 x 157 x 12, board 2", () => {
  const parts = partsOf(
    book(157, 113, 12),
    "slipcase",
    "fit=2; fit width=none; covering allowance=none; construction=on base; through=side; wall board=2",
  );
  test.each([
    ["side", 163, 115],
    ["back wall", 163, 14],
    ["head wall", 113, 14],
  ] as const)("%s %d x %d", (name, length, width) => {
    const part = partNamed(parts, name);
    expectLengths([part.length, part.width], [length, width]);
  });
});

test("four-flap, inner piece: Cornell University Library, Manual Guide 28B, 1992: width W, length 2.5 H + 2 T", () => {
  const { length, width } = partNamed(
    partsOf(book(203, 130, 22), "four-flap wrapper", "fit=none; flaps=1 / 0.5; flap relief=none; wrapper card=0.4"),
    "inner piece",
  );
  // Printed 55.2 cm, exact 551.5 mm; the source ignores the card's caliper.
  expectLengths([length], [551.5], 1 + 4 * 0.4);
  expect(width).toBe(130);
});

test("soft phase box: University of Brighton, Bookarts worksheet, 101 x 76 x 7, 300 g/m2 card: strip 242 = 3 H + 2 T", () => {
  // Two full flaps go round the shorter side: 3 x 76 + 2 x 7; the source ignores the card's caliper.
  const { length } = partNamed(
    partsOf(book(76, 101, 7), "four-flap wrapper", "fit=none; flaps=1 / 1; flap relief=none; wrapper card=0.4"),
    "inner piece",
  );
  expectLengths([length], [242], 5 * 0.4);
});

describe("drop-spine box: AIC Book and Paper Group Wiki, BPG Drop Spine Box, 2020: 8 x 5.5 in book, board .098 in", () => {
  const board = 0.098;
  const parts = partsOf(
    book(8 * INCH, 5.5 * INCH, 1 * INCH),
    "clamshell box",
    // Width as measured, 1/16 in of play in height, the large tray half a board wider: from the source's own figures.
    `through=head; construction=around base; round to=none; covering allowance=none; fit width=none;
     fit height=1/16 in; fit depth=none; wall board=${board} in; nest clearance=${board / 2} in`,
  );
  test("the small base is as wide as the book", () => {
    expectLengths([partNamed(parts, "small base").width / INCH], [5.5]);
  });
  test("the small head and tail walls are W + 1 board = 5.598 in", () => {
    expectLengths([partNamed(parts, "small head wall").length / INCH], [5.598]);
  });
  test("the large base is W + 1.5 boards = 5.647 in", () => {
    expectLengths([partNamed(parts, "large base").width / INCH], [5.647]);
  });
  test("the trays are H + 1/16 = 8.0625 in long inside", () => {
    expectLengths([partNamed(parts, "small base").length / INCH], [8.0625]);
  });
});

test("walls on the base: W + 1 board by L + 2 boards for a three-walled tray (a binder's notes, 2020; weak source)", () => {
  const base = partNamed(
    partsOf(book(200, 150, 30), "clamshell box", "construction=on base; round to=none; wall board=2.5"),
    "small base",
  );
  expectLengths([base.length, base.width], [200 + 1 + 2 + 5, 150 + 1 + 2 + 2.5]);
});

test("case joint: University of Brighton, hard cover for a multi-section book: board 2, gap 8 = 5 + 2 + 1, square 3", () => {
  const covering = partNamed(
    partsOf(book(300, 210, 40), "clamshell box", "joint=8; square=3; wall board=2; construction=flanged base"),
    "case covering",
  );
  // 2 boards of 222.5, 2 joints of 8, spine 51.4, 2 turn-ins of 15
  expectLengths([covering.length, covering.width], [Math.ceil(2 * 222.5 + 16 + 51.4 + 30), 321 + 30]);
});

describe("portfolio: University of Brighton, Bookarts worksheet Portfolio case, board 2, a thing 280 x 200 x 12", () => {
  const text = "fit=none; covering allowance=none; flap relief=2; wall board=2; turn-in=20; round to=none";
  const parts = partsOf(book(280, 200, 12), "flap portfolio", text);
  test.each([
    ["portfolio board", "H x W", 280, 200],
    ["head flap", "W x (H/2 - 1)", 200, 139],
    ["head riser", "W x T", 200, 12],
    ["fore-edge riser", "a spine, H x (T + 2)", 280, 14],
    ["portfolio spine", "H x (T + 4)", 280, 16],
  ])("%s is %s", (name, _, length, width) => {
    const part = partNamed(parts, name);
    expectLengths([part.length, part.width], [length, width]);
  });
  // One relief is for all flaps. The source takes 1 mm off each half flap and nothing off the third panel, which is our
  // fore-edge flap: with the relief of its half flaps it is 2 mm narrower; without any it is a whole panel.
  test.each([
    ["2", 139, 198],
    ["none", 140, 200],
  ])(
    "with a relief of %s the head flaps are %d long and the fore-edge flap, a panel H x W, %d wide",
    (relief, half, wide) => {
      const flaps = partsOf(book(280, 200, 12), "flap portfolio", `${text}; flap relief=${relief}`);
      const [head, fore] = [partNamed(flaps, "head flap"), partNamed(flaps, "fore-edge flap")];
      expectLengths([head.length, head.width, fore.length, fore.width], [200, half, 280, wide]);
    },
  );
  test("the gaps are 4 mm", () => {
    expect(enclosed(book(280, 200, 12), "flap portfolio", text).cover!.joint).toBe(4);
  });
});

test("phase box: reCollections (Australia): flaps 3 mm shorter than the base", () => {
  // Fit 2 and no card to speak of: base 302 x 212, full flaps 299 and 209.
  const parts = partsOf(book(300, 210, 40), "four-flap wrapper", "fit=2; flaps=1 / 1; wrapper card=0.3; round to=none");
  for (const [name, base] of [
    ["inner piece", 302],
    ["outer piece", 212],
  ] as const) {
    const { folds } = partNamed(parts, name);
    expectLengths([folds.alongLength[0]!], [base - 3]);
  }
});
