import { FIGURES } from "../../src/item/figureCatalogue";
import { settingsOf } from "../../src/settings/settingsOf";
import { settingsTable } from "../../src/settings/settingsTable";
import { sizeSurvey } from "../../src/survey/sizeSurvey";
import { surveyTable } from "../../src/survey/surveyAnswers";
import { calculated, bookOf, filled } from "../filling/filledBook";
import { plainRows } from "../../src/item/answers";
import { cell } from "../functions/cell";

const HEADINGS = ["Identifier", "Height", "Width", "Depth", "Weight", "Enclosure", "Fit width"];
const ITEMS = [
  ["A1", 300, 210, 40, 1.5, "tray", 2],
  ["A2", 152.4, 101.6, 25.4, 0.4, "clamshell box", ""],
  ["A3", 412, 305, 61, 4, "lidded box", ""],
  ["A4", 190, 124, 12, 0.2, "four-flap wrapper", ""],
  ["A5", 190, 124, 1200000, 0.2, "tray", ""],
] as const;
const PLAIN = [HEADINGS, ...ITEMS];
/** The same, with a unit in each cell of a size. */
const NAMED = [
  HEADINGS,
  ...ITEMS.map(([name, h, w, d, kg, ...more]) => [name, `${h} mm`, `${w} mm`, `${d} mm`, `${kg} kg`, ...more]),
];
const NAMES = FIGURES.map(({ name }) => name);
const answers = (cells: readonly (readonly unknown[])[], text: string) =>
  plainRows(surveyTable(sizeSurvey(cells, [text]), NAMES, cells));

describe("answers in another unit than the survey's", () => {
  test.each(["mm", "cm", "in"])("%s: every figure is that of the same sizes with their units named", (unit) => {
    expect(answers(PLAIN, `unit=mm; answer unit=${unit}`).slice(0, 5)).toEqual(
      answers(NAMED, `unit=${unit}`).slice(0, 5),
    );
  });

  test("worked: a book of 300 mm in a tray, read in mm and answered in inches", async () => {
    // 300 + 1 covering + 2 fit = 303 mm = 381.73 steps of 1/32 in, so 382: 11 15/16 in.
    expect(await cell("INSIDE", 300, 210, 40, "tray", "height", "answer unit=in")).toBe(11.9375);
    expect(await cell("INSIDE", 300, 210, 40, "tray", "height", "answer unit=cm")).toBe(30.3);
    // 12 in = 304.8 mm; 307.8 up to 308 mm.
    expect(await cell("INSIDE", 12, 8, 2, "tray", "height", "unit=in; answer unit=mm")).toBe(308);
  });

  test("a measure stays a number of the survey, and a bench reading takes an answer", async () => {
    const settings = "unit=mm; answer unit=in";
    expect(await cell("MEASURE", "25.4 cm", settings)).toBe(254);
    expect(await cell("DIMENSIONS", "31.5 x 24 x 4.2 cm", "width", settings)).toBe(240);
    expect(await cell("FRACTION", 11.9375, 16, settings)).toBe("11 15/16");
  });

  test("later over earlier: a unit by itself is that of the answers too", () => {
    const units = (...given: string[]) => {
      const { surveyUnit, answerUnit } = settingsOf(given);
      return [surveyUnit, answerUnit];
    };
    expect(units("unit=cm")).toEqual(["cm", "cm"]);
    expect(units("answer unit=in")).toEqual(["mm", "in"]);
    expect(units("answer unit=in", "unit=cm")).toEqual(["cm", "cm"]);
    expect(units("unit=cm", "answer unit=in")).toEqual(["cm", "in"]);
    expect(units("answer unit=in; unit=cm")).toEqual(["cm", "in"]);
    expect(settingsTable(settingsOf(["unit=cm"])).find(([name]) => name === "answer unit")?.[1]).toBe("default");
  });

  test("a table of sizes names its unit, and is read again", async () => {
    const cells = PLAIN.slice(0, 4);
    const sizes = (await cell("SIZES", cells, 3, "answer unit=in")) as (string | number)[][];
    expect(sizes[0]!.slice(2, 5)).toEqual(["height (in)", "width (in)", "depth (in)"]);
    const same = (await cell("SIZES", cells, 3, "unit=mm")) as (string | number)[][];
    expect(same[0]!.slice(2, 5)).toEqual(["height", "width", "depth"]);
    expect(await cell("SIZE", 152.4, 101.6, 25.4, "clamshell box", sizes, "answer unit=in")).toBe(
      sizes.find(([, enclosure]) => enclosure === "clamshell box")![0],
    );
  });

  test("columns name the unit of their answers, and their formulas keep both units", async () => {
    const book = bookOf(PLAIN.slice(0, 4));
    const { edit } = filled(book, { settings: ["answer unit=in"] });
    const cells = (await calculated(edit.bytes)).filter(({ heading }) => heading.startsWith("outside height"));
    expect(cells.map(({ heading }) => heading)).toEqual(cells.map(() => "outside height (in)"));
    for (const { formula, stored, calculated: now } of cells) {
      expect(formula).toContain('"unit=mm; answer unit=in"');
      expect(now).toEqual(stored);
    }
    expect(cells.length).toBe(3);
  });
});
