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

describe("the boards of the demo survey", () => {
  test("every sized row has one; at least five different, one of them laminated, and its caliper is its plies'", async () => {
    const rows = await columns(["board", "caliper", "base count", "problem", "enclosure"]);
    const boards = new Set<string>();
    rows.forEach(([board, caliper, , problem, enclosure]) => {
      const shared = String(board).startsWith("in box");
      if (problem !== "" || enclosure === "none" || shared) return;
      boards.add(String(board));
      const [, plies = "1", number = ""] = /^(?:(\d) x )?.*?([\d.]+)(?: pt)?$/.exec(String(board))!;
      const wanted = Number(plies) * Number(number);
      expect(String(caliper)).toBe(String(board).endsWith("pt") ? `${wanted} pt` : String(wanted));
    });
    expect(boards.size).toBeGreaterThanOrEqual(5);
    expect([...boards].some((board) => board.startsWith("2 x "))).toBe(true);
  });

  test("SUMIFS of the board area over the boards, and over the calipers, is the area of all rows", async () => {
    const rows = await columns(["board", "caliper", "board area"]);
    const sized = rows.filter(([, , area]) => typeof area === "number");
    const total = sized.reduce((sum, [, , area]) => sum + (area as number), 0);
    for (const key of [0, 1]) {
      const keyed = sized.map((row) => [row[key]!, row[2]!]);
      const sums = [...new Set(keyed.map(([value]) => value!))].map((value) => sumIfs(keyed, value));
      expect(sums.reduce((sum, each) => sum + each, 0)).toBeCloseTo(total, 9);
    }
  });

  test("a stock table in points or inches: the column holds the table's own numbers", async () => {
    const answer = await excel.callCell("SURVEY", [DEMO_SURVEY, [["caliper", "board"]], POINTS]);
    if ("error" in answer) throw new Error(answer.message);
    const [, ...rows] = answer.value as Shown[][];
    const held = rows.filter(([caliper]) => typeof caliper === "number");
    expect(new Set(held.map(([caliper]) => caliper)).size).toBeGreaterThanOrEqual(4);
    for (const [caliper, board] of held) {
      const [, plies = "1", name = ""] = /^(?:(\d) x )?(.*)$/.exec(String(board))!;
      const row = POINTS.find(([stock]) => stock === name)!;
      expect(caliper).toBe(Number(plies) * (row[2] as number));
    }
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
});

describe("the cautions column of the demo survey", () => {
  test("heavy items warn: over the lift limit, two people or a trolley", async () => {
    // A shop that lifts no more than 9 kg is warned of the ledger too, not of the glazed portfolio alone.
    const rows = await columns(["cautions"], "lift limit=9");
    const warned = ROWS.filter((_, at) => String(rows[at]![0]).includes("boxed weight")).map((row) =>
      field(row, "Title"),
    );
    expect(warned).toEqual([
      "Charts of the sound, glazed, oversize portfolio",
      "Lens drawings, large folio",
      "Ledger, heavy, brass corners",
    ]);
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

  test("what is beyond the guide is told so, and nothing else of the boards", async () => {
    const rows = await columns(["cautions"]);
    const told = ROWS.filter((_, at) => /large or heavy|springs|lacks/.test(String(rows[at]![0])));
    expect(told.map((row) => field(row, "Title"))).toEqual(["Charts of the sound, glazed, oversize portfolio"]);
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
    const bySize = "weight not given: the board is chosen by size alone";
    expect(answer).toEqual({ value: [["cautions"], [`${bySize}; ${told}`], [bySize], [bySize]] });
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
