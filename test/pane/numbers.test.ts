import fc from "fast-check";
import { printedTable } from "../../src/estimate/printedTable";
import { massText } from "../../src/measure/massText";
import { roughFigure } from "../../src/measure/roughFigure";
import { hoursText } from "../../src/pane/numbers";

/*
 * Figures as a person says them.
 */

test.each([
  [14.324, 14.3],
  [1.316, 1.32],
  [0.265, 0.27],
  [0.0487, 0.049],
  [223.08, 223],
  [12, 12],
  [1234, 1234],
  [0, 0],
])("%p is written as %p", (figure, written) => expect(roughFigure(figure)).toBe(written));

test.each([
  [0.0961, "mm", "96 g"],
  [0.1104, "cm", "110 g"],
  [0.9996, "mm", "1 kg"],
  [1.254, "mm", "1.25 kg"],
  [0.112, "in", "4 oz"],
  [0.14, "in", "4.9 oz"],
  [0.4535, "in", "1 lb"],
  [0.6, "in", "1.32 lb"],
  [0, "mm", "0 kg"],
] as const)("%p kg in a workbook in %s is %s", (kg, unit, told) => expect(massText(kg, unit)).toBe(told));

test.each([
  [0.09, "10 min"],
  [0.25, "15 min"],
  [0.44, "30 min"],
  [0.99, "1 hour"],
  [1.44, "1.4 hours"],
])("%p hours are %s", (hours, told) => expect(hoursText(hours)).toBe(told));

test("a printed table has money with hundredths, shares in per cent, and one sheet in the singular", () => {
  const table = printedTable([
    ["stock", "to buy", "unit", "yield", "net area", "cost", "hours"],
    ["board", 1, "sheets", 0.387, 14.324, 4, ""],
    ["board", 2, "sheets", 1, 0.265, 4.5, ""],
    ["labour", 20.05, "hours", "", 0, 491.225, 20.05],
  ]);
  expect(table.slice(1)).toEqual([
    ["board", "1", "sheet", "39 %", "14.3", "4.00", ""],
    ["board", "2", "sheets", "100 %", "0.27", "4.50", ""],
    ["labour", "20.1", "hours", "", "", "491.23", "20.1"],
  ]);
});

test("no figure has more digits than count, and none is further off than half of its last digit", () => {
  const figure = fc.double({ min: 1e-3, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(figure, (it) => {
      const told = roughFigure(it);
      expect(Math.abs(told - it)).toBeLessThanOrEqual(Math.max(0.05 * it, it >= 100 ? 0.5 : 0));
      expect(String(told).replace(/^0\.0*|\./g, "").length).toBeLessThanOrEqual(it >= 100 ? 7 : 3);
    }),
  );
});
