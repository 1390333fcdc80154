import { labelOptions, type LabelCommand } from "../../src/cli/labelOptions";
import { LABEL_SHEETS, labelPlaces } from "../../src/paper/labelGrid";
import { PAPERS } from "../../src/paper/page";

const NOTHING: LabelCommand = {
  sheet: undefined,
  size: undefined,
  gap: undefined,
  margin: undefined,
  order: undefined,
};

test("labels of given measures lie in the middle of the sheet", () => {
  // By hand: 3 x 63.5 + 2 x 2.5 = 195.5, so (210 - 195.5) / 2 = 7.25 at the left; 7 x 38.1 = 266.7, so 15.15 above.
  const grid = labelOptions({ ...NOTHING, sheet: "3x7", size: "63.5 x 38.1", gap: "2.5 x none" }, "A4");
  const places = labelPlaces(grid, "A4");
  expect(places).toHaveLength(21);
  expect([places[0]!.x, places[0]!.y]).toEqual([expect.closeTo(7.25, 9), expect.closeTo(15.15, 9)]);
  expect([places[4]!.x, places[4]!.y]).toEqual([expect.closeTo(73.25, 9), expect.closeTo(53.25, 9)]);
});

test("measures in inches are read, and a sheet by name is the same", () => {
  const typed = labelOptions({ ...NOTHING, sheet: "3x10", size: "2 5/8 in x 1 in", gap: "1/8 in x none" }, "Letter");
  const named = labelOptions({ ...NOTHING, sheet: "letter-30" }, "Letter");
  labelPlaces(typed, "Letter").forEach((place, index) => {
    const other = labelPlaces(named, "Letter")[index]!;
    for (const key of ["x", "y", "width", "height"] as const) expect(place[key]).toBeCloseTo(other[key], 9);
  });
});

test.each(Object.entries(LABEL_SHEETS))("the labels of %s lie within its paper", (name, { paper, columns, rows }) => {
  expect(name.endsWith(`-${columns * rows}`)).toBe(true);
  const { width, height } = PAPERS[paper];
  for (const place of labelPlaces(LABEL_SHEETS[name]!, paper)) {
    expect(Math.min(place.x, place.y)).toBeGreaterThanOrEqual(0);
    expect(place.x + place.width).toBeLessThanOrEqual(width + 1e-9);
    expect(place.y + place.height).toBeLessThanOrEqual(height + 1e-9);
  }
});

test.each([
  [{ sheet: "letter-30" }, /labels: got "letter-30"; that sheet is Letter.*--paper Letter/],
  [{ sheet: "a4-21", size: "60 x 30" }, /labels: got "a4-21"/],
  [{ sheet: "3x7", size: "80 x 38" }, /label-size: got "80 x 38"; give measures of which 3 x 7 fit on A4/],
  [{ sheet: "3x7", size: "63.5" }, /label-size: got "63.5"; give two lengths/],
  [{ sheet: "3x7", gap: "2 x 2" }, /label-gap: got "2 x 2"; give --label-size too/],
  [{ sheet: "3x7", size: "60 x 30", margin: "3" }, /label-margin: got "3"/],
])("%j is refused with the cure", (typed, message) => {
  expect(() => labelOptions({ ...NOTHING, ...typed }, "A4")).toThrow(message);
});
