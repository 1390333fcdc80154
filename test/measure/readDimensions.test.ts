import fc from "fast-check";
import { InputError } from "../../src/measure/errors";
import { formatLengthWithUnit } from "../../src/measure/formatLength";
import { readDimensions, type DimensionOptions } from "../../src/measure/readDimensions";

const plain: DimensionOptions = { argument: "text" };
const CURE = "give height x width x depth, such as 31.5 x 24 x 4.2 cm";

/** Height, width, depth (undefined where the text has none), weight in kg. */
type Reading = readonly (number | undefined)[];

function reading(text: string, options: DimensionOptions = plain): Reading {
  const { height, width, depth, weightKg } = readDimensions(text, options);
  return [height, width, depth, weightKg].map((value) => (value === undefined ? value : Number(value.toFixed(6))));
}

function refusal(text: string, options: DimensionOptions = plain): string {
  try {
    return `read as ${reading(text, options).join(" x ")}`;
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
}

describe("the first reading is height x width x depth", () => {
  test.each<[string, ...Reading]>([
    ["31.5 x 24 x 4.2 cm", 315, 240, 42],
    ["31,5 x 24 x 4,2 cm", 315, 240, 42],
    ["31.5 × 24 X 4.2 cm", 315, 240, 42],
    ["31.5*24*4.2cm", 315, 240, 42],
    ["31.5 by 24 by 4.2 centimetres", 315, 240, 42],
    ["315mmx240mmx42mm", 315, 240, 42],
    ["31 cm x 240 mm x 4.2 cm", 310, 240, 42],
    ["31.5 cm x 24 x 4.2", 315, 240, 42],
    ["31.5\u00a0×\u200924\u00a0×\u20094.2\u202fcm", 315, 240, 42],
    ["10⅜ x 8½ x 1¼ in.", 263.525, 215.9, 31.75],
    ['10 3/8" x 8 1/2" x 1 1/4"', 263.525, 215.9, 31.75],
    ["10-3/8 x 8-1/2 x 1-1/4 in", 263.525, 215.9, 31.75],
    [`1' 2 1/2" x 10" x 3"`, 368.3, 254, 76.2],
    ["315 x 240 mm", 315, 240, undefined],
    ["support: 315 x 240 x 4 mm", 315, 240, 4],
    ["Sheet (irregular): 31.5 x 24 cm", 315, 240, undefined],
    ["support, each: 315 x 240 mm", 315, 240, undefined],
    ["panel 2: 315 x 240 x 4 mm", 315, 240, 4],
    ["frame:1380 x 1027 x 100 mm", 1380, 1027, 100],
    ["frame 1010 x 860 x 55 mm", 1010, 860, 55],
    ["31.5 x 24 x 4.2 cm (closed)", 315, 240, 42],
    ["31.5 x 24 x 4.2 cm overall.", 315, 240, 42],
    ["Dimensions (mm): 315 x 240 x 42", 315, 240, 42],
    ["H x W x D (cm): 31.5 x 24 x 4.2", 315, 240, 42],
    ["3815 x 12500 x 50 mm", 3815, 12500, 50],
  ])("%s", (text, ...expected) => {
    expect(reading(text).slice(0, expected.length)).toEqual(expected);
  });

  test("a text without a unit is in the unit of the option, and refused without one", () => {
    expect(reading("31.5 x 24 x 4.2", { argument: "text", unit: "cm" })).toEqual([315, 240, 42, undefined]);
    expect(reading("31.5 x 24 x 4.2 in", { argument: "text", unit: "cm" })[0]).toBe(800.1);
    expect(refusal("31.5 x 24 x 4.2")).toBe(
      'text: got "31.5 x 24 x 4.2"; no unit is given; write the unit behind the numbers, such as 31.5 x 24 x 4.2 cm',
    );
  });
});

describe("words say which is which", () => {
  test.each<[string, ...Reading]>([
    ["H 31.5 cm, W 24 cm, D 4.2 cm", 315, 240, 42],
    ["W 24 cm, D 4.2 cm, H 31.5 cm", 315, 240, 42],
    ["height: 30 cm; width: 20 cm; depth: 5 cm", 300, 200, 50],
    ["Height 30 cm and width 20 cm", 300, 200, undefined],
    ["H. 30 W. 20 D. 4 cm", 300, 200, 40],
    ["H30 x W20 x D4 cm", 300, 200, 40],
    ["H30cmxW20cmxD4cm", 300, 200, 40],
    ["30 (h) x 20 (w) x 4 (d) cm", 300, 200, 40],
    ["30H x 20W x 4D cm", 300, 200, 40],
    ["20Wx30Hx4D cm", 300, 200, 40],
    ["30 cm high x 20 cm wide x 4 cm thick", 300, 200, 40],
    ["Höhe 30 cm, Breite 20 cm, Tiefe 4 cm", 300, 200, 40],
    ["H 30 x B 20 x T 4 cm", 300, 200, 40],
    ["HxBxT: 30 x 20 x 4 cm", 300, 200, 40],
    ["H x B x T (cm): 30 x 20 x 4", 300, 200, 40],
    ["haut. 30 cm ; larg. 20 cm ; ép. 4 cm", 300, 200, 40],
    ["H 30 x L 20 x P 4 cm", 300, 200, 40],
    ["alto 30 cm, ancho 20 cm, grosor 4 cm", 300, 200, 40],
    ["alt. 30; largh. 20; spess. 4 cm", 300, 200, 40],
    ["altura 30 x largura 20 x espessura 4 cm", 300, 200, 40],
    ["hoogte 30 x breedte 20 x dikte 4 cm, gewicht 1,5 kg", 300, 200, 40, 1.5],
    ["höjd 30, bredd 20, tjocklek 4 cm", 300, 200, 40],
    ["wys. 30 x szer. 20 x grub. 4 cm", 300, 200, 40],
    ["выс. 30, шир. 20, толщ. 4 см, вес 1200 г", 300, 200, 40, 1.2],
    ["В 30 х Ш 20 х Г 4 см", 300, 200, 40],
    ["الارتفاع ٣٠ سم، العرض ٢٠ سم، السمك ٤ سم", 300, 200, 40],
    ["高30厘米，宽20厘米，厚4厘米", 300, 200, 40],
    ["Ho\u0308he 30 cm, Breite 20 cm, Tiefe 4 cm", 300, 200, 40],
    ["Durchm. 20 cm, Höhe 30 cm", 300, 200, 200],
    ["Height: 30 cm\nWidth: 20 cm\nDepth: 5 cm", 300, 200, 50],
    ["Object: height: 30 cm; width: 20 cm", 300, 200, undefined],
    ["L 30 x W 20 x D 4 cm", 300, 200, 40],
    ["W x H: 20 x 30 cm", 300, 200, undefined],
    ["20 x 30 x 4 cm (W x H x D)", 300, 200, 40],
    ["DHW 4 x 30 x 20 cm", 300, 200, 40],
    ["D.5 cm, H 3 cm, W 2 cm", 30, 20, 5],
    ["H: 31.5 cm (12 3/8 in); W: 24 cm (9 7/16 in); D: 4.2 cm (1 5/8 in)", 315, 240, 42],
  ])("%s", (text, ...expected) => {
    expect(reading(text).slice(0, expected.length)).toEqual(expected);
  });

  test("a diameter is width and depth beside a height or a length, height and width beside a depth", () => {
    expect(reading("H 10 cm, diam. 12 cm")).toEqual([100, 120, 120, undefined]);
    expect(reading("Ø 12 cm x H 10 cm")).toEqual([100, 120, 120, undefined]);
    expect(reading("length 60 cm, diameter 4 cm")).toEqual([600, 40, 40, undefined]);
    expect(reading("⌀12 cm, D 0.5 cm")).toEqual([120, 120, 5, undefined]);
  });

  test("numbers without words follow the order that is said, two of them without its depth", () => {
    expect(reading("30 x 20 x 4 cm", { argument: "text", order: "LWD" })).toEqual([300, 200, 40, undefined]);
    expect(reading("20 x 30 x 4 cm", { argument: "text", order: "w x h x d" })).toEqual([300, 200, 40, undefined]);
    expect(reading("4 x 30 x 20 cm", { argument: "text", order: "DHW" })).toEqual([300, 200, 40, undefined]);
    expect(reading("30 x 20 cm", { argument: "text", order: "DHW" })).toEqual([300, 200, undefined, undefined]);
    expect(reading("W 20 x H 30 cm", { argument: "text", order: "HWD" })).toEqual([300, 200, undefined, undefined]);
  });

  test.each(["HWH", "HW", "HLD", "HWX", "HWDD", ""])("order %p is refused", (order) => {
    expect(refusal("30 x 20 x 4 cm", { argument: "text", order })).toMatch(
      /^order: got .*; give the letters H \(or L\), W and D once each, such as HWD or LWD$/,
    );
  });
});

describe("of a range the larger figure is taken", () => {
  test.each<[string, ...Reading]>([
    ["31 x 24 x 3.9-4.1 cm", 310, 240, 41],
    ["31 x 24 x 3.9 – 4.1 cm", 310, 240, 41],
    ["31 x 24 x 3.9 to 4.1 cm", 310, 240, 41],
    ["30.5-31 x 24 x 4 cm", 310, 240, 40],
    ["10-10 3/8 x 8 x 1 in", 263.525, 203.2, 25.4],
    ["1/2-3/4 x 8 in", 19.05, 203.2, undefined],
    ["H 30 cm, W 20 cm, D 3.9 cm - 4.1 cm", 300, 200, 41],
  ])("%s", (text, ...expected) => {
    expect(reading(text).slice(0, expected.length)).toEqual(expected);
  });

  test("a range that falls is not understood", () => {
    expect(refusal("31 x 24 x 4.1-3.9 cm")).toBe(
      `text: got "31 x 24 x 4.1-3.9 cm"; "-3.9 cm" is not understood; ${CURE}`,
    );
  });
});

describe("a second reading is checked against the first, which is read", () => {
  test.each<[string, ...Reading]>([
    // Cataloging Cultural Objects, as quoted in check-values.md.
    ["198 x 233 x 82 cm (78 x 91 3/4 x 32 1/4 inches)", 1980, 2330, 820],
    ["31.5 x 24 x 4.2 cm [12 3/8 x 9 7/16 x 1 5/8 in.]", 315, 240, 42],
    ["31.5 × 24 cm; 12 3/8 × 9 7/16 in.", 315, 240, undefined],
    ["12 3/8 x 9 7/16 in (31.4 x 24 cm)", 314.325, 239.7125, undefined],
    ["H 31.5 x W 24 cm (12 3/8 x 9 7/16 in)", 315, 240, undefined],
    ["31.5 x 24 cm (W 9 7/16 x H 12 3/8 in)", 315, 240, undefined],
    ["25 x 20 cm (10 x 8 in)", 250, 200, undefined],
  ])("%s", (text, ...expected) => {
    expect(reading(text).slice(0, expected.length)).toEqual(expected);
  });

  test.each([
    ["198 x 233 x 82 cm (78 x 91 3/4 x 33 1/4 in)", "1980 x 2330 x 820 mm, the second 1981.2 x 2330.45 x 844.55 mm"],
    ["31.5 x 24 x 4.2 cm (9 7/16 x 12 3/8 x 1 5/8 in)", "315 x 240 x 42 mm, the second 239.71 x 314.33 x 41.28 mm"],
    ["31.5 x 24 x 4.2 cm (12 3/8 x 9 7/16 in)", "315 x 240 x 42 mm, the second 314.33 x 239.71 mm"],
    ["315 x 240 mm (12 1/2 x 9 7/16 in)", "315 x 240 mm, the second 317.5 x 239.71 mm"],
    ["H 31.5 cm (12 3/8 in), W 24 cm (9 in)", "315 x 240 mm, the second 314.33 x 228.6 mm"],
  ])("%s is refused with both readings", (text, readings) => {
    expect(refusal(text)).toContain(`; the first reading is ${readings}; correct the one that is wrong`);
  });
});

describe("lines and weights", () => {
  test("the first line that holds a figure is read; its label and the lines not read are told", () => {
    expect(readDimensions("Two sheets\nsupport (left): 360 x 278 mm\nframe: 400 x 300 x 30 mm", plain)).toEqual({
      height: 360,
      width: 278,
      label: "support (left)",
      unread: ["frame: 400 x 300 x 30 mm"],
    });
  });

  test("a further label on the same line starts a line", () => {
    expect(readDimensions("Sheet: 31.5 x 24 cm; image: 25 x 15 cm", plain)).toEqual({
      height: 315,
      width: 240,
      label: "Sheet",
      unread: ["image: 25 x 15 cm"],
    });
  });

  test.each<[string, number | undefined]>([
    ["30 x 20 x 4 cm, 1 kg", 1],
    ["30 x 20 x 4 cm, 28,5kg", 28.5],
    ["30 x 20 x 4 cm; 850 g", 0.85],
    ["30 x 20 x 4 cm, weight: 850 g.", 0.85],
    ["30 x 20 x 4 cm, 98kg (Gross 209kg)", 98],
    ["30 x 20 x 4 cm, 31 kg (integral base included)", 31],
    ["H 30 cm, W 20 cm, D 4 cm, weight 1 kg", 1],
    ["object: 30 x 20 x 4 cm\nWeight: 125kg\nCased weight: 415kg", 125],
    ["weight: 1311 Kilograms\n30 x 20 x 4 cm", 1311],
    ["30 x 20 x 4 cm", undefined],
  ])("%s weighs %p kg", (text, kg) => {
    expect(reading(text)).toEqual([300, 200, 40, kg]);
  });
});

describe("what cannot be understood is refused, and the part is named", () => {
  const lone = "a single measure lacks the width and the thickness, and a catalogue height is rounded up to whole cm";

  test.each([
    ["24 cm", lone],
    ["Ht. 30 cm", lone],
    ["24 cm?", '"?" is not understood'],
    ["ca. 30 x 20 x 4 cm", '"ca. 30 x 20 x 4 cm" is not understood'],
    ["approx.: 30 x 20 cm", '"approx.: 30 x 20 cm" is not understood'],
    ["30 x 20 x 4 cm (approx.)", '"(approx.)" is not understood'],
    ["30 x 20 x 4O mm", '"x 4O mm" is not understood'],
    ["3O x 20 x 4 mm", '"3O x 20 x 4 mm" is not understood'],
    ["3O x 20 x 4 mm\nframe: 50 x 40 mm", '"3O x 20 x 4 mm" is not understood'],
    ["30 x 20 x cm", '"x cm" is not understood'],
    ["30 20 4 cm", '"20 4 cm" is not understood'],
    ["1 250 x 800 mm", '"250 x 800 mm" is not understood'],
    ["30-20-4 cm", '"-20-4 cm" is not understood'],
    ["-30 x 20 x 4 cm", '"-30 x 20 x 4 cm" is not understood'],
    ["30 x 20 x 4 cm²", '"²" is not understood'],
    ["30 x 20 x 4 pt", '"x 4 pt" is not understood'],
    ["30 x 20 cm, 40 x 30 x 3 cm", '"40 x 30 x 3 cm" is not understood'],
    ["object: 55 x 55 mm, 4 mm", '"4 mm" is not understood'],
    ["30 x 20 x 4 cm, cases weigh 67kg/225kg.", '"cases weigh 67kg/225kg." is not understood'],
    ["30 x 20 x 4 cm, weight: 2 bags", '"weight: 2 bags" is not understood'],
    ["30 x 20 x 4 cm, 0 kg", '"0 kg" is not understood'],
    ["3 volumes\n30 x 20 x 4 cm", '"volumes" is not understood'],
    ["Ht. 30 cm, W. 20 cm, Th", '"Th" is not understood'],
    ["spine width: 30 x 20 cm", '"spine width: 30 x 20 cm" is not understood'],
    ["Dimensions mm: 30 x 20", '"mm: 30 x 20" is not understood'],
    ["hello", "there is no measure in it"],
    ["0 x 20 x 4 cm", "a measure of zero"],
    ["30 x 20 x 4 x 3 cm", "4 measures in a row are not height, width and depth"],
    ["300 x 200 x 40 m", "a measure above 100 m"],
    ["20/30 x 5 cm", "fractions other than halves and quarters are read in inches only"],
    ["10 3/8 x 8 1/2 cm", "fractions other than halves and quarters are read in inches only"],
    ["30 x 20 x 4 cm (open)", '"(open)" is not understood'],
    ["H 30 cm x 20 x 4 cm", "height, width and depth are named for some of the numbers only"],
    ["H x W: 30 x 20 x 4 cm", "height, width and depth are named for some of the numbers only"],
    ["H x W: H 30 x W 20 cm", "height, width and depth are named for some of the numbers only"],
    ["H 30 cm, W 20 cm, W 4 cm", "the width is given twice"],
    ["H 30 cm, D 4 cm", "the width is missing"],
    ["W 30 cm, D 4 cm", "the height is missing"],
    ["24 p ; 30 x 20 x 4 cm", '"p ; 30 x 20 x 4 cm" is not understood'],
    ["30 x 20 x 4 cm, 1200 г, 24 p", '"24 p" is not understood'],
    ["L 30 x W 20 x H 4 cm", "a length beside a height may be the width or the depth"],
    ["diam. 12 cm", "a diameter alone lacks the height (of a cylinder) or the depth (of a disc)"],
    [
      "H 10 cm, W 4 cm, diam. 12 cm",
      "a diameter stands for two directions, so only a height or a depth may stand beside it",
    ],
  ])("%s", (text, expected) => {
    expect(refusal(text)).toBe(`text: got "${text}"; ${expected}; ${CURE}`);
  });

  test.each([
    ["", `text: got a blank; there is no measure in it; ${CURE}`],
    [" \n ", `text: got a blank; there is no measure in it; ${CURE}`],
    [
      "1,234 x 20 x 4 mm",
      'text: got "1,234 x 20 x 4 mm"; a comma before three figures may mean thousands or decimals; write 1234 or 1.234',
    ],
    [
      "31 x 240 mm x 4.2 cm",
      'text: got "31 x 240 mm x 4.2 cm"; numbers without a unit stand beside two units; write the unit behind the numbers, such as 31.5 x 24 x 4.2 cm',
    ],
    [
      "Dimensions (mm): 30 x 20 cm",
      'text: got "Dimensions (mm): 30 x 20 cm"; numbers without a unit stand beside two units; write the unit behind the numbers, such as 31.5 x 24 x 4.2 cm',
    ],
  ])("%p", (text, message) => {
    expect(refusal(text)).toBe(message);
  });

  test("a plain number above 5 m is refused where the text gives no unit", () => {
    expect(refusal("30000 x 20 x 4", { argument: "text", unit: "mm" })).toBe(
      'text: got "30000 x 20 x 4"; a measure above 5 m; write the unit behind the numbers, such as 31.5 x 24 x 4.2 cm',
    );
  });
});

test("three lengths written in any of the forms read as themselves", () => {
  const length = fc.integer({ min: 1, max: 49999 }).map((tenths) => tenths / 10);
  const forms: ((h: string, w: string, d: string) => string)[] = [
    (h, w, d) => `${h} x ${w} x ${d}`,
    (h, w, d) => `${h}×${w}×${d}`,
    (h, w, d) => `object: ${h} by ${w} by ${d}, 2 kg`,
    (h, w, d) => `D ${d}; H ${h}; W ${w}`,
    (h, w, d) => `Width: ${w}\nHeight: ${h}\nDepth: ${d}`,
    (h, w, d) => `${w} (w) x ${h} (h) x ${d} (d)`,
    (h, w, d) => `${h} x ${w} x ${d} (H x W x D)`,
    (h, w, d) => `${h} x ${w} x ${d} (${h} x ${w} x ${d})`,
  ];
  fc.assert(
    fc.property(length, length, length, fc.constantFrom(...forms), (height, width, depth, form) => {
      const written = [height, width, depth].map((mm) => formatLengthWithUnit(mm, "mm")) as [string, string, string];
      expect(reading(form(...written)).slice(0, 3)).toEqual([height, width, depth]);
    }),
  );
});

test("junk gives finite lengths above zero or an InputError, nothing else", () => {
  const pieces = [
    ..."0123456789 .,;:/-()[]x×'\"½²?\n",
    ..." cm| mm| in|31.5|24|4 1/2| x | x |H |W |D|diam. |height: |support: |, 1 kg| (|)|Ø|HWD|each|kg".split("|"),
  ];
  const junk = fc.oneof(
    fc.string({ unit: "binary" }),
    fc.string({ unit: fc.constantFrom(...pieces), maxLength: 16 }),
    fc
      .array(fc.constantFrom("31.5", "24", "4 1/2"), { minLength: 2, maxLength: 4 })
      .map((all) => `${all.join(" x ")} cm`),
  );
  let read = 0;
  fc.assert(
    fc.property(junk, fc.constantFrom(undefined, "cm" as const), (text, unit) => {
      try {
        const {
          height,
          width,
          depth = 1,
          weightKg = 1,
        } = readDimensions(text, {
          argument: "text",
          ...(unit === undefined ? {} : { unit }),
        });
        for (const value of [height, width, depth, weightKg]) expect(Number.isFinite(value) && value > 0).toBe(true);
        read += 1;
      } catch (error) {
        expect(error).toBeInstanceOf(InputError);
      }
    }),
    { numRuns: 5000 },
  );
  expect(read).toBeGreaterThan(100);
});

// A pattern whose steps double with each character would never end on these.
test("a long text is refused", () => {
  expect(refusal("support. a, ".repeat(160))).toContain("there is no measure in it");
  expect(refusal(`${"30 x ".repeat(390)}cm`)).toContain("is not understood");
  expect(refusal("support. a, ".repeat(2700))).toContain("a dimension text has up to 2000 letters");
});
