/*
 * npm run bench -- sizes [--seconds 20 | --looks 400000000] [--items 1000]
 *
 * `--looks` spends a fixed amount of work, which a busy machine does not shorten: 400 million take about 20 s of one thread.
 * Standard sizes for many items on one thread, beside the proven bound: books, all clamshell boxes, and objects of a wide
 * range, all lidded boxes. The aim is 2 % for books and 3 % for the wide range, with 5, 10, 20 and 40 sizes.
 */
import { parseArgs } from "node:util";
import { createRandom, type Random } from "../../src/cutting/random";
import { sizeSurvey } from "../../src/survey/sizeSurvey";
import { surveySizes } from "../../src/survey/standardSizes/surveySizes";

const { values } = parseArgs({
  options: { seconds: { type: "string" }, looks: { type: "string" }, items: { type: "string" } },
});
const budget =
  values.looks === undefined
    ? { milliseconds: Number(values.seconds ?? "20") * 1000 }
    : { looks: Number(values.looks) };
const items = Number(values.items ?? "1000");
const HEADINGS = ["id", "height", "width", "depth", "enclosure"];

/** Books: mostly octavo and quarto, two in three as wide as 0.6 to 0.8 of their height. */
function book({ below }: Random): readonly [number, number, number] {
  const height = 140 + below(120) + (below(4) === 0 ? below(200) : 0);
  return [height, Math.round(height * (0.6 + below(20) / 100)), 10 + below(50)];
}

function object({ below }: Random): readonly [number, number, number] {
  return [60 + below(640), 50 + below(450), 10 + below(150)];
}

for (const [name, kind, draw] of [
  ["books", "clamshell box", book],
  ["wide", "lidded box", object],
] as const) {
  const random = createRandom(1);
  const rows = Array.from({ length: items }, (_, at) => [`A ${at}`, ...draw(random), kind]);
  const survey = sizeSurvey([HEADINGS, ...rows], ["wall board=2 mm"]);
  for (const count of [5, 10, 20, 40]) {
    const start = process.cpuUsage();
    const { totalM2, leastM2, ownM2, toMeasure } = surveySizes(survey, count, budget);
    const over = ((totalM2 / leastM2 - 1) * 100).toFixed(2);
    const more = ((totalM2 / ownM2 - 1) * 100).toFixed(1);
    const { user, system } = process.cpuUsage(start);
    const seconds = ((user + system) / 1e6).toFixed(1);
    console.log(
      `${name}, ${count} sizes: at most ${over} % over the bound, ${more} % over each made to measure, ${toMeasure.enclosures} to measure, ${seconds} s of the processor`,
    );
  }
}
