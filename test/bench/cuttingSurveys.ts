import { DEMO_SURVEY } from "../../src/cli/demoSurvey";
import { createRandom } from "../../src/cutting/random";
import { demandsOf } from "../../src/estimate/demandsOf";
import { stockJobs, type StockJob } from "../../src/estimate/stockJobs";
import { sizeSurvey } from "../../src/survey/sizeSurvey";

type Cells = readonly (readonly (string | number)[])[];

/** The demo survey of the command line. */
export const DEMO: Cells = DEMO_SURVEY;

/** Boxes of books of the sizes that libraries hold, kinds mixed. */
export function boxes(count: number, seed: number): Cells {
  const random = createRandom(seed);
  const share = () => random.below(1_000_000) / 1_000_000;
  const between = (low: number, high: number) => low + random.below(high - low + 1);
  const rows = Array.from({ length: count }, (_, row) => {
    const part = share();
    const height =
      part < 0.35
        ? between(170, 230)
        : part < 0.7
          ? between(215, 295)
          : part < 0.93
            ? between(280, 380)
            : between(380, 500);
    const width = Math.round(height * (0.58 + share() * 0.22));
    const depth = 8 + random.below(50);
    const kg = height * width * depth * 7e-7;
    return [`B${row + 1}`, height, width, depth, Number(kg.toFixed(3)), KINDS[row % KINDS.length]!];
  });
  return [["id", "height", "width", "depth", "weight", "enclosure"], ...rows];
}

const KINDS = [
  ...Array.from({ length: 9 }, () => "clamshell box"),
  ...Array.from({ length: 3 }, () => "lidded box"),
  ...Array.from({ length: 2 }, () => "slipcase"),
  "tray",
];

/** What a survey asks of each stock of one material. */
export function surveyJobs(
  cells: Cells,
  settings: readonly (readonly string[])[],
  material: "board" | "any",
): readonly StockJob[] {
  const sized = sizeSurvey(cells, settings.length === 0 ? [] : [[["setting", "value"], ...settings]]);
  return stockJobs(demandsOf(sized), sized.settings).filter((job) => material === "any" || job.material === material);
}
