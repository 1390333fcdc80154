import fc from "fast-check";
import { UNITS_PER_MM } from "../../src/cutting/grid";
import { planCutting } from "../../src/cutting/planCutting";
import { verifyPlan } from "../../src/cutting/verify";
import { MM_PER, type LengthUnit } from "../../src/measure/units";
import { board, piece, sheetStock } from "./jobs";

const SIXTY_FOURTH = MM_PER.in / 64;

test("tenths and hundredths of a millimetre and 1/64 in lie on the grid", () => {
  for (const length of [0.1, 0.01, SIXTY_FOURTH, 3.175])
    expect(Math.abs(length * UNITS_PER_MM - Math.round(length * UNITS_PER_MM))).toBeLessThan(1e-9);
});

test.each([
  ["1/8 in", 3.175],
  ["1/64 in", SIXTY_FOURTH],
  ["a third of a millimetre, between two steps of the grid", 1 / 3],
])("a gap and a trim of %s leave a plan that can be cut", (_, size) => {
  const stock = sheetStock(board(1000, 700));
  const pieces = [piece(203.4, 118, { count: 9 }), piece(88.9, 254, { count: 7 })];
  const options = { pieceGap: size, edgeTrim: size };
  expect(verifyPlan(planCutting(pieces, stock, options), pieces, stock, options)).toEqual([]);
});

test("two pieces and a gap that fill the sheet exactly in inches fit it", () => {
  const inch = (value: number) => value * MM_PER.in;
  const halves = [piece(inch(19 + 15 / 16), inch(30), { count: 2 })];
  const options = { pieceGap: inch(1 / 8) };
  const plan = planCutting(halves, sheetStock(board(inch(40), inch(30))), options);
  expect(plan.sheets).toHaveLength(1);
});

/** A length in some unit: whole steps of a rule, or any number. */
const lengthUpTo = (mm: number) =>
  fc.oneof(
    fc.integer({ min: 0, max: Math.floor(mm / SIXTY_FOURTH) }).map((marks) => marks * SIXTY_FOURTH),
    fc.integer({ min: 0, max: Math.floor(mm * 100) }).map((hundredths) => hundredths / 100),
    fc
      .tuple(fc.constantFrom<LengthUnit>("mm", "cm", "in"), fc.double({ min: 0, max: 1, noNaN: true }))
      .map(([unit, share]) => share * (mm / MM_PER[unit]) * MM_PER[unit]),
  );

test("plans of any gap, trim and unit pass the verifier", () => {
  fc.assert(
    fc.property(
      lengthUpTo(12),
      lengthUpTo(12),
      fc.array(fc.tuple(lengthUpTo(300), lengthUpTo(300), fc.boolean()), { maxLength: 12 }),
      fc.boolean(),
      (pieceGap, edgeTrim, sizes, roll) => {
        const pieces = sizes.map(([length, width, turn], index) =>
          piece(length + 0.4, width + 0.4, { id: String(index), turn, count: 1 + (index % 3) }),
        );
        const stock = roll
          ? ({ kind: "roll", roll: { name: "cloth", width: 400, pricePerM: 1 } } as const)
          : sheetStock(board(500, 400));
        const options = { pieceGap, edgeTrim, budget: { iterations: 40 } };
        expect(verifyPlan(planCutting(pieces, stock, options), pieces, stock, options)).toEqual([]);
      },
    ),
    { numRuns: process.env["SOAK"] === undefined ? 60 : 20_000 },
  );
});
