import fc from "fast-check";
import { InputError } from "../../src/measure/errors";
import { readLength, type LengthOptions } from "../../src/measure/readLength";
import { MM_PER, type LengthUnit } from "../../src/measure/units";

const inMm: LengthOptions = { argument: "depth", unit: "mm" };
const inInches: LengthOptions = { argument: "depth", unit: "in" };

describe("a number is in the unit of the workbook", () => {
  test.each<[number, LengthUnit, number]>([
    [40, "mm", 40],
    [4.05, "cm", 40.5],
    [0.04, "m", 40],
    [10.375, "in", 263.525],
    [1.5, "ft", 457.2],
    [5000, "mm", 5000],
    [0.4, "mm", 0.4],
  ])("%p %s is %p mm", (value, unit, mm) => {
    expect(readLength(value, { argument: "height", unit })).toBeCloseTo(mm, 9);
  });
});

describe("a text is read with its own unit, or in the unit of the workbook", () => {
  test.each<[string, number]>([
    ["40", 40],
    ["40 mm", 40],
    ["40mm", 40],
    ["40 MM", 40],
    ["40 millimetres", 40],
    ["25.4 cm", 254],
    ["25,4 cm", 254],
    ["25,45 cm", 254.5],
    [".5 cm", 5],
    ["0.4 m", 400],
    ["1 metre", 1000],
    ["6 m", 6000],
    ["10 3/8 in", 263.525],
    ["10-3/8 in", 263.525],
    ['10 3/8"', 263.525],
    ["10 3/8 in.", 263.525],
    ["10⅜ in", 263.525],
    ["10 ⅜ inches", 263.525],
    ["10⅜″", 263.525],
    ["10⅜”", 263.525],
    ["10 3⁄8 in", 263.525],
    ["10³⁄₈ in", 263.525],
    ["10 3/8''", 263.525],
    ["10 3/8 ’’", 263.525],
    ["3/8 in", 9.525],
    ["1/2 cm", 5],
    ["10 1/2 cm", 105],
    ["⅜ in", 9.525],
    ["½ inch", 12.7],
    ["2 7/10 in", 68.58],
    ["1 ft", 304.8],
    ["2 feet", 609.6],
    ["1.5 ft", 457.2],
    ["1'", 304.8],
    ["1′", 304.8],
    ["1’", 304.8],
    [`1' 2 1/2"`, 368.3],
    ["1′ 2½″", 368.3],
    [`1'-2 1/2"`, 368.3],
    [`1'2"`, 355.6],
    ["1' 2", 355.6],
    ["1 ft 2 in", 355.6],
    ["1 ft, 2 in", 355.6],
    ["1 foot 2 1/2 inches", 368.3],
    ["  40  mm  ", 40],
    ["40\u00a0mm", 40],
    ["40\u2009mm", 40],
    ["40\u202fmm", 40],
    ["\u200e40 mm\u200e", 40],
    ["10\u00a03/8\u00a0in", 263.525],
    ["４０ｍｍ", 40],
    ["40 ㎜", 40],
  ])("%s", (text, mm) => {
    expect(readLength(text, inMm)).toBeCloseTo(mm, 9);
  });

  test.each<[string, number]>([
    ["10 3/8", 263.525],
    ["10,5", 266.7],
    ["264 mm", 264],
    ["3/8", 9.525],
  ])("%s in a workbook in inches", (text, mm) => {
    expect(readLength(text, inInches)).toBeCloseTo(mm, 9);
  });
});

describe("points of caliper and zero are read only where they make sense", () => {
  const caliper: LengthOptions = { argument: "wall board", unit: "mm", points: true, limitMm: 10 };
  const zero: LengthOptions = { argument: "fit width", unit: "mm", zero: true };

  test.each<[unknown, LengthOptions, number]>([
    ["80 pt", caliper, 2.032],
    ["80pt.", caliper, 2.032],
    ["98 points", caliper, 2.4892],
    ["2", caliper, 2],
    ["none", zero, 0],
    [" None ", zero, 0],
    ["0", zero, 0],
    ["0 mm", zero, 0],
    [0, zero, 0],
    [1, zero, 1],
  ])("%p with %j is %p mm", (value, options, mm) => {
    expect(readLength(value, options)).toBeCloseTo(mm, 9);
  });

  test.each<[unknown, LengthOptions, string]>([
    ["80 pt", inMm, 'depth: got "80 pt"; give a length such as 40, 40 mm or 1 9/16 in; pt is read for calipers only'],
    ["none", inMm, 'depth: got "none"; give a length such as 40, 40 mm or 1 9/16 in'],
    ["thin", caliper, 'wall board: got "thin"; give a length such as 2, 2 mm or 80 pt'],
    [12, caliper, "wall board: got 12; give a length of at most 10 mm"],
    ["500 pt", caliper, 'wall board: got "500 pt"; give a length of at most 10 mm'],
    [-1, zero, "fit width: got -1; give a length such as 40, 40 mm or 1 9/16 in, or none"],
    ["tight", zero, 'fit width: got "tight"; give a length such as 40, 40 mm or 1 9/16 in, or none'],
  ])("%p with %j is refused", (value, options, message) => {
    expect(refusal(value, options)).toBe(message);
  });
});

describe("what is not wholly understood is refused, with the cure", () => {
  const expected = "give a length such as 40, 40 mm or 1 9/16 in";
  const aboveZero = "give a length above zero such as 40, 40 mm or 1 9/16 in";
  const odd = "fractions other than halves and quarters are read in inches only";
  const plain = "a plain number above 5 m is refused; write its unit, such as 5.2 m, if it is meant";
  const date = "a plain number above 5 m is refused; may be a date: type '3/8 in";
  const comma = "a comma before three figures may mean thousands or decimals; write 1234 or 1.234";

  test.each<[unknown, string]>([
    [undefined, `depth: got a blank; ${expected}`],
    [null, `depth: got a blank; ${expected}`],
    ["", `depth: got a blank; ${expected}`],
    ["  \u00a0", `depth: got a blank; ${expected}`],
    [true, `depth: got TRUE; ${expected}`],
    [false, `depth: got FALSE; ${expected}`],
    [{}, `depth: got something that is not a number or a text; ${expected}`],
    [[40], `depth: got something that is not a number or a text; ${expected}`],
    [NaN, `depth: got NaN; ${expected}`],
    [Infinity, `depth: got Infinity; ${plain}`],
    [-Infinity, `depth: got -Infinity; ${aboveZero}`],
    [0, `depth: got 0; ${aboveZero}`],
    [-0, `depth: got 0; ${aboveZero}`],
    [-5, `depth: got -5; ${aboveZero}`],
    ["-5 mm", `depth: got "-5 mm"; ${aboveZero}`],
    ["−5 mm", `depth: got "−5 mm"; ${aboveZero}`],
    ["0 mm", `depth: got "0 mm"; ${aboveZero}`],
    ["4O mm", `depth: got "4O mm"; ${expected}`],
    ["24 cm?", `depth: got "24 cm?"; ${expected}`],
    ["ca. 40", `depth: got "ca. 40"; ${expected}`],
    ["~40", `depth: got "~40"; ${expected}`],
    ["40-50", `depth: got "40-50"; ${expected}; of a range give the larger end`],
    ["40 x 30", `depth: got "40 x 30"; ${expected}`],
    ["40 cm2", `depth: got "40 cm2"; ${expected}`],
    ["40 cm²", `depth: got "40 cm²"; ${expected}`],
    ["10² mm", `depth: got "10² mm"; ${expected}`],
    ["①", `depth: got "①"; ${expected}`],
    ["40 kg", `depth: got "40 kg"; ${expected}`],
    ["40 yd", `depth: got "40 yd"; ${expected}`],
    ["mm", `depth: got "mm"; ${expected}`],
    ["mm 40", `depth: got "mm 40"; ${expected}`],
    ["40 mm 3", `depth: got "40 mm 3"; ${expected}`],
    ["1 m 20 cm", `depth: got "1 m 20 cm"; ${expected}`],
    ["1 250 mm", `depth: got "1 250 mm"; ${expected}`],
    ["1e3", `depth: got "1e3"; ${expected}`],
    ["0x20", `depth: got "0x20"; ${expected}`],
    ["Infinity", `depth: got "Infinity"; ${expected}`],
    ["NaN", `depth: got "NaN"; ${expected}`],
    ["#VALUE!", `depth: got "#VALUE!"; ${expected}`],
    ["#N/A", `depth: got "#N/A"; ${expected}`],
    ["TRUE", `depth: got "TRUE"; ${expected}`],
    ["3/8/2024", `depth: got "3/8/2024"; ${expected}`],
    ["31.5.2024", `depth: got "31.5.2024"; ${expected}`],
    ["20/30 cm", `depth: got "20/30 cm"; ${expected}; ${odd}`],
    ["10 3/8", `depth: got "10 3/8"; ${expected}; ${odd}`],
    ["3/8 mm", `depth: got "3/8 mm"; ${expected}; ${odd}`],
    ["7/8", `depth: got "7/8"; ${expected}; ${odd}`],
    ["103/8 in", `depth: got "103/8 in"; ${expected}`],
    ["3/0 in", `depth: got "3/0 in"; ${expected}`],
    ["0/8 in", `depth: got "0/8 in"; ${expected}`],
    ["10 9/8 in", `depth: got "10 9/8 in"; ${expected}`],
    ["10.5 3/8 in", `depth: got "10.5 3/8 in"; ${expected}`],
    [`1' 14"`, `depth: got "1' 14""; ${expected}`],
    ["1' 2 cm", `depth: got "1' 2 cm"; ${expected}`],
    ["1'-2'", `depth: got "1'-2'"; ${expected}`],
    ["1.234,5 mm", `depth: got "1.234,5 mm"; ${expected}`],
    ["1,234 mm", `depth: got "1,234 mm"; ${comma}`],
    ["1,234.5 mm", `depth: got "1,234.5 mm"; ${comma}`],
    [
      "fit=loose; wall board=3 mm; lining=none, covering=cloth",
      `depth: got "fit=loose; wall board=3 mm; lining=none…"; ${expected}`,
    ],
    [5000.1, `depth: got 5000.1; ${plain}`],
    ["6000", `depth: got "6000"; ${plain}`],
    [1e9, `depth: got 1000000000; ${plain}`],
    [35063, `depth: got 35063; ${plain}`],
    [36526, `depth: got 36526; ${date}`],
    [45359, `depth: got 45359; ${date}`],
    [73050, `depth: got 73050; ${date}`],
    [73051, `depth: got 73051; ${plain}`],
    [45359.5, `depth: got 45359.5; ${plain}`],
    ["45359", `depth: got "45359"; ${date}`],
    ["25 m", `depth: got "25 m"; give a length of at most 20 m`],
    ["9".repeat(400) + " mm", `depth: got "${"9".repeat(39)}…"; give a length of at most 20 m`],
  ])("%p", (value, message) => {
    expect(refusal(value, inMm)).toBe(message);
  });

  test.each<[LengthUnit, string]>([
    ["mm", "40, 40 mm or 1 9/16 in"],
    ["cm", "4, 40 mm or 1 9/16 in"],
    ["m", "0.04, 40 mm or 1 9/16 in"],
    ["in", "10 3/8, 10 3/8 in or 264 mm"],
    ["ft", "1 1/2, 18 in or 457 mm"],
  ])("the examples suit a workbook in %s, and each of them is read", (unit, examples) => {
    expect(refusal("?", { argument: "width", unit })).toBe(`width: got "?"; give a length such as ${examples}`);
    for (const example of examples.split(/, | or /)) {
      expect(readLength(example, { argument: "width", unit })).toBeGreaterThan(0);
    }
  });

  test.each<LengthUnit>(["mm", "cm", "m", "in", "ft"])("the caliper examples in %s are read and are boards", (unit) => {
    const options = { argument: "base board", unit, points: true };
    const examples = refusal("?", options).replace(/.*such as /, "");
    for (const example of examples.split(/, | or /)) {
      expect(readLength(example, options)).toBeCloseTo(2, 1);
    }
  });

  test("a plain number above 5 m is refused in every unit, and the same length with its unit is read", () => {
    for (const unit of Object.keys(MM_PER) as LengthUnit[]) {
      const tooMuch = 5001 / MM_PER[unit];
      expect(refusal(tooMuch, { argument: "height", unit })).toContain("a plain number above 5 m is refused");
      expect(readLength(`${tooMuch.toFixed(3)} ${unit}`, { argument: "height", unit })).toBeCloseTo(5001, 0);
    }
  });
});

test("any number of any workbook unit, written with 0 to 2 decimals, reads as itself with point and with comma", () => {
  const unit = fc.constantFrom<LengthUnit>("mm", "cm", "in");
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 19000 }), fc.integer({ min: 0, max: 2 }), unit, (digits, places, written) => {
      const value = digits / 10 ** places;
      const text = value.toFixed(places);
      fc.pre(value * MM_PER[written] <= 20000);
      for (const form of [text, text.replace(".", ",")]) {
        expect(readLength(`${form} ${written}`, inMm)).toBeCloseTo(value * MM_PER[written], 9);
      }
    }),
  );
});

test("any feet, inches and 64ths read as their sum", () => {
  const whole = fc.integer({ min: 1, max: 20 });
  const inch = fc.integer({ min: 0, max: 11 });
  fc.assert(
    fc.property(whole, inch, fc.integer({ min: 1, max: 63 }), (feet, inches, parts) => {
      const mm = (feet * 12 + inches + parts / 64) * 25.4;
      expect(readLength(`${feet}' ${inches} ${parts}/64"`, inMm)).toBeCloseTo(mm, 9);
      expect(readLength(`${feet} ft ${inches}-${parts}/64 in`, inMm)).toBeCloseTo(mm, 9);
    }),
  );
});

test("junk gives a finite length above zero or an InputError, nothing else", () => {
  const alphabet = [..."0123456789 .,/-'\"xcminftp½⅜⁄’″²#eE+?", "mm", " in", " cm", " ft ", "1/2", "\u00a0"];
  const junk = fc.oneof(
    fc.anything(),
    fc.double(),
    fc.string({ unit: "binary" }),
    fc.string({ unit: fc.constantFrom(...alphabet), maxLength: 12 }),
  );
  let read = 0;
  fc.assert(
    fc.property(junk, fc.constantFrom<LengthUnit>("mm", "cm", "m", "in", "ft"), fc.boolean(), (value, unit, points) => {
      try {
        const mm = readLength(value, { argument: "depth", unit, points });
        expect(Number.isFinite(mm) && mm > 0 && mm <= 20000).toBe(true);
        read += 1;
      } catch (error) {
        expect(error).toBeInstanceOf(InputError);
      }
    }),
    { numRuns: 5000 },
  );
  expect(read).toBeGreaterThan(100);
});

function refusal(value: unknown, options: LengthOptions): string {
  try {
    return `read as ${readLength(value, options)}`;
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
}

describe("the word for the argument's own direction may stand beside the length", () => {
  test.each([
    ["height", "Höhe 30 cm", 300],
    ["height", "haut. 30 cm", 300],
    ["height", "H: 30 cm", 300],
    ["height", "30 cm high", 300],
    ["width", "ширина 20 см", 200],
    ["depth", "T 4 cm", 40],
    ["depth", "厚4厘米", 40],
    ["measure", "larg. 20 cm", 200],
  ])("%s %s", (argument, text, mm) => {
    expect(readLength(text, { argument, unit: "mm" })).toBe(mm);
  });

  test.each([
    ["height", "Breite 30 cm"],
    ["height", "L 30 cm"],
    ["fit", "H 30 cm"],
    ["height", "H 30 x 20 cm"],
    ["height", "H"],
    ["height", "Höhe ca. 30 cm"],
  ])("%s refuses %s", (argument, text) => {
    expect(() => readLength(text, { argument, unit: "mm" })).toThrow(InputError);
  });
});
