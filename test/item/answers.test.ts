import fc from "fast-check";
import { partList } from "../../src/covering/partList";
import { boardParts } from "../../src/enclosure/part";
import { KINDS } from "../../src/enclosure/registry";
import { settingsOf } from "../../src/settings/settingsOf";
import {
  baseAnswer,
  blankAnswer,
  boardAreaAnswer,
  insideAnswer,
  netAreaM2,
  outsideAnswer,
  PART_MEASURES,
  partAnswer,
  wallAnswer,
  type Answer,
} from "../../src/item/answers";
import { partsAnswer } from "../../src/item/partsAnswer";
import { problemOf, sizeRow, type Row, type Sized } from "../../src/item/sizeItem";

const ROW = { height: 300, width: 210, depth: 40 };
const sized = (row: Row, text = ""): Sized => sizeRow(row, settingsOf([text]))!;

type Table = readonly (readonly unknown[])[];

describe("what no cell can hold reaches the core from a script", () => {
  test.each([
    [Number.NaN, "height: got NaN; give a length such as 40, 40 mm or 1 9/16 in"],
    [
      Number.POSITIVE_INFINITY,
      "height: got Infinity; a plain number above 5 m is refused; write its unit, such as 5.2 m, if it is meant",
    ],
    [Number.NEGATIVE_INFINITY, "height: got -Infinity; give a length above zero such as 40, 40 mm or 1 9/16 in"],
    [[300], "height: got something that is not a number or a text; give a length such as 40, 40 mm or 1 9/16 in"],
    [new Date(0), "height: got something that is not a number or a text; give a length such as 40, 40 mm or 1 9/16 in"],
  ])("height %p", (height, message) => {
    expect(() => sizeRow({ ...ROW, height, enclosure: "tray" }, settingsOf([]))).toThrow(message);
    expect(problemOf({ ...ROW, height, enclosure: "tray" }, settingsOf([]))).toBe(message);
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY])("a setting of %p is refused", (value) => {
    for (const setting of ["fit", "turn-in", "wall board", "wall layers", "round to", "contingency", "weight", "flaps"])
      expect(() => settingsOf([[[setting, value]]])).toThrow(`${setting}: got ${value}; give `);
  });
});

/** Items in every kind, in every unit. */
const anySized = fc
  .record({
    height: fc.integer({ min: 200, max: 9000 }),
    width: fc.integer({ min: 200, max: 9000 }),
    depth: fc.integer({ min: 60, max: 2000 }),
    kind: fc.constantFrom(...KINDS),
    unit: fc.constantFrom("mm", "cm", "in"),
    text: fc.constantFrom(
      "",
      "fit=loose; turn-in=18",
      "cushion base=3; base board=3",
      "rests on=foot",
      "wall board=80 pt",
    ),
  })
  .map(({ height, width, depth, kind, unit, text }) =>
    sized(
      { height: `${height / 10} mm`, width: `${width / 10} mm`, depth: `${depth / 10} mm`, enclosure: kind.name },
      `unit=${unit}; ${text}`,
    ),
  );

describe("the tables say what the single figures say", () => {
  test("PART of each part and measure is its cell in the table of all", () => {
    fc.assert(
      fc.property(anySized, (of) => {
        const table = partAnswer(of, "all", "all") as Table;
        expect(table[0]).toEqual(["part", ...PART_MEASURES]);
        for (const [name, ...figures] of table.slice(1))
          PART_MEASURES.forEach((measure, index) =>
            expect(partAnswer(of, String(name), measure)).toEqual(figures[index]),
          );
      }),
      { numRuns: 40 },
    );
  });

  test("PARTS has the parts of PART, in the order in which they are cut, with its figures", () => {
    fc.assert(
      fc.property(anySized, (of) => {
        const table = partsAnswer(of) as Table;
        expect(table.slice(1).map(([name]) => name)).toEqual(
          partList(of.assembly, of.settings).map((part) => part.fullName),
        );
        for (const row of table.slice(1))
          table[0]!
            .slice(1, -1)
            .forEach((measure, index) =>
              expect(partAnswer(of, String(row[0]), String(measure))).toEqual(row[index + 1]),
            );
      }),
      { numRuns: 40 },
    );
  });

  test("WALL, BASE and COVER of each name is its row in the table of all", () => {
    fc.assert(
      fc.property(anySized, (of) => {
        for (const measure of ["length", "height"] as const)
          for (const [name, figure] of (wallAnswer(of, "all", measure) as Table).slice(1))
            expect(wallAnswer(of, String(name), measure)).toBe(figure);
        for (const [name, height, width] of (baseAnswer(of, "all", "all") as Table).slice(1))
          expect(baseAnswer(of, String(name), "all")).toEqual([[height, width]]);
        for (const [name, along, across] of (blankAnswer(of, "all", "all") as Table).slice(1))
          expect(blankAnswer(of, String(name), "all")).toEqual([[along, across]]);
      }),
      { numRuns: 60 },
    );
  });

  test("INSIDE and OUTSIDE all are the three directions side by side", () => {
    fc.assert(
      fc.property(anySized, (of) => {
        for (const answer of [insideAnswer, outsideAnswer])
          expect(answer(of, "all")).toEqual([["height", "width", "depth"].map((direction) => answer(of, direction))]);
      }),
      { numRuns: 60 },
    );
  });
});

describe("areas", () => {
  test("of all boards is the sum over the boards in stock and out of it", () => {
    fc.assert(
      fc.property(anySized, (of) => {
        const stocks = new Set(
          boardParts(of.assembly).flatMap(({ placed, stock }) =>
            ["card", "strip"].includes(placed!.role) ? [] : [stock],
          ),
        );
        const sum = [...stocks].reduce((total, stock) => total + (boardAreaAnswer(of, stock) as number), 0);
        expect(boardAreaAnswer(of, "all")).toBeCloseTo(sum, 7);
      }),
    );
  });

  test("each part counts as often as it is cut", () => {
    const parts = partList(sized({ ...ROW, enclosure: "tray" }).assembly, settingsOf([]));
    // Base 303 x 213; side walls 307 x 44.5 and head walls 213 x 44.5, two of each.
    expect(netAreaM2(parts.filter((part) => part.material === "board"))).toBeCloseTo(0.110819, 12);
    expect(netAreaM2([])).toBe(0);
  });
});

test("an answer in inches times 25.4 is the answer in mm, but for the step that inside sizes are rounded to", () => {
  fc.assert(
    fc.property(fc.constantFrom(...KINDS), ({ name }) => {
      const row = { height: "300 mm", width: "210 mm", depth: "40 mm", enclosure: name };
      const inUnit = (unit: string): Answer => outsideAnswer(sized(row, `round to=none; unit=${unit}`), "all");
      const [mm] = inUnit("mm") as readonly (readonly number[])[];
      const [inches] = inUnit("in") as readonly (readonly number[])[];
      const [cm] = inUnit("cm") as readonly (readonly number[])[];
      mm!.forEach((size, index) => {
        expect(inches![index]! * 25.4).toBeCloseTo(size, 6);
        expect(cm![index]! * 10).toBeCloseTo(size, 6);
      });
    }),
  );
});
