import { DEMO_SURVEY } from "../../src/cli/demoSurvey";
import { caliperAnswer } from "../../src/item/boardAnswers";
import { sizeSurvey } from "../../src/survey/sizeSurvey";
import { cell, excel } from "../functions/cell";

type Shown = number | string | { readonly error: string };

const HEADINGS = DEMO_SURVEY[0]!;
const ROWS = DEMO_SURVEY.slice(1);
const field = (row: readonly string[], heading: string) => row[HEADINGS.indexOf(heading)]!;

/** Columns of the demo survey, as one formula spills them; without their headings. */
async function columns(figures: readonly string[], settings = "", survey = DEMO_SURVEY): Promise<Shown[][]> {
  const answer = await excel.callCell("SURVEY", [survey, [[...figures]], settings]);
  if ("error" in answer) throw new Error(answer.message);
  const [headings, ...rows] = answer.value as Shown[][];
  expect(headings).toEqual(figures);
  return rows;
}

/** What Excel's SUMIFS gives: the sum of one column where another holds that value. */
function sumIfs(rows: readonly (readonly Shown[])[], wanted: Shown): number {
  return rows.reduce((sum, [key, value]) => (key === wanted ? sum + (value as number) : sum), 0);
}

const POINTS = [
  ["stock", "material", "caliper (pt)", "sheet length (in)", "sheet width (in)"],
  ["board 60", "board", 60, 40, 28],
  ["board 80", "board", 80, 40, 28],
  ["board 100", "board", 100, 40, 28],
  ["board 120", "board", 120, 40, 28],
  ["card", "card", 16, 40, 28],
] as const;

describe("the caliper column of the demo survey", () => {
  const AUTO = "sag ratio=60; sag limit=4 mm; creep=1";

  test.each([
    ["as the shop's defaults judge", ""],
    ["by a more lenient rule", AUTO],
  ])("falls into three boards or more, %s", async (_, settings) => {
    const rows = await columns(["caliper"], settings);
    const calipers = new Set(rows.map(([caliper]) => caliper).filter((caliper) => typeof caliper === "number"));
    for (const caliper of calipers) expect([1.5, 2, 2.5, 3]).toContain(caliper);
    expect(calipers.size).toBeGreaterThanOrEqual(3);
  });

  test("SUMIFS of the board area over the calipers, and over none, is the area of all rows", async () => {
    const rows = await columns(["caliper", "board area"]);
    const keys = new Set(
      rows
        .filter(([, area]) => typeof area === "number")
        .map(([caliper]) => (typeof caliper === "number" ? caliper : "none")),
    );
    const areas = rows.map(([caliper, area]) => [
      typeof caliper === "number" ? caliper : "none",
      typeof area === "number" ? area : 0,
    ]);
    const total = areas.reduce((sum, [, area]) => sum + (area as number), 0);
    const byCaliper = [...keys].map((key) => sumIfs(areas, key));
    expect(Math.min(...byCaliper)).toBeGreaterThan(0);
    expect(byCaliper.reduce((sum, each) => sum + each, 0)).toBeCloseTo(total, 9);
  });

  test("a stock table in points or inches: the column holds the table's own numbers", async () => {
    const answer = await excel.callCell("SURVEY", [DEMO_SURVEY, [["caliper", "board", "board area"]], POINTS]);
    if ("error" in answer) throw new Error(answer.message);
    const [, ...rows] = answer.value as Shown[][];
    const held = rows.filter(([caliper]) => typeof caliper === "number");
    expect(new Set(held.map(([caliper]) => caliper)).size).toBeGreaterThanOrEqual(3);
    for (const [caliper, board] of held) expect(board).toBe(`board ${String(caliper)}`);
    // Joined to the table by its own number, as XLOOKUP or SUMIFS would.
    for (const [caliper] of held) expect(POINTS.slice(1).map(([, , points]) => points)).toContain(caliper);
    const areas = held.map(([caliper, , area]) => [caliper!, area!]);
    const sums = [60, 80, 100, 120].map((points) => sumIfs(areas, points));
    expect(sums.reduce((sum, each) => sum + each, 0)).toBeCloseTo(
      areas.reduce((sum, [, area]) => sum + (area as number), 0),
      9,
    );
    const inches = POINTS.map((row, at) =>
      at === 0
        ? [...row.slice(0, 2), "caliper (in)", ...row.slice(3)]
        : [...row.slice(0, 2), (row[2] as number) / 1000, ...row.slice(3)],
    );
    const again = await excel.callCell("SURVEY", [DEMO_SURVEY, [["caliper"]], inches as (string | number)[][]]);
    if ("error" in again) throw new Error(again.message);
    expect(
      (again.value as Shown[][])
        .slice(1)
        .map(([caliper]) => (typeof caliper === "number" ? Math.round(caliper * 1000) : caliper)),
    ).toEqual(rows.map(([caliper]) => caliper));
  });

  test("each row's cell function gives what the column gives", async () => {
    const rows = await columns(["caliper"]);
    const { outcomes } = sizeSurvey(DEMO_SURVEY, []);
    const first = ROWS.findIndex((row) => field(row, "Title").startsWith("Psalter"));
    expect(rows[first]![0]).toBe(await cell("BOARD.CALIPER", 151, 98, 31, 0.35, "clamshell box"));
    outcomes.forEach((outcome, at) => {
      if (outcome.state !== "sized" || typeof rows[at]![0] !== "number") return;
      expect(caliperAnswer(outcome.sized)).toBe(rows[at]![0]);
    });
  });

  test("with auto boards the base is cut from the board of the caliper column", async () => {
    const rows = await columns(["caliper", "base stock", "board"], `${AUTO}; wall board=auto`);
    const trays = rows.filter(([caliper, base]) => typeof caliper === "number" && typeof base === "string");
    expect(trays.length).toBeGreaterThan(3);
    for (const [caliper, base, board] of trays)
      expect([base, board]).toEqual([`conservation board ${String(caliper)}`, base]);
  });
});

describe("the cautions column of the demo survey", () => {
  test("heavy items warn: over the lift limit, two people or a trolley", async () => {
    // A shop that lifts no more than 8 kg is warned of the ledger too, not of the glazed portfolio alone.
    const rows = await columns(["cautions"], "lift limit=8");
    const warned = ROWS.filter((_, at) => String(rows[at]![0]).includes("boxed weight")).map((row) =>
      field(row, "Title"),
    );
    expect(warned).toEqual(["Charts of the sound, glazed, oversize portfolio", "Ledger, heavy, brass corners"]);
    const heavier = DEMO_SURVEY.map((row, at) => (at === 0 ? row : row.with(HEADINGS.indexOf("Weight (kg)"), "24")));
    const all = await columns(["cautions"], "", heavier);
    all.forEach(([caution], at) => {
      if (typeof caution === "string" && caution !== "" && !caution.startsWith("in box"))
        expect([field(ROWS[at]!, "Title"), caution]).toEqual([
          field(ROWS[at]!, "Title"),
          expect.stringContaining("boxed weight"),
        ]);
    });
  });

  test("the ledger of 9.8 kg is told that no board holds it", async () => {
    const rows = await columns(["cautions"]);
    const ledger = ROWS.findIndex((row) => field(row, "Title").startsWith("Ledger"));
    expect(rows[ledger]![0]).toMatch(
      /^no stocked board is stiff enough; the thickest, conservation board 3, would sag [\d.]+ mm where 2 mm is allowed/,
    );
  });

  test("a hazard stands first, from its column alone", async () => {
    const rows = await columns(["cautions"]);
    let sized = 0;
    ROWS.forEach((row, at) => {
      const [caution] = rows[at]!;
      const hazard = field(row, "Hazard") ?? "";
      if (typeof caution !== "string") return;
      if (hazard === "") return expect(caution).not.toContain("hazard");
      sized++;
      return expect(caution.startsWith(`hazard (${hazard}): assess before handling; local rules`)).toBe(true);
    });
    expect(sized).toBe(5);
    // The cell function has no hazard argument.
    expect(await cell("CAUTIONS", 165, 120, 3, 0.12, "folded tray", "cushion sides=3")).toBe("");
  });

  test("a catalogue's height typed as text is told by the column and by the cell function", async () => {
    const told = "height 24 cm looks like a catalogue's, rounded up to whole cm: measure it";
    const survey = [
      ["Identifier", "Height", "Width", "Depth", "Enclosure"],
      ["A 1", "24 cm", 160, 20, "tray"],
      ["A 2", "24.0 cm", 160, 20, "tray"],
      ["A 3", 240, 160, 20, "tray"],
    ];
    const answer = await excel.callCell("SURVEY", [survey, [["cautions"]]]);
    expect(answer).toEqual({ value: [["cautions"], [told], [""], [""]] });
    expect(await cell("CAUTIONS", "24 cm", 160, 20, "", "tray")).toBe(told);
    expect(await cell("CAUTIONS", 240, 160, 20, "", "tray")).toBe("");
  });

  test("a row that cannot be sized has an error there, and its reason under problem", async () => {
    const rows = await columns(["cautions", "problem"]);
    const wrong = ROWS.findIndex((row) => field(row, "Enclosure") === "clamsell box");
    expect(rows[wrong]![0]).toEqual(expect.objectContaining({ error: "#VALUE!" }));
    expect(rows[wrong]![1]).toContain("did you mean clamshell box");
  });
});
