import { cell, excel, ITEM, ITEM_FUNCTIONS, refusal } from "./cell";

const BLANKS = [0, "", null, undefined, "   "] as const;

describe.each([...ITEM_FUNCTIONS, ["PROBLEM"] as const])("%s", (id, ...selectors) => {
  test.each(BLANKS)("height, width and depth all %p: empty text", async (blank) => {
    expect(await cell(id, blank, blank, blank, "tray", ...selectors)).toBe("");
  });

  test("blank in different ways: empty text, whatever the enclosure", async () => {
    expect(await cell(id, 0, "", undefined, "tray", ...selectors)).toBe("");
    expect(await cell(id, null, 0, "", undefined, ...selectors)).toBe("");
    expect(await cell(id, null, 0, "", "no such kind", ...selectors)).toBe("");
  });

  test.each(["none", "None", " NONE "])(
    "enclosure %p: empty text, even of an item that cannot be read",
    async (none) => {
      expect(await cell(id, ...ITEM, none, ...selectors)).toBe("");
      expect(await cell(id, "tall", 210, 40, none, ...selectors)).toBe("");
    },
  );

  test("a blank row is empty text even with settings that cannot be read, so that a filled column stays quiet", async () => {
    expect(await cell(id, 0, 0, 0, "", ...selectors, "fit=lose")).toBe("");
  });
});

test("one blank measure among others is no blank row", async () => {
  expect(await refusal("INSIDE", 300, undefined, 40, "tray", "all")).toBe(
    "#VALUE! width: got a blank; give a length such as 40, 40 mm or 1 9/16 in",
  );
  expect(await refusal("INSIDE", 300, 210, 0, "tray", "all")).toBe(
    "#VALUE! depth: got 0; give a length above zero such as 40, 40 mm or 1 9/16 in",
  );
});

describe.each([
  ["MEASURE", []],
  ["DIMENSIONS", ["all"]],
  ["FRACTION", [16]],
] as const)("%s", (id, others) => {
  test.each(BLANKS)("of %p is empty text", async (blank) => {
    expect(await cell(id, blank, ...others)).toBe("");
  });
});

test("settings left off, left empty, blank or 0 are not given", async () => {
  const plain = await cell("INSIDE", ...ITEM, "tray", "all");
  for (const nothing of [
    undefined,
    "",
    0,
    null,
    [
      [0, ""],
      [null, 0],
    ],
  ] as const)
    expect(await cell("INSIDE", ...ITEM, "tray", "all", nothing, nothing)).toEqual(plain);
});

test("a column of 200 rows, most of them blank, is answered in one message", async () => {
  const calls = Array.from(
    { length: 200 },
    (_, row) => ["INSIDE", row % 10 === 0 ? [...ITEM, "tray", "height"] : [0, 0, 0, "", "height"]] as const,
  );
  const answers = await excel.callMany(calls);
  expect(answers).toEqual(calls.map((_, row) => ({ value: [[row % 10 === 0 ? 303 : ""]] })));
});
