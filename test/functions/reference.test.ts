import { KINDS } from "../../src/enclosure/registry";
import { DEFINITIONS } from "../../src/settings/schema";
import { cell, ITEM, refusal } from "./cell";

type Table = readonly (readonly (string | number)[])[];

/** Names of old settings sheets that are still read, and change nothing. */
const WITHOUT_EFFECT = ["creep", "sag ratio", "sag limit"];

describe("SETTINGS", () => {
  const rowOf = (table: Table, setting: string) => table.find(([name]) => name === setting);

  test("lists every setting with value, origin, default, unit, meaning and standing", async () => {
    const table = (await cell("SETTINGS")) as Table;
    expect(table[0]).toEqual(["setting", "value", "from", "default", "unit", "meaning", "standing"]);
    expect(table.slice(1).map(([name]) => name)).toEqual(
      Object.values(DEFINITIONS)
        .map(({ name }) => name)
        .filter((name) => !WITHOUT_EFFECT.includes(name)),
    );
    expect(rowOf(table, "turn-in")).toEqual([
      "turn-in",
      "auto",
      "default",
      "auto: 15 mm, on a clamshell's case more where it takes more to cover the board",
      "length",
      "covering turned in over an edge; never longer than half the face that it lies on",
      "shop",
    ]);
  });

  test("says which argument each value came from", async () => {
    const table = (await cell(
      "SETTINGS",
      [
        ["fit", "loose"],
        ["turn-in", 20],
      ],
      "fit=snug; end cards=yes",
    )) as Table;
    expect(rowOf(table, "fit")?.slice(1, 3)).toEqual(["snug", "settings 2"]);
    expect(rowOf(table, "turn-in")?.slice(1, 3)).toEqual(["20 mm", "settings 1"]);
    expect(rowOf(table, "end cards")?.slice(1, 3)).toEqual(["yes", "settings 2"]);
  });

  test("refuses what cannot be read", async () => {
    expect(await refusal("SETTINGS", "fit=lose")).toBe(
      '#VALUE! fit: got "lose"; give snug, standard, loose, a length such as 2 or 1/16 in, or none; did you mean loose?',
    );
  });

  test.each([["unit=in; shop unit=in; turn-in=5/8; fit=1/8"], ["unit=cm; fit=snug; cushion base=3"], [""]])(
    "given back as a settings range it changes no answer: %s",
    async (text) => {
      const [height, width, depth] = text.includes("unit=in") ? [12, 8.25, 1.5] : [30, 21, 4];
      const table = (await cell("SETTINGS", text)) as Table;
      const from = (...settings: Parameters<typeof cell>[1][]) =>
        cell("PARTS", height, width, depth, "tray", ...settings, "wall board=2 mm");
      expect(await from(table)).toEqual(await from(text));
    },
  );
});

describe("STOCK", () => {
  test("is a starter table that reads back as the stock that is in force without one", async () => {
    const table = (await cell("STOCK")) as Table;
    expect(table.slice(1).map(([stock, material, caliper]) => [stock, material, caliper])).toEqual([
      ["conservation board 1.5", "board", 1.5],
      ["conservation board 2", "board", 2],
      ["conservation board 2.5", "board", 2.5],
      ["conservation board 3", "board", 3],
      ["corrugated board 1.6", "board", 1.6],
      ["conservation card 10 pt", "card", "10 pt"],
      ["conservation card 20 pt", "card", "20 pt"],
      ["conservation card 40 pt", "card", "40 pt"],
      ["conservation card 60 pt", "card", "60 pt"],
      ["folding card 0.4", "card", 0.4],
      ["unbuffered card 0.5", "card", 0.5],
      ["book cloth", "covering", 0.3],
      ["lining paper", "lining", 0.15],
      ["unbuffered lining paper", "lining", 0.15],
      ["grey board 1.5", "board", 1.5],
      ["grey board 2", "board", 2],
      ["grey board 2.5", "board", 2.5],
      ["grey board 3", "board", 3],
      ["cotton tape for ties", "closure", 0.5],
      ["hook and loop tape", "closure", 0.5],
      ["elastic band", "closure", 0.5],
      ["clasp", "closure", 0],
    ]);
    expect(await cell("PARTS", ...ITEM, "clamshell box", table)).toEqual(await cell("PARTS", ...ITEM, "clamshell box"));
  });
});

describe("KINDS", () => {
  const NAMES = KINDS.map(({ name }) => name);

  test("names are one column, for a drop-down list", async () => {
    expect(await cell("KINDS", "names")).toEqual(NAMES.map((name) => [name]));
  });

  test("every name in it can be sized", async () => {
    for (const name of NAMES) expect(await cell("PROBLEM", ...ITEM, name)).toBe("");
  });

  test("all has trays, parts and constructions", async () => {
    const table = (await cell("KINDS", "all")) as Table;
    expect(table[0]).toEqual(["enclosure", "also accepted", "trays", "board and card parts", "constructions"]);
    expect(table.find(([name]) => name === "slipcase")).toEqual([
      "slipcase",
      "slip case",
      "",
      "side / back wall / head wall / flange card / chemise card / chemise board / chemise spine",
      "flanged base / on base / around base",
    ]);
  });

  test.each([
    [undefined, "column: got a blank; give names or all"],
    ["", "column: got a blank; give names or all"],
    [0, "column: got a blank; give names or all"],
    ["name", 'column: got "name"; give names or all; did you mean names?'],
    [3, 'column: got "3"; give names or all'],
    [true, 'column: got TRUE; give a text such as "names"'],
    ["unit=in", 'column: got settings; put "names" before them'],
    [[["unit", "in"]], 'column: got settings; put "names" before them'],
    [{ error: "#N/A" }, 'column: got "#N/A"; give names or all'],
  ])("column %j is refused", async (column, message) => {
    expect(await refusal("KINDS", column)).toBe(`#VALUE! ${message}`);
  });
});
