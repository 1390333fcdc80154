import { groupedJobs } from "../../src/estimate/groupedJobs";
import { planStock } from "../../src/estimate/stockPlans";
import { demandGroups } from "../../src/estimate/budget";
import { sizeSurvey } from "../../src/survey/sizeSurvey";

test("each group has the plans of its own stocks again, and what is left over belongs to none", () => {
  const cells = [
    ["Identifier", "Height", "Width", "Depth", "Enclosure", "Batch"],
    ["A", 300, 210, 40, "tray", "May"],
    ["B", 250, 180, 20, "four-flap wrapper", "June"],
    ["C", 310, 220, 30, "tray", "May"],
  ];
  const sized = sizeSurvey(cells, []);
  const { jobs, planned } = groupedJobs(demandGroups(sized, cells, "batch"), sized.settings);
  const plans = jobs.map((job) => planStock(job));
  const groups = planned([...plans, planStock(jobs[0]!)]);
  expect(groups.map(({ group, demands }) => [group, demands.length])).toEqual([
    ["May", 2],
    ["June", 1],
  ]);
  const items = groups.map(({ plans: own }) => [
    ...new Set(own.flatMap(({ plan }) => plan!.sheets.flatMap((s) => s.placements.map(({ piece }) => piece.item)))),
  ]);
  expect(items.map((each) => each.sort())).toEqual([["A", "C"], ["B"]]);
  expect(groups.flatMap((group) => group.plans)).toHaveLength(jobs.length);
});
