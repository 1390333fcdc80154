import { DEMO_SURVEY } from "../../src/cli/demoSurvey";
import { cell, refusal } from "./cell";

type Table = readonly (readonly unknown[])[];
const list = async (...args: Parameters<typeof cell> extends [string, ...infer A] ? A : never): Promise<Table> =>
  (await cell("CUTLIST", ...args)) as Table;

const HEADINGS = [
  "identifier",
  "enclosure",
  "part",
  "count",
  "length",
  "width",
  "material",
  "stock",
  "caliper",
  "grain",
  "folds",
  "how to cut it",
];
const COUNT = HEADINGS.indexOf("count") - 2;

/** PARTS of one item, with identifier and kind before each row and its counts multiplied. */
async function parts(
  identifier: string,
  kind: string,
  copies: number,
  ...item: Parameters<typeof cell>[1][]
): Promise<Table> {
  const [, ...rows] = (await cell("PARTS", ...item)) as Table;
  return rows.map((row) => [
    identifier,
    kind,
    ...row.map((each, i) => (i === COUNT ? (each as number) * copies : each)),
  ]);
}

/** What a whole survey does for a row without a weight, as settings of one cell: the guide's board, by size alone. */
const BY_GUIDE = "wall board=auto; weight=none";

const ITEMS = [
  ["Shelfmark", "Height", "Width", "Depth", "Enclosure", "Quantity", "Box", "Fit"],
  ["S 1", 300, 210, 40, "Tray", 2, null, null],
  ["S 2", "8 1/2 in", 150, 30, "drop-spine box", null, null, "loose"],
  ["S 3", 180, 110, 14, "slipcase", 1, "B 7", null],
  ["S 4", 178, 115, 16, null, 1, "B 7", null],
  ["S 5", "4O", 110, 14, "tray", 1, null, null],
  ["S 6", 100, 80, 20, "none", 1, null, null],
  [null, null, null, null, null, null, null, null],
  ["S 7", 100, 80, 20, "four-flap wrapper", 3, null, null],
];

test("every part of every item as PARTS answers it, counts of all copies, each item's own settings", async () => {
  const settings = "wall board=2.5 mm";
  const blanks = Array.from({ length: 9 }, () => "");
  expect(await list(ITEMS, settings)).toEqual([
    HEADINGS,
    ...(await parts("S 1", "tray", 2, 300, 210, 40, "tray", settings)),
    ...(await parts("S 2", "clamshell box", 1, "8 1/2 in", 150, 30, "clamshell box", settings, "fit=loose")),
    ...(await parts("S 3", "slipcase", 1, 180, 115, 30, "slipcase", settings)),
    ["S 4", "", "in box B 7", ...blanks],
    [
      "S 5",
      "tray",
      { error: "#VALUE!", message: 'height: got "4O"; give a length such as 40, 40 mm or 1 9/16 in' },
      ...blanks,
    ],
    ...(await parts("S 7", "four-flap wrapper", 3, 100, 80, 20, "four-flap wrapper", BY_GUIDE)),
  ]);
});

test("in inches", async () => {
  expect(await list([ITEMS[0]!, ["S 1", 12, 8.5, 1.5, "lidded box", 1, null, null]], "unit=in")).toEqual([
    HEADINGS,
    ...(await parts("S 1", "lidded box", 1, 12, 8.5, 1.5, "lidded box", `unit=in; ${BY_GUIDE}`)),
  ]);
});

test("the demo: its boards, and the card that its wrappers and chemise are folded from, add up to BOARD.AREA of SURVEY", async () => {
  // A wrapper and a chemise are folded from card, and that is what they take.
  const cut = (await list(DEMO_SURVEY))
    .slice(1)
    .filter((row) => row[6] === "board" || /^(inner piece|outer piece|chemise card)$/.test(String(row[2])));
  const fromList = cut.reduce(
    (sum, row) => sum + ((row[3] as number) * (row[4] as number) * (row[5] as number)) / 1e6,
    0,
  );
  const areas = (await cell("SURVEY", DEMO_SURVEY, "board area")) as Table;
  const fromSurvey = areas.reduce((sum, [area]) => sum + (typeof area === "number" ? area : 0), 0);
  expect(fromList).toBeGreaterThan(9);
  expect(fromSurvey).toBeCloseTo(fromList, 6);
});

test("more than a cell carries is refused with its size", async () => {
  const items = [
    ITEMS[0]!,
    ...Array.from({ length: 2500 }, (_, i) => [`S ${i}`, 300, 210, 40, "three-tray box", 1, null, null]),
  ];
  expect(await refusal("CUTLIST", items)).toMatch(
    /^#VALUE! items: got \d+ rows to answer, about \d+\.\d MB; a cell holds at most 2 MB; give fewer rows or columns at a time, or write the list with the command line$/,
  );
});
