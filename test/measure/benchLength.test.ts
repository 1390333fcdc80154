import fc from "fast-check";
import { benchLength } from "../../src/measure/benchLength";

test.each([
  // 44.9 is a tenth short of 45, which still reads as 45; 42.9 likewise of 43, 45.2 a little more than 45.
  [44.9, "mm", "45"],
  [44.8, "mm", "45 −"],
  [45.2, "mm", "45 +"],
  [45.25, "mm", "45.5 −"],
  [307, "mm", "307"],
  [42.5, "cm", "4.25"],
  [44.8, "cm", "4.5 −"],
  // 20 5/8 in is 523.875 mm; 1/32 in is 0.79375 mm.
  [523.875, "in", "20 5/8"],
  [524.1, "in", "20 5/8 +"],
  [523.7, "in", "20 5/8 −"],
  [524.4, "in", "20 21/32 −"],
  [25.4 / 64, "in", "1/32 −"],
] as const)("%d mm reads as %s %s", (mm, unit, reading) => {
  expect(benchLength(mm, unit)).toBe(reading);
});

const STEPS = { mm: 0.5, cm: 0.5, in: 25.4 / 32 } as const;
const MM = { mm: 1, cm: 10, in: 25.4 } as const;

test("a reading is the nearest mark, and its sign says on which side of it the size is", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 3_000_000 }), fc.constantFrom("mm", "cm", "in"), (microns, unit) => {
      const size = microns / 1000;
      const [, whole = "0", fraction = "", sign = ""] =
        /^(?:(\d+(?:\.\d+)?)(?= |$))?(?: ?(\d+\/\d+))?(?: ([+−]))?$/.exec(benchLength(size, unit)) ?? [];
      const [above = 0, below = 1] = fraction
        .split("/")
        .filter((part) => part !== "")
        .map(Number);
      const mark = (Number(whole) + above / below) * MM[unit];
      const off = size - mark;
      expect(Math.abs(off)).toBeLessThanOrEqual(STEPS[unit] / 2 + 1e-6);
      expect(sign).toBe(Math.abs(off) <= 0.1 + 1e-6 ? "" : off > 0 ? "+" : "−");
    }),
  );
});
