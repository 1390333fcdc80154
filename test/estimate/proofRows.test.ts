import { proofRows } from "../../src/estimate/provedCounts";
import { sizeSurvey } from "../../src/survey/sizeSurvey";

const headingsOf = (groups: readonly string[], ...settings: readonly string[]) =>
  proofRows(
    { plans: groups.map((group) => ({ group, plans: [] })) },
    sizeSurvey([["id", "height", "width", "depth", "enclosure"]], settings).settings,
  )[0];

test("the proof of counts names the column that the budget goes by, where there are several plans", () => {
  expect(headingsOf(["1", "2"], "estimate by=batch")?.[0]).toBe("batch");
  expect(headingsOf(["North", "South"], "estimate by=store")?.[0]).toBe("store");
  expect(headingsOf(["a", "b"], "estimate by=kind")?.[0]).toBe("enclosure");
  expect(headingsOf([""])?.[0]).toBe("stock");
});
