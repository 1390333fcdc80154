import { readdirSync } from "node:fs";
import { join } from "node:path";
import { DEMO_SURVEY } from "../../src/cli/demoSurvey";
import { KINDS } from "../../src/enclosure/registry";
import { SETTING_KEYS } from "../../src/settings/given";
import { DEFINITIONS } from "../../src/settings/schema";
import { book, columnOf, json, newFolder, run, runAlone, sheetRows } from "./run";

const COMMANDS = ["fill", "parts", "plan", "estimate", "paper", "open", "kinds", "settings", "demo"];

test.each([
  [0, ["help", "fill"]],
  [0, ["parts", "--height", "300", "--width", "210", "--depth", "40", "--enclosure", "tray", "--json"]],
  [0, ["demo"]],
  [2, ["filled"]],
  [2, ["fill", "nothing.csv", "--json"]],
  [2, ["plan", "--sideways"]],
])("exit %i, and what is printed, of a process of its own: %j", (code, args) => {
  const [alone, beside] = [newFolder(), newFolder()];
  const ran = runAlone(alone, ...args);
  expect(ran.code).toBe(code);
  // The other tests run commands in one process.
  expect(run(beside, ...args)).toEqual(ran);
  expect(readdirSync(beside)).toEqual(readdirSync(alone));
});

describe("help", () => {
  test.each(["", "--help", "-h", "help"])("enclosure-columns %s lists every command", (arg) => {
    const { code, out, err } = run(".", ...(arg === "" ? [] : [arg]));
    expect({ code, err }).toEqual({ code: 0, err: "" });
    for (const command of COMMANDS) expect(out).toContain(`enclosure-columns ${command}`);
    expect(out).toMatch(/local\s+rules/);
  });

  test.each(COMMANDS)("%s --help says what it does, in 120 columns", (command) => {
    const { code, out, err } = run(".", command, "--help");
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toMatch(new RegExp(`^enclosure-columns ${command}`));
    expect(out.split("\n").length).toBeGreaterThanOrEqual(3);
    expect(out.split("\n").filter((line) => line.length > 120)).toEqual([]);
    expect(run(".", "help", command).out).toBe(out);
  });

  test.each([
    [
      "fill",
      [
        "--out",
        "--columns",
        "--cut-list",
        "--values",
        "--sheet",
        "--heading-row",
        "--in-place",
        "--replace",
        "--set",
        "--settings",
        "--stock",
        "--unit",
      ],
    ],
    ["parts", ["--height", "--width", "--depth", "--weight", "--enclosure", "--set"]],
    ["settings", ["--stock-table"]],
    ["demo", ["--out"]],
  ])("%s names its options", (command, options) => {
    const { out } = run(".", command, "--help");
    for (const option of options) expect(out).toContain(option);
  });
});

describe("parts", () => {
  const ITEM = ["parts", "--height", "300", "--width", "210", "--depth", "40"];

  test.each(KINDS.map(({ name }) => [name]))("%s: parts, sizes, order and cautions", (kind) => {
    const answer = json(".", ...ITEM, "--enclosure", kind) as {
      parts: Record<string, unknown>[];
      order: { text: string }[];
      cautions: string[];
      outside: Record<string, number>;
      inside: Record<string, number>;
    };
    expect(answer.parts.length).toBeGreaterThanOrEqual(2);
    expect(answer.order.length).toBeGreaterThanOrEqual(4);
    expect(answer.cautions.join()).toMatch(/Blade.*Adhesive/);
    for (const way of ["height", "width", "depth"])
      expect(answer.outside[way]).toBeGreaterThan(answer.inside[way]! - 0.001);
    const { out } = run(".", ...ITEM, "--enclosure", kind);
    expect(out).toMatch(new RegExp(`^${kind} for an item 300 x 210 x 40 mm`));
    expect(out).toContain("Order of assembly");
    answer.order.forEach(({ text }, index) => expect(out).toContain(`  ${index + 1}. ${text}`));
  });

  test("in inches, from texts", () => {
    const { code, out } = run(
      ".",
      "parts",
      "--height",
      "10 3/8",
      "--width",
      "8 in",
      "--depth",
      "40 mm",
      "--enclosure",
      "tray",
      "--unit",
      "in",
    );
    expect(code).toBe(0);
    expect(out).toMatch(/^tray for an item 10\.375 x 8 x 1\.5748 in/);
    // Inside 10 3/8 + 1/25.4 + 2/25.4, up to the next 1/32; the item's own 8 in and 40 mm likewise.
    expect(out).toContain("inside 10.5 x 8.125 x 1.6875 in");
  });

  test.each([
    [["--enclosure", "try"], /^enclosure: got "try"; give tray, .*did you mean tray\?/],
    [["--enclosure", "tray", "--set", "fit=tight"], /^fit: got "tight"/],
    [["--enclosure", "tray", "--set", "lid reveal=3"], /^lid reveal: got a value for a tray, which has no use for it/],
    [["--enclosure", "tray", "--unit", "feet"], /^unit: got "feet"; give mm, cm or in/],
  ])("%j is refused, exit 2", (args, message) => {
    const { code, out, err } = run(".", ...ITEM, ...args);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(message);
  });

  test("without sizes", () => {
    expect(run(".", "parts", "--enclosure", "tray").err).toBe(
      "height, width and depth: got nothing; give all three; see enclosure-columns parts --help\n",
    );
  });
});

describe("reference", () => {
  test("kinds", () => {
    const kinds = json(".", "kinds") as unknown as { enclosure: string; parts: string[] }[];
    expect(kinds.map(({ enclosure }) => enclosure)).toEqual(KINDS.map(({ name }) => name));
    const { out } = run(".", "kinds");
    for (const { name, otherNames } of KINDS) for (const each of [name, ...otherNames]) expect(out).toContain(each);
  });

  test("settings: every one, with where it came from", () => {
    const settings = json(".", "settings", "--set", "fit=loose") as unknown as Record<string, unknown>[];
    expect(settings.map((each) => each["setting"])).toEqual(
      SETTING_KEYS.map((key) => DEFINITIONS[key])
        .filter(({ retired }) => !retired)
        .map(({ name }) => name),
    );
    expect(settings.find((each) => each["setting"] === "fit")).toMatchObject({ value: "loose", from: "settings 1" });
    expect(settings.find((each) => each["setting"] === "turn-in")).toMatchObject({ value: "auto", from: "default" });
  });

  test("settings --stock-table is a .csv that --stock reads back", () => {
    const { out, code } = run(".", "settings", "--stock-table");
    expect(code).toBe(0);
    expect(out.replace("\ufeff", "")).toMatch(/^stock,material,caliper/);
  });
});

describe("the demo", () => {
  test("every kind, chemise, arrangement, well and ribbon, two rows with a problem and one misspelt kind, files where it says, and again over its own", () => {
    const folder = newFolder();
    const answer = json(folder, "demo") as {
      rows: number;
      problems: { identifier: string }[];
      enclosures: { enclosure: string }[];
      files: { path: string }[];
    };
    expect(answer.rows).toBe(DEMO_SURVEY.length - 1);
    expect(answer.problems.map(({ identifier }) => identifier)).toEqual(["LK 038", "LK 039"]);
    expect(new Set(answer.enclosures.map(({ enclosure }) => enclosure))).toEqual(
      new Set(KINDS.map(({ name }) => name)),
    );
    expect(readdirSync(join(folder, "demo-output")).sort()).toEqual(["survey-filled.xlsx", "survey.csv"]);
    const rows = sheetRows(folder, "demo-output/survey-filled.xlsx", "Survey");
    expect(rows.length).toBe(DEMO_SURVEY.length);
    expect(columnOf(rows, "problem").filter((cell) => (cell ?? "") !== "" && cell !== "\u00a0")).toHaveLength(2);
    expect(book(folder, "demo-output/survey-filled.xlsx").sheets.map(({ name }) => name)).toContain("Cut list");
    const parts = sheetRows(folder, "demo-output/survey-filled.xlsx", "Cut list").map((row) => row[2]);
    expect(parts).toEqual(
      expect.arrayContaining(["chemise card", "box divider", "box well layer", "inner lifting ribbon"]),
    );
    const again = run(folder, "demo");
    expect({ code: again.code, err: again.err }).toEqual({ code: 0, err: "" });
    expect(again.out).toContain("2 with a problem");
    expect(readdirSync(join(folder, "demo-output")).sort()).toEqual(["survey-filled.xlsx", "survey.csv"]);
  });
});
