import type { Cut, Placement, Plan, SheetPlan } from "../../src/cutting/types";
import type { StockPlan } from "../../src/estimate/stockPlans";
import { groupOffCuts, sheetGroups } from "../../src/paper/sheetGroups";

const across = (at: number, from: number, to: number): Cut => ({ way: "across", at, from, to, setting: at });
const along = (at: number, from: number, to: number): Cut => ({ way: "along", at, from, to, setting: at });
const piece = (item: string, x: number, y: number, length: number, width: number): Placement => ({
  piece: { id: item, item, part: "cover", length, width, turn: false },
  copy: 1,
  x,
  y,
  length,
  width,
  turned: false,
});
const sheet = (given: Partial<SheetPlan>): SheetPlan => ({
  stock: "board",
  length: 1000,
  width: 700,
  layout: 0,
  placements: [],
  cuts: [],
  ...given,
});

test("sheets cut alike are drawn once, numbered as they lie in the plan", () => {
  const sheets = [0, 1, 0, 2, 0].map((layout) => sheet({ layout }));
  expect(sheetGroups(planOf("sheets", sheets)).map(({ numbers, from }) => [numbers, from])).toEqual([
    [["1", "3", "5"], undefined],
    [["2"], undefined],
    [["4"], undefined],
  ]);
});

test("a stock without a plan has no drawings", () => {
  expect(sheetGroups({ ...planOf("sheets", []), plan: undefined })).toEqual([]);
});

test("a roll is drawn in stretches no longer than 1.4 widths where a cut goes right across, with their own cuts", () => {
  // A roll 500 wide, so 700 at most: 0 to 650 holds both 300 and 650; 1200 - 650 = 550; 1500 - 650 = 850 is too long.
  const roll = sheet({
    length: 1500,
    width: 500,
    placements: [
      piece("A", 0, 0, 300, 500),
      piece("B", 300, 0, 350, 300),
      piece("C", 650, 0, 550, 250),
      piece("D", 1200, 0, 300, 500),
    ],
    cuts: [across(300, 0, 500), across(650, 0, 500), across(1200, 0, 500), along(300, 300, 650), along(250, 650, 1200)],
  });
  const groups = sheetGroups(planOf("roll", [roll]));
  expect(
    groups.map(({ numbers, from, sheets: [{ length, placements }] }) => ({
      numbers,
      from,
      length,
      pieces: placements.map(({ piece: { item }, x }) => `${item} at ${x}`),
    })),
  ).toEqual([
    { numbers: ["1"], from: 0, length: 650, pieces: ["A at 0", "B at 300"] },
    { numbers: ["2"], from: 650, length: 550, pieces: ["C at 0"] },
    { numbers: ["3"], from: 1200, length: 300, pieces: ["D at 0"] },
  ]);
  expect(
    groups.map(({ sheets: [{ cuts }] }) => cuts.map(({ way, at, from, to }) => `${way} ${at}: ${from} to ${to}`)),
  ).toEqual([
    ["across 300: 0 to 500", "across 650: 0 to 500", "along 300: 300 to 650"],
    ["across 550: 0 to 500", "along 250: 0 to 550"],
    [],
  ]);
  // Beside B 500 - 300 over 650 - 300, beside C 500 - 250 over 1200 - 650; D is as wide as the roll.
  const none = { edgeTrim: 0, pieceGap: 0 };
  expect(
    groups.map((group) => groupOffCuts(group, none).map(({ x, y, length, width }) => [x, y, length, width])),
  ).toEqual([[[300, 300, 350, 200]], [[0, 250, 550, 250]], []]);
});

/** A plan with these sheets; figures that a drawing does not ask for are 0. */
function planOf(form: "sheets" | "roll", sheets: readonly SheetPlan[]): StockPlan {
  const plan: Plan = {
    sheets,
    counts: [],
    cost: 0,
    costBound: 0,
    sheetBound: 0,
    rollLength: 0,
    rollBound: 0,
    provedLeast: false,
    uncuttable: [],
    pieceAreaM2: 0,
    sheetAreaM2: 0,
    cutCount: 0,
    settings: 0,
    setUps: 0,
    iterations: 0,
  };
  return { stock: "board", material: "board", form, netAreaM2: 0, pieces: 0, plan, figures: undefined, sources: [] };
}
