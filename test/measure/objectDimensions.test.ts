import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import Papa from "papaparse";
import { InputError } from "../../src/measure/errors";
import { readDimensions } from "../../src/measure/readDimensions";

/** Tate collection metadata, CC0: dimension texts and the cataloguer's own reading. Not part of the repository. */
const FILE = join(__dirname, "../../../shared/data/object-dimensions.csv");
const SHARE_TO_REACH = 0.995;

interface Row {
  readonly id: string;
  readonly dimensions: string;
  readonly first: string;
  readonly second: string;
  readonly third: string;
  readonly unit: string;
}

type Outcome =
  | "read as the cataloguer did"
  | "read otherwise"
  | "refused"
  | "cataloguer's reading holds a word, the numbers behind it agree"
  | "cataloguer's reading holds a word, the numbers behind it differ";

interface Verdict {
  readonly row: Row;
  readonly outcome: Outcome;
  readonly detail: string;
}

const whenPresent = existsSync(FILE) ? describe : describe.skip;

whenPresent("the dimension texts of 2,700 museum objects", () => {
  const rows = existsSync(FILE)
    ? Papa.parse<Row>(readFileSync(FILE, "utf8"), { header: true, skipEmptyLines: true }).data
    : [];
  const verdicts = rows.map(judge);
  const having = (outcome: Outcome) => verdicts.filter((verdict) => verdict.outcome === outcome);

  test("99.5 % of all rows are read as the cataloguer did, unusable readings counted against", () => {
    process.stdout.write(`${summary(verdicts)}\n`);
    expect(rows.length).toBeGreaterThan(2700);
    expect(having("read as the cataloguer did").length / rows.length).toBeGreaterThanOrEqual(SHARE_TO_REACH);
  });

  test("no row is read otherwise than the cataloguer read it", () => {
    expect(having("read otherwise").map(({ row, detail }) => `${row.id}: ${detail}`)).toEqual([]);
  });

  test("where the cataloguer's reading holds a word of the label, the numbers behind it are ours", () => {
    expect(having("cataloguer's reading holds a word, the numbers behind it differ")).toEqual([]);
  });

  test("two texts are refused: a third length behind a comma, and the weights of three cases", () => {
    expect(having("refused").map(({ row, detail }) => `${row.id}: ${detail}`)).toEqual([
      'N03638: "4 mm" is not understood',
      'T07141: "cases weigh 67kg/225kg/220kg." is not understood',
    ]);
  });

  test("every weight that stands directly behind the measure is read", () => {
    for (const { dimensions } of rows) {
      const written = /^[^\n]* x [\d.]+ mm, (\d+(?:\.\d+)?) ?kg(?:$|\n)/.exec(dimensions)?.[1];
      if (written === undefined) continue;
      expect(readDimensions(dimensions, { argument: "text" }).weightKg).toBe(Number(written));
    }
  });
});

/** All numbers that the cataloguer gives must be ours, and where none is given we must have none. */
function judge(row: Row): Verdict {
  const given = [row.first, row.second, row.third].filter((cell) => cell !== "");
  const numbers = given.map(Number).filter((number) => Number.isFinite(number));
  try {
    const { height, width, depth } = readDimensions(row.dimensions, { argument: "text" });
    const ours = depth === undefined ? [height, width] : [height, width, depth];
    const detail = `${JSON.stringify(row.dimensions)} is ${given.join(" x ")} there, ${ours.join(" x ")} here`;
    const agrees = row.unit === "mm" && ours.join() === numbers.join();
    if (numbers.length < given.length) {
      return {
        row,
        detail,
        outcome: `cataloguer's reading holds a word, the numbers behind it ${agrees ? "agree" : "differ"}`,
      };
    }
    return { row, detail, outcome: agrees ? "read as the cataloguer did" : "read otherwise" };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { row, detail: error.expected, outcome: "refused" };
  }
}

function summary(verdicts: readonly Verdict[]): string {
  const outcomes = [...new Set(verdicts.map(({ outcome }) => outcome))];
  const counted = outcomes.map((outcome) => {
    const those = verdicts.filter((verdict) => verdict.outcome === outcome);
    const shown = outcome.startsWith("read as") ? [] : those.map(({ row, detail }) => `         ${row.id}  ${detail}`);
    return [`${String(those.length).padStart(6)}  ${outcome}`, ...shown].join("\n");
  });
  const agreeing = verdicts.filter(({ outcome }) => outcome === "read as the cataloguer did").length;
  const usable = verdicts.filter(({ outcome }) => !outcome.startsWith("cataloguer")).length;
  const percent = (of: number) => `${((100 * agreeing) / of).toFixed(2)} %`;
  return [
    `${verdicts.length} dimension texts: ${percent(verdicts.length)} of all, ${percent(usable)} of those with a usable reading, read alike`,
    ...counted,
  ].join("\n");
}
