import type { Browser, Page } from "playwright-core";
import type { OpenGrid } from "../../src/page/openGrid";
import { becomes, launched, opened, type OpenPage } from "./browser";

/*
 * The one page that the stories in `inBrowser` share, and what they do in its grid.
 */

declare const openGrid: OpenGrid;

let browser: Browser | undefined;
/** The survey that is open, and the page that shows it. */
export let at: OpenPage;
export let page: Page;

/** Opens a survey, the demo survey unless another is given. */
export async function open(name?: string, bytes?: Uint8Array): Promise<void> {
  browser ??= await launched();
  at = await opened(browser, name, bytes);
  page = at.page;
}

/** Leaves the survey. The page asked nothing of other addresses, and the browser found nothing wrong. */
export async function leave(): Promise<void> {
  await at.close();
  expect([at.outside, at.wrong]).toEqual([[], []]);
}

export async function closeBrowser(): Promise<void> {
  await browser?.close();
}

/** What the grid draws its cells on. */
export const SHEET = "#univer-sheet-main-canvas_book";

export const goTo = (cell: string) =>
  page.evaluate((cell) => void openGrid.workbook().getActiveSheet().getRange(cell).activate(), cell);
export const valueOf = (cell: string) =>
  page.evaluate((at) => openGrid.workbook().getActiveSheet().getRange(at).getValue(), cell);
export const formulaOf = (cell: string) =>
  page.evaluate((at) => openGrid.workbook().getActiveSheet().getRange(at).getFormula(), cell);
export const said = () => page.textContent("#said");
export const cellLine = () => page.textContent("#cell");

/**
 * Types into a cell and presses Enter until the cell is done: a list of suggestions may take a press. The first letter is
 * a key, which begins the cell; the others come at once.
 */
export async function type(cell: string, text: string): Promise<void> {
  await goTo(cell);
  await page.keyboard.press(text.charAt(0));
  await page.keyboard.insertText(text.slice(1));
  await page.keyboard.press("Enter");
  await becomes(async () => {
    const editing = await page.evaluate(() => openGrid.workbook().isCellEditing());
    if (editing) await page.keyboard.press("Enter");
    return editing;
  }, false);
}
