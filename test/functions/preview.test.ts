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
