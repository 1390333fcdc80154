import { SIZES, type AmountRow, type AmountSurvey } from "../../src/headings/amounts";
import { plausibility, type Plausibility } from "../../src/headings/plausibility";
import { MM_PER, type WorkbookUnit } from "../../src/measure/units";
import { collection, pick, randomFrom, type MadeObject } from "./generatedSurveys";

jest.setTimeout(240_000);

type Measure = "height" | "width" | "depth" | "weight";

interface Made {
  readonly unit: WorkbookUnit;
  readonly named: boolean;
  readonly weights: boolean;
  readonly scale?: Readonly<Partial<Record<Measure, number>>>;
}

/** A survey of a collection as a cataloguer types it: sizes to 0.1 mm, in one unit, with a weight in most rows. */
function surveyOf(
  objects: readonly MadeObject[],
  seed: number,
  { unit, named, weights, scale = {} }: Made,
): AmountSurvey {
  const random = randomFrom(seed + 500_000);
  const weighed = 0.6 + 0.4 * random();
  const typed = (mm: number, measure: Measure) =>
    (Math.round(Math.max(0.2, mm) * 10) / 10 / MM_PER[unit]) * (scale[measure] ?? 1);
  const rows = objects.map(({ height, width, depth, kg }, i): AmountRow => ({
    row: i + 2,
    height: { value: typed(height, "height"), unit: undefined },
    width: { value: typed(width, "width"), unit: undefined },
    depth: { value: typed(depth, "depth"), unit: undefined },
    weight: weights && random() < weighed ? { value: kg * (scale.weight ?? 1), unit: undefined } : undefined,
  }));
  const sizeUnit = named ? unit : undefined;
  const column = (place: number, name: string, of: string | undefined) => ({ column: place, name, unit: of });
  return {
    rows,
    columns: {
      height: column(2, "Height", sizeUnit),
      width: column(3, "Width", sizeUnit),
      depth: column(4, "Depth", sizeUnit),
      ...(weights ? { weight: column(5, "Weight", named ? "kg" : undefined) } : {}),
    },
    unit: "mm",
    unitGiven: false,
    odd: undefined,
  };
}

const asks = (survey: AmountSurvey): boolean => plausibility(survey).questions.length > 0;
const UNITS = ["mm", "cm", "in"] as const;
const FACTORS = [10, 25.4, 1 / 10] as const;
const SURVEYS = 1000;
const seeds = Array.from({ length: SURVEYS }, (_, i) => i + 1);

describe("a thousand generated surveys, mixed collections among them", () => {
  test("unchanged, fewer than 1 % are asked about", () => {
    const asked = seeds.filter((seed) => {
      const named = seed % 3 > 0;
      return asks(
        surveyOf(collection(seed), seed, {
          unit: named ? pick(randomFrom(seed), UNITS) : "mm",
          named,
          weights: seed % 4 > 0,
        }),
      );
    });
    expect(asked.length / SURVEYS).toBeLessThan(0.01);
  });

  test("with one column ten, 25.4 or a tenth times as large, or grams for kilograms, at least 99 % are", () => {
    const asked = seeds.filter((seed) => {
      const random = randomFrom(seed * 7);
      const measure = pick(random, [...SIZES, "weight"] as const);
      const scale = { [measure]: measure === "weight" ? 1000 : pick(random, FACTORS) };
      const named = random() < 0.6;
      const unit = named ? pick(random, UNITS) : "mm";
      return asks(surveyOf(collection(seed), seed, { unit, named, weights: true, scale }));
    });
    expect(asked.length / SURVEYS).toBeGreaterThanOrEqual(0.99);
  });

  test("without weights and without a unit, with all three sizes so, at least 99 % are", () => {
    const asked = seeds.filter((seed) => {
      const factor = pick(randomFrom(seed * 11), FACTORS);
      const scale = { height: factor, width: factor, depth: factor };
      return asks(surveyOf(collection(seed), seed, { unit: "mm", named: false, weights: false, scale }));
    });
    expect(asked.length / SURVEYS).toBeGreaterThanOrEqual(0.99);
  });
});

describe("a unit that nothing names", () => {
  const book = (id: number, sizes: readonly [number, number, number], kg?: number): AmountRow => ({
    row: id,
    height: { value: sizes[0], unit: undefined },
    width: { value: sizes[1], unit: undefined },
    depth: { value: sizes[2], unit: undefined },
    weight: kg === undefined ? undefined : { value: kg, unit: undefined },
  });
  const asked = (rows: readonly AmountRow[], weightUnit?: string): Plausibility =>
    plausibility({
      rows,
      columns: {
        height: { column: 2, name: "H", unit: undefined },
        width: { column: 3, name: "W", unit: undefined },
        depth: { column: 4, name: "D", unit: undefined },
        ...(weightUnit === undefined ? {} : { weight: { column: 5, name: "Wt", unit: weightUnit } }),
      },
      unit: "mm",
      unitGiven: false,
      odd: undefined,
    });

  test("is asked about where a typical object would be 30 mm high", () => {
    const { questions } = asked([book(2, [30.5, 22, 3]), book(3, [28, 20, 4])]);
    expect(questions[0]!.text).toContain("Read in mm, a typical object would be 30.5 mm at its longest");
    expect(questions[0]!.choices.map(({ option }) => option)).toEqual(["--unit mm", "--unit cm", "--unit in"]);
  });

  test("of weight is asked about with the units first that go with the sizes", () => {
    const asks = (unit: "mm" | "in", weight: number) =>
      plausibility({
        rows: Array.from({ length: 9 }, (_, at) => book(at + 2, unit === "mm" ? [300, 210, 40] : [12, 8, 1.5], weight)),
        columns: {
          height: { column: 2, name: "H", unit },
          width: { column: 3, name: "W", unit },
          depth: { column: 4, name: "D", unit },
          weight: { column: 5, name: "Wt", unit: undefined },
        },
        unit,
        unitGiven: true,
        odd: undefined,
      }).questions.map(({ choices }) => choices.map(({ label }) => label));
    expect(asks("mm", 900)).toEqual([["kg", "g"]]);
    expect(asks("mm", 30)).toEqual([["kg", "lb", "oz"]]);
    expect(asks("in", 900)).toEqual([["lb", "g"]]);
  });

  test("is that which weights alone fit: 30 x 22 x 3 weighing 0.8 kg would be 25 kg/m3 in inches", () => {
    const { questions, units } = asked([book(2, [30.5, 22, 3], 0.8), book(3, [30, 22, 3], 0.8)], "kg");
    expect(questions).toEqual([]);
    expect([...units]).toEqual([
      [2, "cm"],
      [3, "cm"],
      [4, "cm"],
    ]);
  });

  test("stays open where two units fit the weights", () => {
    expect(asked([book(2, [30.5, 22, 3], 1.6), book(3, [30, 22, 3], 1.6)], "kg").questions).toHaveLength(1);
  });
});
