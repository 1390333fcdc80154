import { countPlan } from "../../src/cutting/countPlan";
import { arrange } from "../../src/cutting/arrange";
import { cutOrder } from "../../src/cutting/cutOrder";
import { ALONG_LENGTH, ALONG_WIDTH, NONE } from "../../src/cutting/forest";
import { UNITS_PER_MM } from "../../src/cutting/grid";
import { prepareSheets } from "../../src/cutting/job";
import type { Panel } from "../../src/cutting/panels";
import { planCutting } from "../../src/cutting/planCutting";
import { tidySheets } from "../../src/cutting/tidySheets";
import { boardJob } from "../bench/cuttingClasses";
import { board, piece, sheetStock } from "./jobs";

/** Units of the grid in a tenth of a millimetre. */
const TENTH = UNITS_PER_MM / 10;

const leaf = (length: number, width: number, own: number): Panel => ({
  length: length * TENTH,
  width: width * TENTH,
  axis: ALONG_LENGTH,
  parts: [],
  piece: own,
});
const cut = (axis: number, length: number, width: number, ...parts: readonly Panel[]): Panel => ({
  length: length * TENTH,
  width: width * TENTH,
  axis,
  parts,
  piece: NONE,
});

// A sheet of 100 x 60 mm in tenths: a strip 20 wide with a spare end, then a strip 40 wide of two pieces.
const sheet = cut(
  ALONG_WIDTH,
  1000,
  600,
  cut(ALONG_LENGTH, 1000, 200, leaf(300, 200, NONE), leaf(700, 200, 1)),
  cut(ALONG_LENGTH, 1000, 400, leaf(300, 400, 2), leaf(700, 400, 3)),
);

it("puts the widest strip first and what is spare last", () => {
  const [first, second] = arrange(sheet).parts;
  expect([first?.width, second?.width]).toEqual([400 * TENTH, 200 * TENTH]);
  expect(second?.parts.map((part) => part.piece)).toEqual([1, NONE]);
});

it("cuts the long strips first, then all that one setting serves", () => {
  expect(cutOrder(arrange(sheet), 0, 5).map(({ way, at, from, to, setting }) => [way, at, from, to, setting])).toEqual([
    ["along", 45, 5, 105, 40],
    ["across", 75, 5, 45, 70],
    ["across", 75, 45, 65, 70],
  ]);
});

it("makes one panel of two spare ones side by side", () => {
  const nested = cut(
    ALONG_LENGTH,
    100,
    10,
    cut(ALONG_LENGTH, 60, 10, leaf(30, 10, 0), leaf(30, 10, NONE)),
    leaf(40, 10, NONE),
  );
  expect(arrange(nested).parts.map(({ length, piece: own }) => [length, own])).toEqual([
    [30 * TENTH, 0],
    [70 * TENTH, NONE],
  ]);
});

it("counts cuts, settings and set-ups, the first cut of every sheet among them", () => {
  const plan = planCutting([piece(50, 60, { count: 8 })], sheetStock(board(100, 120)));
  // Two sheets alike: on each one cut across at 50, two along at 60. A sheet is finished before the next begins.
  expect(plan.sheets.map(({ layout }) => layout)).toEqual([1, 1]);
  expect([plan.cutCount, plan.settings, plan.setUps]).toEqual([6, 2, 4]);
});

it("lays a sheet out again when that takes fewer set-ups", () => {
  const { job } = prepareSheets([piece(50, 50, { count: 2 }), piece(100, 50)], [board(100, 100)], {});
  // Two short pieces, each in a strip of its own: side by side one cut fewer frees them.
  const short = (own: number) => cut(ALONG_LENGTH, 1000, 500, leaf(500, 500, own), leaf(500, 500, NONE));
  const clumsy = [
    { kind: 0, panel: cut(ALONG_WIDTH, 1000, 1000, short(0), short(1)) },
    { kind: 0, panel: cut(ALONG_WIDTH, 1000, 1000, leaf(1000, 500, 2), leaf(1000, 500, NONE)) },
  ];
  const [tidied, same] = tidySheets(job, clumsy);
  expect(cutOrder(arrange(clumsy[0]!.panel), 0, 0)).toHaveLength(3);
  expect(cutOrder(arrange(tidied!.panel), 0, 0)).toHaveLength(2);
  expect(same).toEqual(clumsy[1]);
});

it("keeps few panels waiting where a limit is given", () => {
  const { pieces } = boardJob(40, 3);
  const own = pieces.map(({ length, width }) => piece(length, width));
  const bench = { stages: 3, leastWaste: 5, matchAllowance: 0, spareSheets: 0, benchLength: 1500 };
  const loose = (loosePanels: number | undefined) => {
    const options = { bench: { ...bench, loosePanels }, budget: { iterations: 200 } };
    const { sheets } = planCutting(own, sheetStock(board(1400, 1000)), options);
    return countPlan(sheets, { edgeTrim: 0, pieceGap: 0, stages: 3, leastWaste: 5, absorbed: 5 }).loosePanels;
  };
  expect(loose(undefined)).toBeGreaterThan(4);
  expect(loose(4)).toBeLessThanOrEqual(4);
});
