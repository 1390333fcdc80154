import type { OpenGrid } from "../../../src/page/openGrid";
import { becomes } from "../browser";
import { cellLine, formulaOf, goTo, leave, open, page, type, valueOf } from "../openPage";

declare const openGrid: OpenGrid;

describe("formulas", () => {
  afterEach(leave);

  test("a function is found while it is typed, tells its arguments, and answers", async () => {
    await open();
    await goTo("U2");
    await page.keyboard.type("=ENC.OUTS", { delay: 20 });
    await page.getByText("Outside size of the enclosure", { exact: false }).click();
    const hint = page.getByText("[settings", { exact: false });
    await hint.waitFor();
    await page.keyboard.type("C2,D2,", { delay: 20 });
    expect(await hint.isVisible()).toBe(true);
    await page.keyboard.insertText('E2,H2,"height")');
    await page.keyboard.press("Enter");
    await becomes(() => valueOf("U2"), 334);
    // An edit is followed.
    await type("C2", "412");
    await becomes(() => valueOf("U2"), 434);
    // So is its undoing.
    await page.click("#undo");
    await becomes(() => valueOf("U2"), 334);
    // The press leaves the keyboard in the grid.
    await type("C2", "422");
    await becomes(() => valueOf("U2"), 444);
    // Who types on while the list is still that of the first letter, and ends with Enter, gets what was typed.
    await goTo("U3");
    await page.keyboard.type("=R");
    await page.locator('ul[data-u-comp="sheets-formula-editor"]').waitFor();
    await page.keyboard.type("OUND(2.4,0)");
    await page.keyboard.press("Enter");
    await becomes(() => formulaOf("U3"), "=ROUND(2.4,0)");
    expect(await page.evaluate(() => openGrid.workbook().isCellEditing())).toBe(false);
    // A list that is for the name takes the press.
    await goTo("U4");
    await page.keyboard.type("=ENC.MAS");
    await page.locator('ul[data-u-comp="sheets-formula-editor"] li:first-child:has-text("ENC.MASS")').waitFor();
    await page.keyboard.press("Enter");
    await becomes(() => page.evaluate(() => openGrid.workbook().isCellEditing()), true);
    await page.keyboard.press("Escape");
    // A formula that names its cell in a text follows it too.
    const put = (cell: string, content: string | number) =>
      page.evaluate(([at, value]) => void openGrid.workbook().getActiveSheet().getRange(at).setValue(value), [
        cell,
        content,
      ] as const);
    await put("U5", '=INDIRECT("C"&2)*2');
    await becomes(() => valueOf("U5"), 844);
    await put("C2", 423);
    await becomes(() => valueOf("U5"), 846);
  });

  test("the message of the selected cell in error stands below the grid, and goes with another cell", async () => {
    await open();
    await type("U2", '=ENC.OUTSIDE(C39,D39,E39,H39,"height")');
    await becomes(() => valueOf("U2"), "#VALUE!");
    await goTo("U2");
    await becomes(cellLine, expect.stringMatching(/^U2: width: got "21O"/));
    await goTo("A2");
    await becomes(cellLine, "");
    await type("V2", "=ENC.MASS(C2)");
    await goTo("V2");
    await becomes(cellLine, expect.stringContaining("ENC.MASS needs 4 arguments, and got 1"));
  });

  test("columns of the table, names and a whole survey work in formulas", async () => {
    await open();
    await type("T2", '=ENC.OUTSIDE([@Height],Survey[@Width],Survey[[#This Row],[Depth]],[@Enclosure],"height")');
    await becomes(() => valueOf("T2"), 334);
    await becomes(() => formulaOf("T2"), expect.stringContaining("Survey[[#This Row],[Height]]"));
    // A half-typed reference leaves no trace in later formulas.
    await goTo("T3");
    await page.keyboard.type("=SUM(Survey[", { delay: 3 });
    await page.keyboard.press("Enter");
    await page.keyboard.press("Escape");
    await type("T4", "=SUM(C2:C3)");
    await becomes(() => valueOf("T4"), 622);
    await type("W1", '=ENC.SURVEY(A1:T41,"outside height")');
    await becomes(() => formulaOf("W1"), '=ENC.SURVEY(A1:T41,"outside height")');
    await becomes(() => valueOf("W1"), "outside height");
    await becomes(() => valueOf("W5"), 273);
    await becomes(() => valueOf("W39"), "#VALUE!");
    await goTo("W39");
    await becomes(cellLine, expect.stringMatching(/^W39: .*21O/));
  });
});
