import { estimateFor } from "../../src/estimate/budget";
import { leftOutRows } from "../../src/estimate/leftOutRows";
import { sheetsAnswer } from "../../src/estimate/sheetAnswers";
import { InputError } from "../../src/measure/errors";
import { sizeSurvey } from "../../src/survey/sizeSurvey";

const HEADINGS = ["id", "height", "width", "depth", "enclosure"];
/** What the board guide gives an item of that size. */
const CARD = "conservation card 60 pt";

const WRAPPER = [HEADINGS, ["A", 1500, 1400, 900, "four-flap wrapper"]];

describe("an item larger than every sheet", () => {
  const sized = sizeSurvey(WRAPPER, []);

  it("has no figure for its card, and says why", () => {
    const table = sheetsAnswer(sized, "all") as unknown[][];
    const card = table.find(([stock]) => stock === CARD)!;
    expect(card.slice(1, 6)).toEqual([0, "sheets (no piece fits)", "", "no", ""]);
    expect(table.flat().filter((cell) => typeof cell === "number" && Number.isNaN(cell))).toEqual([]);
    expect(() => sheetsAnswer(sized, CARD)).toThrow(InputError);
    expect(() => sheetsAnswer(sized, CARD)).toThrow(/none of its 2 pieces can be cut/);
  });

  it("is listed in the estimate as not in the cost", () => {
    const estimate = estimateFor(sized, WRAPPER);
    const line = estimate.lines.find(({ material }) => material === "card")!;
    expect([line.total, line.provedLeast, line.yield]).toEqual([0, false, undefined]);
    expect(line.notInCost).toContain("no piece fits");
    const leftOut = leftOutRows(
      sized,
      estimate.plans.flatMap(({ plans }) => plans),
      estimate,
    );
    expect(leftOut.flat().join("\n")).toContain("no piece fits the stock");
  });
});

it("a stock that is named like sheets in hand costs what its row says", () => {
  const stock = [
    ["stock", "material", "caliper", "sheet length", "sheet width", "grain", "price"],
    ["shop board, on hand", "board", 2, 1000, 700, "fixed", 3],
  ];
  const settings = [
    ["setting", "value"],
    ["wall board", "shop board, on hand"],
    ["covering", "none"],
    ["lining", "none"],
  ];
  const cells = [HEADINGS, ["A", 300, 200, 40, "tray"]];
  const sized = sizeSurvey(cells, [settings, stock]);
  const line = estimateFor(sized, cells).lines.find(({ material }) => material === "board")!;
  expect([line.quantity, line.cost]).toEqual([1, 3]);
});
