import type * as SurveyAsks from "../../functions/surveyAsks";
import { estimate, layout, sheets, sizes } from "../../functions/survey";

const ITEMS = [
  ["ID", "Height mm", "Width mm", "Depth mm", "Enclosure"],
  ["A1", 300, 210, 40, "tray"],
];
const WAITS = [["press Enter to calculate"]];

// What Excel hands over while a part of a formula is shown; its type says text, its documentation a truth.
test.each(["true", true])("while a formula is typed no plan is made: preview %p", async (isInValuePreview) => {
  const typing = { isInValuePreview } as unknown as CustomFunctions.Invocation;
  for (const fn of [sheets, layout, sizes]) expect(await fn(ITEMS, [["all"]], undefined, typing)).toEqual(WAITS);
  expect(await estimate(ITEMS, undefined, typing)).toEqual(WAITS);
});

test("a plan in a cell ends by the steps that it may take, whatever the clock says", () => {
  const items = [
    ITEMS[0]!,
    ...Array.from({ length: 40 }, (_, i) => [`B${i}`, 200 + 7 * (i % 13), 150 + 11 * (i % 7), 20 + i, "lidded box"]),
  ];
  // Each time with code that remembers no plan.
  const planned = (): unknown => {
    let answer: unknown;
    jest.isolateModules(() => {
      const { replyTo } = jest.requireActual<typeof SurveyAsks>("../../functions/surveyAsks");
      answer = replyTo({ name: "layout", items, settings: [], choice: "all" });
    });
    return answer;
  };
  const usual = planned();
  let hours = 0;
  const clock = jest.spyOn(performance, "now").mockImplementation(() => ++hours * 3_600_000);
  const late = planned();
  clock.mockRestore();
  expect(hours).toBeGreaterThan(0);
  expect(late).toEqual(usual);
  expect(usual).toMatchObject({ table: expect.any(Array) });
});

test("where a page has no threads of its own it gets a moment after each step of a stock that is planned, and the same answers", async () => {
  const { replyInTurns, replyTo } = jest.requireActual<typeof SurveyAsks>("../../functions/surveyAsks");
  const own = [ITEMS[0]!, ["A2", 310, 215, 45, "clamshell box"]];
  const asks = (["sheets", "layout", "estimate"] as const).map((name) => ({
    name,
    items: own,
    settings: [],
    choice: "all",
  }));
  const moments = jest.spyOn(globalThis, "setTimeout");
  const replies = await Promise.all(asks.map(replyInTurns));
  const given = moments.mock.calls.length;
  moments.mockRestore();
  expect(replies).toEqual(asks.map(replyTo));
  for (const reply of replies) expect(reply).toHaveProperty("table");
  // For each ask: before each of the three stocks, and before the answer; once, within each stock before it is drafted, laid
  // out, counted and checked, at least.
  expect(given).toBeGreaterThanOrEqual(asks.length * 4 + 3 * 4);
});
