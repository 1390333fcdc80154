import { planCutting } from "../../src/cutting/planCutting";
import { sheetPlan, type DrawnSheet } from "../../src/drawing/sheetPlan";
import { svgOf } from "../../src/drawing/svgOf";
import { randomJob } from "../cutting/jobs";
import { outside, overlapping, readDrawing } from "./readDrawing";

const SHEET: DrawnSheet = {
  stock: "board 2 mm",
  length: 1000,
  width: 700,
  placements: [
    { piece: { item: "MS 1", part: "base" }, x: 0, y: 0, length: 303, width: 213 },
    { piece: { item: "MS 1", part: "side wall" }, x: 303, y: 0, length: 307, width: 44.5 },
    { piece: { item: "MS 2", part: "head wall" }, x: 610, y: 0, length: 40, width: 300 },
    { piece: { item: "MS 3", part: "case spine" }, x: 303, y: 44.5, length: 200, width: 8 },
    { piece: { item: "MS 3", part: "case spine" }, x: 303, y: 52.5, length: 200, width: 8 },
  ],
  cuts: [
    { way: "across", at: 303, from: 0, to: 700 },
    { way: "along", at: 213, from: 0, to: 303 },
    { way: "across", at: 610, from: 0, to: 700 },
  ],
};

test("a sheet names every piece with item, part and size; what has no room has a letter and a line below", () => {
  const read = readDrawing(sheetPlan(SHEET, { unit: "mm", heading: "Sheet 1 of 2" }));
  const said = read.texts.map(({ text }) => text);
  expect(said[0]).toBe("Sheet 1 of 2: board 2 mm, 1000 × 700 mm");
  expect(said).toEqual(expect.arrayContaining(["MS 1", "base", "303 × 213", "a: MS 3, case spine, 200 × 8 mm"]));
  expect(said.filter((text) => text === "a")).toHaveLength(2);
  expect(said.filter((text) => /^[123]$/.test(text))).toEqual(["1", "2", "3"]);
  expect(outside(read)).toEqual([]);
  expect(overlapping(read.texts.filter(({ text }) => text !== "a"))).toEqual([]);
});

test("an empty sheet and one without cuts are drawn too", () => {
  const { cuts, ...without } = SHEET;
  expect(cuts).toHaveLength(3);
  expect(readDrawing(sheetPlan(without, { unit: "in" })).circles).toBe(0);
  expect(outside(readDrawing(sheetPlan({ ...without, placements: [] }, { unit: "cm", width: 320 })))).toEqual([]);
});

test("hostile names are text, whatever they hold", () => {
  const names = [
    `<script>alert("1")</script>&amp;]]>`,
    "x".repeat(30_000),
    "\u202e\u0007\ud800 שלום",
    "📚".repeat(90),
    "\r\n\t ",
  ];
  for (const name of names) {
    const placements = SHEET.placements.map((each) => ({ ...each, piece: { item: name, part: name } }));
    const drawn = sheetPlan({ ...SHEET, stock: name, placements }, { unit: "mm", heading: name });
    expect(outside(readDrawing(drawn))).toEqual([]);
    const svg = svgOf(drawn);
    expect(svg).not.toContain("<script");
    expect(svg.length).toBeLessThan(40_000);
  }
});

test("any plan of the cutting core is drawn inside its sheet, no piece's words over another's", () => {
  for (let seed = 1; seed <= 40; seed++) {
    const { pieces, stock, options } = randomJob(seed);
    const plan = planCutting(pieces, stock, { ...options, budget: { iterations: 5 } });
    for (const sheet of plan.sheets.slice(0, 3)) {
      if (sheet.length === 0) continue;
      const read = readDrawing(sheetPlan(sheet, { unit: "mm" }));
      expect(outside(read)).toEqual([]);
      const words = read.texts.filter(({ text }) => !/^([a-z]{1,2}|\d+)$/.test(text));
      expect(overlapping(words)).toEqual([]);
      const numbers = read.texts.filter(({ text }) => /^\d+$/.test(text));
      expect(numbers).toHaveLength(sheet.cuts.length);
    }
  }
});
