import type { OpenGrid } from "../../../src/page/openGrid";
import { becomes } from "../browser";
import { SHEET, goTo, leave, open, page, type, valueOf } from "../openPage";

declare const openGrid: OpenGrid;

/** Contrast of small text with what is behind it. Source: Web Content Accessibility Guidelines 2.2, 1.4.3. */
const READABLE = 4.5;

/** Contrast of every text around the cells, by what it reads, and of two headings that are drawn. Runs in the page. */
function partContrasts(canvas: string): { part: string; contrast: number }[] {
  const luminance = (colour: readonly number[]): number => {
    const [r = 0, g = 0, b = 0] = colour.map((c) =>
      c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4,
    );
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const contrastOf = (a: readonly number[], b: readonly number[]): number => {
    const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
    return (light + 0.05) / (dark + 0.05);
  };
  const numbersIn = (colour: string): number[] => (colour.match(/[\d.]+/g) ?? []).map(Number);
  const behind = (element: Element | null): number[] => {
    for (let at = element; at; at = at.parentElement) {
      const [r = 0, g = 0, b = 0, alpha = 1] = numbersIn(getComputedStyle(at).backgroundColor);
      if (alpha > 0.5) return [r, g, b];
    }
    return [255, 255, 255];
  };
  const parts = Array.from(document.querySelectorAll("#grid *")).flatMap((element) => {
    const own = Array.from(element.childNodes).filter(({ nodeType }) => nodeType === Node.TEXT_NODE);
    const text = element instanceof HTMLInputElement ? element.value : own.map((node) => node.textContent).join("");
    if (text.trim() === "" || !element.checkVisibility() || element instanceof HTMLStyleElement) return [];
    const ink = numbersIn(getComputedStyle(element).color).slice(0, 3);
    return [{ part: text.trim(), contrast: contrastOf(ink, behind(element)) }];
  });
  const drawn = document.querySelector<HTMLCanvasElement>(canvas)!;
  const scale = drawn.width / drawn.clientWidth;
  const drawing = (part: string, rect: readonly [number, number, number, number]) => {
    const [x, y, width, height] = rect.map((length) => length * scale) as [number, number, number, number];
    const { data } = drawn.getContext("2d")!.getImageData(x, y, width, height);
    const pixels = Array.from({ length: data.length / 4 }, (_, i) => [...data.slice(i * 4, i * 4 + 3)]);
    const paper = pixels[0]!;
    return { part, contrast: Math.max(...pixels.map((pixel) => contrastOf(pixel, paper))) };
  };
  const sheet = openGrid.workbook().getActiveSheet();
  const [c, fifth] = [sheet.getRange("C1").getCellRect(), sheet.getRange("A5").getCellRect()];
  return [
    ...parts,
    drawing("heading C", [c.left + 3, 3, c.width - 6, c.top - 6]),
    drawing("heading 5", [3, fifth.top + 3, fifth.left - 6, fifth.height - 6]),
  ];
}

describe("keyboard and looks", () => {
  afterEach(leave);

  test("the keyboard goes from the grid to the toolbar and the pane and back, and folds the pane", async () => {
    await open();
    await type("U2", "1");
    const at = () =>
      page.evaluate(() => {
        const now = document.activeElement;
        return `${now?.closest("#bar, #grid, #pane")?.id} ${now?.textContent}`.trim();
      });
    await page.keyboard.press("F6");
    expect(await at()).toBe("bar Undo");
    await page.keyboard.press("F6");
    expect(await at()).toBe("pane This item");
    await page.keyboard.press("F6");
    expect(await at()).toMatch(/^grid/);
    await page.keyboard.type("7");
    await page.keyboard.press("Enter");
    await becomes(() => valueOf("U3"), 7);
    await page.keyboard.press("Shift+F6");
    expect(await at()).toBe("pane This item");
    await page.focus("#side");
    await page.keyboard.press("Enter");
    expect(await page.getAttribute("#side", "aria-expanded")).toBe("false");
    await page.keyboard.press("Enter");
    expect(await page.getAttribute("#side", "aria-expanded")).toBe("true");
  });

  test("the grid's own parts are readable in light and in dark", async () => {
    const parts = () => page.evaluate(partContrasts, SHEET);
    const named = async () => (await parts()).map(({ part }) => part);
    const readable = async () => {
      await goTo("C2");
      await becomes(named, expect.arrayContaining(["C2", "Survey", "heading C", "heading 5"]));
      // The grid draws the cells first and the headings of rows and columns a frame later.
      await becomes(async () => (await parts()).filter(({ contrast }) => contrast < READABLE), []);
    };
    await open();
    await readable();
    await page.emulateMedia({ colorScheme: "dark" });
    await page.reload();
    await page.waitForFunction(() => document.body.dataset["ready"] === "yes");
    await readable();
  });
});
