import fc from "fast-check";
import { coverWeight } from "../../src/cutting/cover";
import { dualFeasible } from "../../src/cutting/dualFeasible";
import { type Job, prepareSheets } from "../../src/cutting/job";
import { lowerBound } from "../../src/cutting/lowerBound";
import { raiseLengths } from "../../src/cutting/raise";
import { sharpBound } from "../../src/cutting/sharpBound";
import type { Piece, Sheet } from "../../src/cutting/types";
import { cutUpSheets, type Instance, publishedClasses } from "../bench/cuttingClasses";
import { board, piece } from "./jobs";

function boundOf(pieces: readonly Piece[], ...sheets: readonly Sheet[]): number {
  const { job } = prepareSheets(pieces, sheets, {});
  return lowerBound(
    job,
    sheets.map((sheet) => sheet.price),
  );
}

describe("the bound", () => {
  const square = board(100, 100);

  it.each([false, true])("of very many different pieces counts every one of them: turn %p", (turn) => {
    // Each is over half both ways.
    const pieces = Array.from({ length: 4500 }, (_, i) => piece(510 + (i % 90), 510 + Math.floor(i / 90), { turn }));
    expect(boundOf(pieces, board(1000, 1000))).toBe(pieces.length);
  });

  it.each([
    ["of nothing is 0", [], [square], 0],
    ["counts area", [piece(50, 50, { count: 9 })], [square], 3],
    ["counts pieces over half both ways one a sheet", [piece(51, 51, { count: 4 })], [square], 4],
    ["counts wide strips that exclude each other across", [piece(10, 60, { count: 11 })], [square], 2],
    [
      "knows that two of 45 leave no room for 11 beside them",
      [piece(45, 100, { count: 2 }), piece(11, 100)],
      [square],
      2,
    ],
    ["lets a piece lie the way that counts less", [piece(60, 40, { count: 2, turn: true })], [board(120, 40)], 1],
    [
      "takes the cheaper size by area",
      [piece(100, 100, { count: 3 })],
      [square, board(200, 100, { name: "double", price: 1.5 })],
      2.5,
    ],
    [
      "uses what is in hand free of charge",
      [piece(100, 100, { count: 3 })],
      [square, board(100, 100, { name: "left", price: 0, onHand: 2 })],
      1,
    ],
  ] as const)("%s", (_, pieces, sheets, bound) => {
    expect(boundOf(pieces, ...sheets)).toBe(bound);
  });

  it("is never above the sheets that pieces were cut from", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 6 }),
        fc.integer({ min: 0, max: 12 }),
        fc.integer({ min: 2, max: 60 }),
        fc.nat(),
        (sheets, cuts, side, seed) => {
          const pieces = cutUpSheets(sheets, side, cuts, seed).pieces.map(({ length, width }) => piece(length, width));
          expect(boundOf(pieces, board(side, side))).toBeLessThanOrEqual(sheets);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe("the sharper bound", () => {
  it("is never above the sheets that pieces were cut from", () => {
    for (let seed = 1; seed <= 40; seed++) {
      const sheets = 1 + (seed % 6);
      const { job } = jobOf(cutUpSheets(sheets, 40, 2 + (seed % 7), seed));
      expect(sharpBound(job, job.size)).toBeLessThanOrEqual(sheets);
    }
  });

  it("proves a sheet more than the quick one for some of the published kind", () => {
    const gains = publishedClasses(2, 1)
      .filter(({ name, pieces }) => /^class [17],/.test(name) && pieces.length <= 60)
      .map((instance) => jobOf(instance).job)
      .map((job) => sharpBound(job, job.size) - lowerBound(job, [1]));
    expect(Math.max(...gains)).toBe(1);
  });
});

function jobOf({ pieces, sheet }: Instance): { job: Job } {
  const own = pieces.map(({ length, width }) => piece(length, width));
  return prepareSheets(own, [board(sheet.length, sheet.width)], {});
}

describe("raised lengths", () => {
  it("grow by what can lie beside none of the others", () => {
    // 4 and 5 leave 1 of 10 beside them: the 5 grows to 6. 7 has nothing beside it.
    expect(raiseLengths([4, 5, 7], [0, 1, 2], 10).lengths).toEqual([4, 6, 10]);
  });

  it("still fit together wherever the given ones did", () => {
    const lengths = fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(lengths, (given) => {
        const raised = raiseLengths(given, [...given.keys()], 30);
        const sum = (values: readonly number[], subset: number) =>
          values.reduce((total, value, index) => ((subset >> index) & 1 ? total + value : total), 0);
        for (let subset = 0; subset < 1 << given.length; subset++)
          if (sum(given, subset) <= 30) expect(sum(raised.lengths, subset)).toBeLessThanOrEqual(raised.side);
      }),
    );
  });
});

it("shares of lengths that fit together add up to no more than the side's", () => {
  const lengths = fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 8 });
  fc.assert(
    fc.property(lengths, fc.integer({ min: 1, max: 60 }), (given, shorter) => {
      const side = 60;
      const total = given.reduce((sum, length) => sum + length, 0);
      fc.pre(total <= shorter);
      for (const share of dualFeasible(given, side, 40)) {
        expect(share(side)).toBeCloseTo(1, 9);
        expect(given.reduce((sum, length) => sum + share(length), 0)).toBeLessThanOrEqual(share(shorter) + 1e-9);
      }
    }),
  );
});

it("covers a share with the cheapest sheets first, as far as they go", () => {
  const offers = [
    { share: 1, weight: 10, limit: Number.POSITIVE_INFINITY },
    { share: 0.5, weight: 4, limit: 3 },
  ];
  // Three halves for 12, one whole for 10.
  expect(coverWeight(2.5, offers)).toBe(22);
  expect(coverWeight(9, [{ share: 1, weight: 1, limit: 8 }])).toBe(Number.POSITIVE_INFINITY);
});
