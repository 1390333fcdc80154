import { DEMO_SURVEY } from "../../src/cli/demoSurvey";
import { loadExcelRuntime } from "../runtime/excelRuntime";

const runtime = loadExcelRuntime();
// A few rows: inside node:vm, which slows every global name, a plan takes ten times as long as in a browser.
const demo = DEMO_SURVEY.slice(0, 12).map((row) => [...row]);

const ITEMS = [
  ["id", "height", "width", "depth", "enclosure", "quantity", "batch"],
  ["A1", 300, 210, 40, "tray", 2, "May"],
  ["A2", 200, 150, 20, "slipcase", 1, "June"],
  ["A3", 2000, 150, 20, "tray", 1, "June"],
  ["A4", "4O", 150, 20, "tray", 1, "June"],
];

async function table(id: string, ...args: Parameters<typeof runtime.callCell>[1][number][]): Promise<unknown[][]> {
  const answer = await runtime.callCell(id, args);
  if (!("value" in answer)) throw new Error(JSON.stringify(answer));
  return answer.value as unknown[][];
}

test("sheets to buy of one board is a number, never under the least possible of the table of all", async () => {
  const [[one]] = (await table("SHEETS", demo, "conservation board 2")) as [[number]];
  const all = await table("SHEETS", demo, "all");
  const row = all.find(([stock]) => stock === "conservation board 2")!;
  expect(row[1]).toBe(one);
  expect(row[3]).toBeLessThanOrEqual(one);
  expect(row[5]).toBeLessThanOrEqual(1);
});

test("the same arguments give the same plan", async () => {
  expect(await table("LAYOUT", demo, "conservation board 2")).toEqual(
    await table("LAYOUT", demo, "conservation board 2"),
  );
});

test("every piece of the cut list lies somewhere in the layout, or is listed as left out", async () => {
  const cutList = (await table("CUTLIST", ITEMS)).slice(1).filter((row) => row[6] === "board");
  const wanted = cutList.reduce((sum, row) => sum + (row[3] as number), 0);
  const boards = [...new Set(cutList.map((row) => row[7] as string))];
  expect(boards).toEqual(["conservation board 2.5", "conservation board 2"]);
  const layouts = await Promise.all(boards.map((board) => table("LAYOUT", ITEMS, board)));
  const layout = layouts.flatMap((rows) => rows.slice(1));
  const leftOut = (await table("SHEETS", ITEMS, "all")).filter(([item]) => item === "A3");
  // The two-metre tray's base and side walls are longer than any sheet; its head walls are not, and its linings are lapped.
  expect(leftOut.map(([, reason]) => reason)).toEqual([
    "base (1) of conservation board 2.5: larger than every sheet (join it: join=yes; or add a larger size to the stock table)",
    "side wall (2) of conservation board 2.5: larger than every sheet (join it: join=yes; or add a larger size to the stock table)",
    "flange card (1) of folding card 0.4: larger than every sheet (join it: join=yes; or add a larger size to the stock table)",
  ]);
  // Walls lie in strips that name them with their number.
  const copies = (part: string) => [...part.matchAll(/ x (\d+)/g)].reduce((sum, [, count]) => sum + Number(count), 0);
  expect(layout.reduce((sum, row) => sum + (copies(row[3] as string) || 1), 0)).toBe(wanted - 3);
});

test("a budget adds up as it is printed, and lists what it leaves out", async () => {
  const [notice, ...rows] = await table("ESTIMATE", ITEMS);
  // The starter stock has prices that nobody quoted.
  expect(notice![0]).toMatch(
    /^Example prices, not quotes: conservation board 2, conservation board 2.5, folding card 0.4, /,
  );
  expect(notice!.slice(1).join("")).toBe("");
  const end = rows.findIndex(([material]) => material === "total");
  const column = (index: number) => rows.slice(1, end).reduce((sum, row) => sum + Number(row[index]), 0);
  for (const index of [8, 9, 10]) expect(rows[end]![index]).toBeCloseTo(column(index), 9);
  expect(rows.slice(end + 1)).toContainEqual([
    "A4",
    expect.stringContaining('height: got "4O"'),
    ...rows[0]!.slice(2).map(() => ""),
  ]);
  const at = rows.findIndex(([cell]) => cell === "board or card");
  const byBoard = rows
    .slice(
      at,
      rows.findIndex(([cell]) => cell === "left out"),
    )
    .map((row) => row.slice(0, 4));
  const line = (stock: unknown) => rows.slice(1, end).find((row) => row[1] === stock)!;
  expect(byBoard[0]).toEqual(["board or card", "for items", "net area, m2", "sheets"]);
  expect(byBoard.slice(1).map(([stock, items]) => [stock, items])).toEqual([
    ["conservation board 2", 1],
    ["conservation board 2.5", 3],
    ["folding card 0.4", 3],
  ]);
  for (const [stock, , area, sheets] of byBoard.slice(1)) {
    expect([stock, area]).toEqual([stock, line(stock)[2]]);
    expect(Number.parseInt(String(sheets))).toBe(line(stock)[3]);
  }
});

test("a board preferred in one row of the survey changes its sheets and the budget", async () => {
  const survey = (preferred: string) => [
    ["id", "height", "width", "depth", "enclosure", "preferred board"],
    ["A1", 300, 210, 40, "tray", preferred],
    ["A2", 300, 210, 40, "tray", ""],
  ];
  const answers = async (preferred: string) => {
    const sheets = (await table("SHEETS", survey(preferred), "all")).slice(1).map(([stock, bought]) => [stock, bought]);
    const estimate = await table("ESTIMATE", survey(preferred));
    return { sheets, total: estimate.find(([cell]) => cell === "total")![10] as number };
  };
  const byGuide = await answers("");
  const preferred = await answers("2 x conservation board 2");
  const DRESSED = byGuide.sheets.slice(1);
  expect(byGuide.sheets).toEqual([["conservation board 2.5", 1], ...DRESSED]);
  expect(preferred.sheets).toEqual([["conservation board 2", 1], ["conservation board 2.5", 1], ...DRESSED]);
  // One sheet more at 5.40, and 10 % for what is spoilt.
  expect(preferred.total - byGuide.total).toBeCloseTo(5.94, 6);
});

test("a budget of prices of the shop's own has no notice above its headings", async () => {
  const own = [
    ["stock", "material", "caliper", "sheet length", "sheet width", "price"],
    ["shop board", "board", 2.5, 1000, 700, 3],
  ];
  const rows = await table("ESTIMATE", ITEMS, own, "covering=none; lining=none; construction=around base");
  expect(rows[0]!.slice(0, 2)).toEqual(["material", "stock"]);
});

test("a budget by heading has a line for each of its values, each with sheets of its own", async () => {
  const [, ...rows] = await table(
    "ESTIMATE",
    ITEMS,
    "estimate by=batch; labour hours=tray 1.5 / slipcase 1; labour rate=20; hours by size=no; set-up hours=none",
  );
  expect(rows[0]!.slice(0, 3)).toEqual(["batch", "material", "stock"]);
  const counts =
    "2 complete, 1 in part, 1 not sized: pieces that cannot be cut and rows that are not sized are not in the cost.";
  expect(new Set(rows.slice(1).map(([group]) => group))).toEqual(
    new Set([
      counts,
      "enclosure",
      "tray",
      "slipcase",
      "batch",
      "labour",
      "May",
      "June",
      "total",
      "",
      "left out",
      "A3",
      "A4",
      "adhesive",
      "folding card 0.4",
    ]),
  );
  const labour = rows.filter((row) => row[1] === "labour").map((row) => [row[0], row[4], row[9]]);
  expect(labour).toEqual([
    ["May", 3, 60],
    ["June", 2.5, 50],
  ]);
});

test.each([
  [
    "clamshell box 3, lidded box 2.5",
    'labour hours: got "clamshell box 3, lidded box 2.5"; give hours by enclosure, such as tray 1.5 / clamshell box 4, or none; put / between enclosures',
  ],
  [
    "tray 1.5 / slipcas 1",
    'labour hours: got "slipcas"; give hours by enclosure, such as tray 1.5 / clamshell box 4, or none; did you mean slipcase or slip case?',
  ],
  [
    "open tray 1.5 / tray 1",
    "labour hours: got tray twice; give hours by enclosure, such as tray 1.5 / clamshell box 4, or none; give each enclosure once",
  ],
  ["box 2 1/2", /^labour hours: got "box 2 1\/2"; give hours by enclosure/],
])("labour hours of %j are refused, never counted as none", async (hours, message) => {
  const cell = await runtime.callCell("ESTIMATE", [
    ITEMS,
    [
      ["setting", "value"],
      ["labour hours", hours],
    ],
  ]);
  expect(cell).toMatchObject({
    error: "#VALUE!",
    message: typeof message === "string" ? message : expect.stringMatching(message),
  });
});

test("kinds without hours are listed, and their hours are not in the sum", async () => {
  const items = [
    ["id", "height", "width", "depth", "enclosure"],
    ["A1", 300, 210, 40, "tray"],
    ["A2", 300, 210, 40, "slipcase"],
    ["A3", 300, 210, 40, "lidded box"],
  ];
  const rows = await table("ESTIMATE", items, [
    ["setting", "value"],
    ["labour hours", "open tray 1.5"],
    ["labour rate", 20],
    ["set-up hours", "none"],
  ]);
  expect(rows.find(([material]) => material === "labour")!.slice(3, 11)).toEqual([
    1.5,
    "hours",
    "",
    "",
    20,
    30,
    "",
    30,
  ]);
  const end = rows.findIndex(([first]) => first === "left out");
  expect(rows.slice(end + 1).map(([name, reason]) => [name, reason])).toContainEqual([
    "labour",
    "no hours for slipcase and lidded box: neither hours nor cost until labour hours has them",
  ]);
});

test.each([
  [
    "SHEETS",
    [ITEMS, "conservation bord 2"],
    /^board: got "conservation bord 2"; give all, .*; did you mean conservation board 2/,
  ],
  [
    "LAYOUT",
    [
      ITEMS,
      [
        ["fit", 3],
        ["unit", "mm"],
      ],
    ],
    'board: got settings; put "all" before them',
  ],
  [
    "ESTIMATE",
    [ITEMS, "estimate by=batsch"],
    /^estimate by: got "batsch"; give material, kind, or a heading of the survey; did you mean batch/,
  ],
  ["SHEETS", [[["a"], ["b"]], "all"], /^items|^survey|^heading/],
] as const)("%s says what is wrong", async (id, args, message) => {
  const answer = await runtime.callCell(id, args);
  expect(answer).toEqual({
    error: "#VALUE!",
    message: typeof message === "string" ? message : expect.stringMatching(message),
  });
});

test("blank rows ask for no sheet", async () => {
  expect(await table("SHEETS", [ITEMS[0]!, ["", "", "", "", "", "", ""]], "all")).toHaveLength(1);
});

test("what nobody has priced is no silent nought in a budget: its money is blank, and it is listed", async () => {
  const stock = [
    ["stock", "material", "caliper", "sheet length", "sheet width", "grain", "price"],
    ["greyboard", "board", 2, 1200, 800, "fixed", ""],
    ["card", "card", 0.4, "", "", "fixed", 1],
    ["cloth", "covering", 0.4, "", 1000, "fixed", ""],
    ["paper", "lining", 0.15, 1000, 700, "fixed", 1.2],
  ];
  const settings = [
    ["setting", "value"],
    ["wall board", "greyboard"],
    ["labour hours", "tray 1.5"],
  ];
  const items = [
    ["id", "height", "width", "depth", "enclosure"],
    ["A1", 300, 210, 40, "tray"],
  ];
  const rows = await table("ESTIMATE", items, settings, stock);
  const line = (name: string) => rows.find(([, stocked]) => stocked === name)!.slice(8, 11);
  expect(line("greyboard")).toEqual(["", "", ""]);
  expect(line("cloth")).toEqual(["", "", ""]);
  expect(line("adhesive")).toEqual(["", "", ""]);
  expect(line("paper")).toEqual([1.2, 0.12, 1.32]);
  expect(rows.find(([first]) => first === "total")!.slice(8, 11)).toEqual([1.2, 0.12, 1.32]);
  const end = rows.findIndex(([first]) => first === "left out");
  expect(rows.slice(end + 1).map(([name, reason]) => [name, reason])).toEqual([
    ["greyboard", "no price: not in the cost until the stock table has one"],
    ["card", "no sheet size: neither sheets nor cost until the stock table has one"],
    ["cloth", "no price: not in the cost until the stock table has one"],
    ["adhesive", "no price: not in the cost until adhesive price is set"],
    ["labour", "no rate: not in the cost until labour rate is set"],
  ]);
});

test("shelf metres, standard sizes, and the size of one item out of their table", async () => {
  const shelf = await table("SHELF", ITEMS, "shelf height=330");
  expect(shelf[0]).toEqual(["shelf", "kept", "shelf height", "enclosures", "now", "boxed", "more", "unit"]);
  expect(shelf.find(([first]) => first === "total")).toEqual(["total", "upright", "", 1, 0.02, 0.03, 0.01, "m"]);
  expect(shelf.at(-1)?.[0]).toBe("A4");
  const sizes = await table("SIZES", ITEMS, 3);
  expect(sizes.slice(1, 4).map(([name]) => name)).toEqual(["A", "B", "C"]);
  const named = await table("SIZE", 200, 150, 20, "slipcase", sizes as (string | number)[][]);
  expect(sizes.find(([name]) => name === named[0]![0])?.[1]).toBe("slipcase");
  expect(await runtime.callCell("SIZES", [ITEMS, "many"])).toMatchObject({
    error: "#VALUE!",
    message: 'count: got "many"; give how many sizes there may be, a whole number from 1 to 200',
  });
});
