import type { BookPort } from "../../src/host/port";
import type { OpenGrid } from "../../src/page/openGrid";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import { open, page } from "./openPage";

/*
 * A survey for the pane beside the local workbook, and what a person does there.
 */

declare const openGrid: OpenGrid;
declare const bookPort: BookPort;

const HEADINGS = ["Identifier", "Title", "Height", "Width", "Depth", "Weight (kg)", "Enclosure"];
export const HOSTILE = `<img src=x onerror="document.title='taken'"> =1+1 مرحبا 📦 ${"long ".repeat(6000)}`;

/** A user's own list of sizes, and a currency, under the names that the functions are given. */
export const LISTS = {
  sheets: [
    {
      name: "Sizes",
      rows: [
        ["size", "enclosure", "height", "width", "depth"],
        ["Small", "tray", 250, 180, 35],
        ["Large", "tray", 320, 230, 50],
      ],
    },
    {
      name: "Settings",
      rows: [
        ["setting", "value"],
        ["currency", "EUR"],
      ],
    },
  ],
  names: [
    { name: "sizes", refersTo: "Sizes!$A$1:$E$3" },
    { name: "settings", refersTo: "Settings!$A$1:$B$2" },
  ],
} as const;

export function survey(rows = 6, lists?: typeof LISTS): Uint8Array {
  const kinds = ["tray", "lidded box", "clamshell box"];
  const items = [
    {
      name: "Items",
      table: "Survey",
      rows: [
        HEADINGS,
        ...Array.from({ length: rows }, (_, i) => [
          `A${i + 1}`,
          i === 1 ? HOSTILE : `Item ${i + 1}`,
          i === 2 ? "21O" : 200 + ((i * 7) % 90),
          150 + ((i * 5) % 60),
          20 + (i % 9),
          0.3,
          kinds[i % 3]!,
        ]),
      ],
    },
  ] as const;
  return createWorkbook([...items, ...(lists?.sheets ?? [])], lists?.names);
}

export async function openSurvey(rows?: number, lists?: typeof LISTS): Promise<void> {
  await open("survey.xlsx", survey(rows, lists));
  await page.waitForSelector("#pane .view:not([hidden]) h2, #pane .view:not([hidden]) p");
}

export const view = (name: string) => page.click(`#pane [role=tab]:has-text("${name}")`);
export const press = (name: string) => page.click(`#pane :is(.view:not([hidden]), .acts) button:has-text("${name}")`);
export const decide = (label: string, option: string) =>
  page.selectOption(`#pane .view:not([hidden]) .decisions label:has-text("${label}") select`, { label: option });
/** Columns that are frozen, headings, and rows of the survey that no filter hides, as the grid has them. */
export const sheetNow = () =>
  page.evaluate(() => {
    const sheet = openGrid.workbook().getSheetByName("Items")!;
    return {
      frozen: sheet.getFreeze().xSplit,
      headings: sheet.getRange("A1:Z1").getValues()[0]!,
      visible: [2, 3, 4, 5, 6, 7].filter((row) => sheet.getSheet().getRowVisible(row - 1)),
    };
  });
/** Does something by clicks. @returns how many they were */
export async function clicked(work: (click: (target: string) => Promise<void>) => Promise<void>): Promise<number> {
  let clicks = 0;
  await work(async (target) => {
    clicks++;
    await page.click(target);
  });
  return clicks;
}
export const paneSaid = () => page.textContent("#pane .acts [role=status] span:first-child");
export const goToRow = (row: number, column = 1, sheet = "Items") =>
  page.evaluate((cell) => bookPort.goTo(cell), { sheet, row, column });
/** Values and formulas of the first cells of a row. */
export const cells = (sheet: string, row: number, count: number) =>
  page.evaluate(
    ([name, r, last]) => {
      const range = openGrid
        .workbook()
        .getSheetByName(name)!
        .getRange(r - 1, 0, 1, last);
      const [values, formulas] = [range.getValues()[0]!, range.getFormulas()[0]!];
      return values.map((value, at) => ({ value, formula: formulas[at]! }));
    },
    [sheet, row, count] as const,
  );
export const cell = async (sheet: string, row: number, column: number) =>
  (await cells(sheet, row, column))[column - 1]!;
export const put = (sheet: string, row: number, column: number, value: string | number) =>
  page.evaluate(
    ([name, r, c, v]) =>
      void openGrid
        .workbook()
        .getSheetByName(name)!
        .getRange(r - 1, c - 1)
        .setValue(v),
    [sheet, row, column, value] as const,
  );
