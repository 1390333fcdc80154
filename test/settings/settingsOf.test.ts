import { settingsOf } from "../../src/settings/settingsOf";
import { STARTER_STOCK, stockCells } from "../../src/settings/starterStock";

const range = () => [
  ["setting", "value"],
  ["fit", "loose"],
  ["turn-in", 18],
];
const stock = () => stockCells(STARTER_STOCK);

describe("content that was read already is not read again", () => {
  test("the same cells in fresh arrays give the same object", () => {
    expect(settingsOf([range(), stock(), "fit=snug"])).toBe(settingsOf([range(), stock(), "fit=snug"]));
    expect(settingsOf([])).toBe(settingsOf([]));
  });

  test("whatever was read in between", () => {
    const first = settingsOf([range(), stock()]);
    for (let other = 1; other < 10; other++) settingsOf([[["turn-in", other]], stock(), `fit=${other}`]);
    expect(settingsOf([range(), stock()])).toBe(first);
  });
});

describe("a changed cell is noticed", () => {
  test.each([
    [
      "a value",
      () => [
        ["setting", "value"],
        ["fit", "loose"],
        ["turn-in", 19],
      ],
    ],
    [
      "a value's type",
      () => [
        ["setting", "value"],
        ["fit", "loose"],
        ["turn-in", "18"],
      ],
    ],
    [
      "a name",
      () => [
        ["setting", "value"],
        ["fit height", "loose"],
        ["turn-in", 18],
      ],
    ],
    ["a row more", () => [...range(), ["square", 4]]],
    ["a row fewer", () => range().slice(0, 2)],
    ["a column more", () => range().map((row) => [...row, ""])],
  ])("%s", (_what, changed) => {
    const first = settingsOf([range()]);
    expect(settingsOf([changed()])).not.toBe(first);
    expect(settingsOf([range()])).toBe(first);
  });

  test("a cell changed inside an array that was given before", () => {
    const cells = range();
    expect(settingsOf([cells]).turnIn).toBe(18);
    cells[2] = ["turn-in", 20];
    expect(settingsOf([cells]).turnIn).toBe(20);
    cells[2][1] = 21;
    expect(settingsOf([cells]).turnIn).toBe(21);
    expect(settingsOf([range()]).turnIn).toBe(18);
  });

  test("the order of arguments, and what stands in which place", () => {
    expect(settingsOf(["fit=snug", "fit=loose"]).fit).toBe("loose");
    expect(settingsOf(["fit=loose", "fit=snug"]).fit).toBe("snug");
    expect(settingsOf(["fit=snug"]).origins.get("fit")).toBe("settings 1");
    expect(settingsOf(["", "fit=snug"]).origins.get("fit")).toBe("settings 2");
    expect(settingsOf([range()]).origins.get("fit")).toBe("settings 1");
    expect(settingsOf(["", range()]).origins.get("fit")).toBe("settings 2");
  });

  test("texts whose joined form is alike are not mixed up", () => {
    expect(settingsOf(["fit=1", "2"].slice(0, 1)).fit).toBe(1);
    expect(settingsOf(["fit=1/2"]).fit).toBe(0.5);
    expect(settingsOf(["fit=1", "turn-in=2"]).turnIn).toBe(2);
  });
});

describe("memory is bounded: what was not used lately is forgotten and read again to the same settings", () => {
  test("of ranges", () => {
    const first = settingsOf([range()]);
    for (let other = 1; other <= 40; other++) settingsOf([[["turn-in", other]]]);
    const again = settingsOf([range()]);
    expect(again).not.toBe(first);
    expect(again).toEqual(first);
  });

  test("of texts", () => {
    const first = settingsOf(["fit=loose"]);
    for (let other = 1; other <= 5000; other++) settingsOf([`turn-in=${other / 100}`]);
    const again = settingsOf(["fit=loose"]);
    expect(again).not.toBe(first);
    expect(again).toEqual(first);
  });

  test("and a range in use all along is kept while texts come and go", () => {
    const cells = stock();
    const first = settingsOf([cells]);
    for (let other = 1; other <= 1000; other++) settingsOf([stock(), `turn-in=${other / 10}`]);
    expect(settingsOf([stock()])).toBe(first);
  });
});

test("what cannot be read is refused each time, and does no harm to what can", () => {
  const good = settingsOf([range()]);
  for (let time = 0; time < 3; time++) expect(() => settingsOf([range(), "fit=lose"])).toThrow('fit: got "lose"');
  expect(settingsOf([range()])).toBe(good);
});
