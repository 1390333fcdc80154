import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, writeFileSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { unzlibSync } from "fflate";
import { FONTS, FONT_NAMES, type FontLoader } from "../../src/paper/fonts";
import type { Box, Page, PlacedText } from "../../src/paper/page";
import { paperFile, USUAL_PAPER, type PaperOptions } from "../../src/paper/paperFile";
import type { PaperKind } from "../../src/paper/paperKinds";
import { createTypesetter, type Typesetter } from "../../src/paper/typesetter";
import { estimateFor } from "../../src/estimate/budget";
import { sizeSurvey } from "../../src/survey/sizeSurvey";

/** The fonts out of their packages. */
export const fromPackages: FontLoader = async (name) =>
  new Uint8Array(await readFile(join("node_modules", FONTS[name].package, FONTS[name].path)));

export function everyFont(): Promise<Typesetter> {
  return createTypesetter(fromPackages, FONT_NAMES);
}

type SurveyRows = readonly (readonly (string | number)[])[];

/** A survey as rows of cells, printed. */
export async function printed(
  cells: SurveyRows,
  what: readonly PaperKind[],
  options: Partial<PaperOptions> = {},
  settings: readonly string[] = [],
) {
  const source = sourceOf(cells, settings);
  return { ...(await paperFile(what, source, { ...USUAL_PAPER, ...options }, fromPackages)), ...source };
}

const sources = new WeakMap<SurveyRows, Map<string, ReturnType<typeof planned>>>();

/** A survey is planned once for all that is printed of it. */
function sourceOf(cells: SurveyRows, settings: readonly string[]): ReturnType<typeof planned> {
  const known = sources.get(cells) ?? new Map<string, ReturnType<typeof planned>>();
  sources.set(cells, known);
  const key = settings.join("; ");
  const source = known.get(key) ?? planned(cells, settings);
  known.set(key, source);
  return source;
}

function planned(cells: SurveyRows, settings: readonly string[]) {
  const survey = sizeSurvey(cells, settings);
  // A short search: what is tested is how a plan is printed.
  const estimate = estimateFor(survey, cells, { budget: { iterations: 20 } });
  return { survey, cells, estimate, plans: estimate.plans.flatMap((group) => group.plans) };
}

/** What poppler reads out of a PDF; without it a test says so and is skipped. */
export const hasPoppler = spawnSync("pdftotext", ["-v"]).status === 0;

export function textOf(pdf: Uint8Array): string {
  return execFileSync("pdftotext", ["-layout", inFile(pdf), "-"], { encoding: "utf8" });
}

export function inFile(pdf: Uint8Array): string {
  const path = join(mkdtempSync(join(tmpdir(), "paper-")), "pages.pdf");
  writeFileSync(path, pdf);
  return path;
}

/** The drawing commands of every page, in the PDF's own units. */
export function commandsOf(pdf: Uint8Array): readonly string[] {
  const text = Buffer.from(pdf).toString("latin1");
  return [...text.matchAll(/\/Length (\d+)\s*\/Filter \/FlateDecode\s*>>\s*stream\n/g)].flatMap((match) => {
    const from = match.index + match[0].length;
    const content = Buffer.from(unzlibSync(pdf.subarray(from, from + Number(match[1])))).toString("latin1");
    return /^\S+ \S+ \S+ \S+ \S+ \S+ cm/.test(content) ? [content] : [];
  });
}

/** Closed paths of a page's commands, as points. */
export function closedPaths(commands: string): readonly (readonly (readonly [number, number])[])[] {
  const paths: [number, number][][] = [];
  let path: [number, number][] = [];
  for (const [, x, y, step] of commands.matchAll(/(?:(\S+) (\S+) )?\b([mlh])\n/g)) {
    if (step === "h") paths.push(path);
    else if (step === "m") path = [[Number(x), Number(y)]];
    else path.push([Number(x), Number(y)]);
  }
  return paths;
}

export function textsOn({ placed }: Page): readonly PlacedText[] {
  return placed.filter((each) => each.kind === "text");
}

/** The box that the letters of a text take up, as they are aligned in theirs. */
export function inkBox(text: PlacedText, type: Typesetter): Box {
  const width =
    type.runs(text.text, text.bold, text.fromRight).reduce((sum, run) => sum + run.width, 0) * text.size * MM;
  const free = text.box.width - width;
  const x = text.box.x + (text.align === "start" ? 0 : text.align === "middle" ? free / 2 : free);
  return { ...text.box, x, width };
}

const LEAST_POINTS = 9;

/** Letters on a page, running foot apart, that are smaller than what is read at the bench. */
export function smallLetters({ placed }: Page): readonly string[] {
  return placed.flatMap((each) => {
    if (each.kind === "text")
      return each.size < LEAST_POINTS && each.tag?.role !== "Artifact" ? [`${each.text}: ${each.size} points`] : [];
    if (each.kind !== "drawing") return [];
    const points = each.box.width / each.picture.width / MM;
    return each.picture.shapes.flatMap((shape) =>
      shape.kind === "text" && shape.size * points < LEAST_POINTS - 0.01
        ? [`${shape.text} in ${each.picture.title}: ${shape.size * points} points`]
        : [],
    );
  });
}

const MM = 25.4 / 72;
const NOISE = 0.01;

/** What lies over the edge of the page, over its own box, or over something else. */
export function faults(page: Page, type: Typesetter): readonly string[] {
  const texts = textsOn(page);
  const inked = texts.map((text) => ({ name: text.text, room: text.box.width, ...inkBox(text, type) }));
  const boxes = [
    ...inked,
    ...page.placed
      .filter((each) => each.kind === "drawing" || each.kind === "code")
      .map((each) => ({ name: each.kind, ...each.box })),
  ];
  const beyond = boxes.filter(
    ({ x, y, width, height }) =>
      x < -NOISE || y < -NOISE || x + width > page.width + NOISE || y + height > page.height + NOISE,
  );
  const wide = inked.filter(({ width, room }) => width > room + NOISE);
  const sorted = [...boxes].sort((a, b) => a.y - b.y);
  const over = sorted.flatMap((one, index) => {
    const found: string[] = [];
    for (let at = index + 1; at < sorted.length && sorted[at]!.y < one.y + one.height - NOISE; at++) {
      const other = sorted[at]!;
      if (one.x < other.x + other.width - NOISE && other.x < one.x + one.width - NOISE)
        found.push(`${one.name} lies over ${other.name}`);
    }
    return found;
  });
  const lines = page.placed.flatMap((each) =>
    each.kind === "line" ? [each.from, each.to] : each.kind === "outline" ? each.points : [],
  );
  const outside = lines.filter(
    ([x, y]) => x < -NOISE || y < -NOISE || x > page.width + NOISE || y > page.height + NOISE,
  );
  return [
    ...beyond.map(({ name }) => `${name} lies beyond the page`),
    ...wide.map(({ name }) => `${name} is wider than its box`),
    ...over,
    ...outside.map(([x, y]) => `a line ends at ${x}, ${y}, beyond the page`),
  ];
}
