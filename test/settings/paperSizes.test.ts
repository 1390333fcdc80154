import { execFileSync } from "node:child_process";
import type { StockRow } from "../../src/settings/stock";
import { readStockTable } from "../../src/settings/stockTable";

interface Paper {
  readonly width: number;
  readonly height: number;
  readonly unit: string;
}

// The library is an ES module only, which a test in CommonJS cannot load; node itself can.
const PAPERS = JSON.parse(
  execFileSync(
    process.execPath,
    [
      "--input-type=module",
      "--eval",
      'import { isoPaperSpecifications } from "@cityssm/paper-sizes"; console.log(JSON.stringify(isoPaperSpecifications))',
    ],
    { encoding: "utf8" },
  ),
) as Readonly<Record<string, Paper>>;

// ISO 216: A series, and B series.
const NAMES = ["A0", "A1", "A2", "A3", "A4", "B0", "B1", "B2"] as const;

/** One sheet of each paper, in a unit that the headings name. */
const tableIn = (unit: string, mmPer: number) => [
  ["stock", "material", "caliper (mm)", `sheet length (${unit})`, `sheet width [${unit}]`],
  ...NAMES.map((name) => {
    const { width, height } = PAPERS[name] as Paper;
    return [name, "lining", 0.1, height / mmPer, width / mmPer];
  }),
];

const sizes = (rows: readonly StockRow[]) => rows.map((row) => [row.stock, row.sheetWidth, row.sheetLength]);

// The same sizes as printed in ISO 216: what the library says is not taken on trust.
const PRINTED = [
  ["A0", 841, 1189],
  ["A1", 594, 841],
  ["A2", 420, 594],
  ["A3", 297, 420],
  ["A4", 210, 297],
  ["B0", 1000, 1414],
  ["B1", 707, 1000],
  ["B2", 500, 707],
];

test("a paper-size library and ISO 216 agree on the sizes checked here", () => {
  expect(NAMES.map((name) => [name, PAPERS[name]?.width, PAPERS[name]?.height])).toEqual(PRINTED);
  expect(NAMES.map((name) => PAPERS[name]?.unit)).toEqual(NAMES.map(() => "mm"));
});

test.each([
  ["mm", 1],
  ["cm", 10],
  ["m", 1000],
  ["in", 25.4],
  ["ft", 304.8],
])("ISO 216 sheets in a stock table in %s are read to a millionth of a millimetre", (unit, mmPer) => {
  const read = sizes(readStockTable(tableIn(unit, mmPer), "mm"));
  read.forEach(([stock, width, length], index) => {
    expect([stock, Math.round(Number(width) * 1e6) / 1e6, Math.round(Number(length) * 1e6) / 1e6]).toEqual(
      PRINTED[index],
    );
  });
});

test("a heading without a unit is in the shop unit, and a cell's own unit counts over both", () => {
  const table = [
    ["stock", "material", "sheet length", "sheet width"],
    ["A4", "lining", 29.7, "210 mm"],
    ["A3", "lining", "420 mm", "29,7 cm"],
  ];
  expect(sizes(readStockTable(table, "cm"))).toEqual([
    ["A4", 210, 297],
    ["A3", 297, 420],
  ]);
});
