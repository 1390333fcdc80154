import { planCutting } from "../../src/cutting/planCutting";
import type { Placement, Plan, SheetPlan } from "../../src/cutting/types";
import { verifyPlan } from "../../src/cutting/verify";
import { board, piece, sheetStock } from "./jobs";

const pieces = [piece(60, 40), piece(40, 30, { count: 2 }), piece(30, 30, { id: "free", turn: true })];
const stock = sheetStock(board(100, 100));
const good = planCutting(pieces, stock);

/** The plan with its first sheet changed. */
function withSheet(change: (sheet: SheetPlan) => SheetPlan): Plan {
  return { ...good, sheets: good.sheets.map((sheet, index) => (index === 0 ? change(sheet) : sheet)) };
}

/** The plan with the piece of 60 x 40 changed. */
function withFirst(change: (placement: Placement) => Placement): Plan {
  return withSheet((sheet) => ({
    ...sheet,
    placements: sheet.placements.map((placement) => (placement.length === 60 ? change(placement) : placement)),
  }));
}

function faultsOf(plan: Plan): string {
  return verifyPlan(plan, pieces, stock).join("; ");
}

it("passes a good plan", () => {
  expect(verifyPlan(good, pieces, stock)).toEqual([]);
});

describe("rejects, with the reason, a plan in which", () => {
  it("a piece is missing", () => {
    expect(faultsOf(withSheet((sheet) => ({ ...sheet, placements: sheet.placements.slice(1) })))).toMatch(
      /0 of 1 are placed|1 of 2 are placed/,
    );
  });
  it("a copy is there twice", () => {
    expect(faultsOf({ ...good, sheets: [...good.sheets, ...good.sheets] })).toMatch(/copy 1 is there twice/);
  });
  it("a copy was not asked for", () => {
    expect(faultsOf(withFirst((placement) => ({ ...placement, copy: 9 })))).toMatch(/no copy 9 was asked for/);
  });
  it("a piece was not asked for", () => {
    expect(faultsOf(withFirst((placement) => ({ ...placement, piece: piece(1, 1, { id: "stranger" }) })))).toMatch(
      /stranger\) was not asked for/,
    );
  });
  it("a piece sticks out of the sheet", () => {
    expect(faultsOf(withFirst((placement) => ({ ...placement, x: 60.1 })))).toMatch(/does not lie within the sheet/);
  });
  it("two pieces overlap", () => {
    const shifted = withSheet((sheet) => ({
      ...sheet,
      placements: sheet.placements.map((placement) => ({ ...placement, x: 0, y: 0 })),
    }));
    expect(faultsOf(shifted)).toMatch(/overlap/);
  });
  it("a piece has shrunk", () => {
    expect(faultsOf(withFirst((placement) => ({ ...placement, length: placement.length - 1 })))).toMatch(
      /another size/,
    );
  });
  it("a piece lies across the grain", () => {
    expect(
      faultsOf(
        withFirst((placement) => ({ ...placement, turned: true, length: placement.width, width: placement.length })),
      ),
    ).toMatch(/across the grain/);
  });
  it("a piece lies nowhere", () => {
    expect(faultsOf(withFirst((placement) => ({ ...placement, x: NaN })))).toMatch(/has no place/);
  });
  it("a cut is missing", () => {
    expect(faultsOf(withSheet((sheet) => ({ ...sheet, cuts: sheet.cuts.slice(1) })))).toMatch(
      /edge to edge of no panel|do not free/,
    );
  });
  it("a cut stops short of the edge", () => {
    expect(
      faultsOf(withSheet((sheet) => ({ ...sheet, cuts: sheet.cuts.map((cut) => ({ ...cut, to: cut.to - 1 })) }))),
    ).toMatch(/edge to edge of no panel/);
  });
  it("the sheet is not in stock", () => {
    expect(faultsOf(withSheet((sheet) => ({ ...sheet, length: 200 })))).toMatch(/no sheet board of 200 x 100 mm/);
  });
  it("more sheets are used than are in hand", () => {
    expect(verifyPlan(good, pieces, sheetStock(board(100, 100, { onHand: 0 }))).join()).toMatch(
      /1 sheets board are used, 0 are in hand/,
    );
  });
  it("the cost is not that of the sheets", () => {
    expect(faultsOf({ ...good, cost: 3 })).toMatch(/the cost is given as 3/);
  });
  it("the bound is above the plan", () => {
    expect(faultsOf({ ...good, sheetBound: 2, costBound: 2 })).toMatch(/above the cost.*fewer than the bound/);
  });
  it("the gap is not kept", () => {
    const near = planCutting([piece(20, 20, { count: 2 })], stock);
    expect(
      verifyPlan(
        near,
        near.sheets[0]!.placements.slice(0, 1).map((placement) => placement.piece),
        stock,
        { pieceGap: 1 },
      ).join(),
    ).toMatch(/nearer than the gap/);
  });
  it("a cut goes back over what is cut off already", () => {
    const half = piece(50, 100);
    const plan = planCutting([half], stock);
    const [sheet] = plan.sheets;
    const back = { way: "across", at: 40, from: 0, to: 100, setting: -10 } as const;
    const after = { ...plan, sheets: [{ ...sheet!, cuts: [...sheet!.cuts, back] }] };
    expect(verifyPlan(after, [half], stock)).toEqual([
      "sheet 1: the cut across at 40 mm runs from edge to edge of no panel",
    ]);
  });
  it("the trim is not kept", () => {
    expect(verifyPlan(good, pieces, stock, { edgeTrim: 1 }).join()).toMatch(/within the sheet and its trim/);
  });
});

it("rejects the pinwheel, which no cut from edge to edge divides", () => {
  const long = piece(60, 40, { id: "long", count: 2 });
  const wide = piece(40, 60, { id: "wide", count: 2 });
  const at = (own: typeof long, copy: number, x: number, y: number): Placement => ({
    piece: own,
    copy,
    x,
    y,
    length: own.length,
    width: own.width,
    turned: false,
  });
  const placements = [at(long, 1, 0, 0), at(wide, 1, 60, 0), at(long, 2, 40, 60), at(wide, 2, 0, 40)];
  const pinwheel = { ...good, sheets: [{ ...good.sheets[0]!, placements, cuts: [] }] };
  expect(verifyPlan(pinwheel, [long, wide], stock)).toContain(
    "sheet 1: the pieces cannot be freed by cuts from edge to edge",
  );
});
