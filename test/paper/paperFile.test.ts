import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join, dirname } from "node:path";
import jsQR from "jsqr";
import { DEMO_SURVEY } from "../../src/cli/demoSurvey";
import { estimateTable } from "../../src/estimate/estimateTables";
import { mitreLeg } from "../../src/paper/gauges";
import { boxLabelsOf, labelsOf } from "../../src/paper/labelSheets";
import type { Placed } from "../../src/paper/page";
import { ON_LABEL_SHEETS, PAPER_KINDS } from "../../src/paper/paperKinds";
import { planPlaces } from "../../src/paper/planPlaces";
import { sheetGroups } from "../../src/paper/sheetGroups";
import { steppedEdges } from "../../src/paper/steppedEdges";
import { ticketsOf } from "../../src/paper/ticket";
import type { StockPlan } from "../../src/estimate/stockPlans";
import { sizeSurvey, type SizedSurvey } from "../../src/survey/sizeSurvey";
import { cutListTable } from "./cutListTable";
import { closedPaths, commandsOf, hasPoppler, inFile, printed, textOf } from "./paperTools";

const ifPoppler = hasPoppler ? test : test.skip;
const reason = hasPoppler ? "" : " (skipped: poppler-utils is not installed)";
const POINTS_PER_MM = 72 / 25.4;

const HEADINGS = ["Shelfmark", "Title", "Height", "Width", "Depth", "Enclosure", "Quantity"];
const ONE = [HEADINGS, ["LK 1", "Log", 300, 210, 40, "slipcase", 2]];

test("the same survey is the same file, byte for byte", async () => {
  const [one, other] = [await printed(ONE, ["tickets", "labels"]), await printed(ONE, ["tickets", "labels"])];
  expect(Buffer.compare(one.bytes, other.bytes)).toBe(0);
  expect(Buffer.from(one.bytes).toString("latin1")).not.toMatch(/D:20\d\d/);
});

test("pages are printed at full size, and the table of contents goes by batch", async () => {
  const rows = [
    [...HEADINGS, "Batch"],
    ["LK 2", "Log", 300, 210, 40, "slipcase", 1, "2"],
    ["LK 1", "Log", 300, 210, 40, "tray", 1, "1"],
  ];
  const text = Buffer.from((await printed(rows, ["tickets"])).bytes).toString("latin1");
  expect(text).toContain("/PrintScaling /None");
  expect(
    [...text.matchAll(/\/Title \((?:Batch \d|LK \d: Log)\)/g)].map(([title]) => title.slice(8, -1)).sort(),
  ).toEqual(["Batch 1", "Batch 2", "LK 1: Log", "LK 2: Log"]);
});

test("a survey without a row that can be sized has nothing to print", async () => {
  const rows = [HEADINGS, ["LK 1", "Log", 300, 210, 40, "none", 1]];
  await expect(printed(rows, ["templates"])).rejects.toThrow(/nothing of that kind to print/);
});

test("a mitred corner leaves one and a half boards beyond the corner of the board", () => {
  // By hand: turn-in 15, board 2. The line x + y = s is (2 x 15 - s) / sqrt 2 from the corner: s = 30 - 3 x 1.4142 = 25.757.
  expect(mitreLeg(15, 2)).toBeCloseTo(25.7574, 4);
});

test("the check bar measures 100.0 mm in the PDF's own units, and a notch its own size", async () => {
  const { bytes } = await printed([HEADINGS, ["LK 2", "Glass", 165, 120, 12, "folded tray", 1]], ["templates"]);
  const [commands] = commandsOf(bytes);
  expect(commands).toMatch(/^1 0 0 -1 0 841\.889\d* cm/);
  const sizes = closedPaths(commands!).map((points) => {
    const [xs, ys] = [points.map(([x]) => x / POINTS_PER_MM), points.map(([, y]) => y / POINTS_PER_MM)];
    return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)] as const;
  });
  expect(sizes.some(([w, h]) => Math.abs(w - 100) < 0.005 && Math.abs(h - 3) < 0.005)).toBe(true);
  expect(sizes.some(([w, h]) => Math.abs(w - 101.6) < 0.005 && Math.abs(h - 3) < 0.005)).toBe(true);
  // The turn-in gauge.
  expect(sizes.some(([w, h]) => Math.abs(w - 60) < 0.005 && Math.abs(h - 15) < 0.005)).toBe(true);
  // Inside depth 12 + 0.5 + 2 = 14.5; notch Cz x (Cz - t).
  expect(sizes.some(([w, h]) => Math.abs(w - 12.5) < 0.005 && Math.abs(h - 14.5) < 0.005)).toBe(true);
});

test("an edge that is cut in steps is drawn in true size, stretch by stretch", async () => {
  const rows = [HEADINGS, ["LK 3", "Log", 200, 150, 20, "folded clamshell", 1]];
  const { bytes, survey } = await printed(rows, ["templates"], {}, ["clamshell spine=creased"]);
  const [edge] = steppedEdges(ticketsOf(survey));
  const [first] = edge!.steps;
  expect(first!.from).toBe(0);
  const sizes = commandsOf(bytes)
    .flatMap(closedPaths)
    .map((points) => {
      const [xs, ys] = [points.map(([x]) => x / POINTS_PER_MM), points.map(([, y]) => y / POINTS_PER_MM)];
      return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)] as const;
    });
  const count = Math.ceil(edge!.long / 190);
  const wide = edge!.long / count;
  const whole = edge!.steps.filter(({ from, to }) => Math.floor(from / wide) === Math.floor((to - 1e-6) / wide));
  expect(whole.length).toBeGreaterThan(3);
  for (const { from, to, deep } of whole)
    expect(sizes.some(([w, h]) => Math.abs(w - (to - from)) < 0.005 && Math.abs(h - deep) < 0.005)).toBe(true);
});

/** The demo with the unit of its figures in its headings, so that it can be printed in inches. */
const DEMO_IN_MM = DEMO_SURVEY.map((row, index) =>
  index > 0 ? row : row.map((name) => (/^(Height|Width|Depth|Cushion)/.test(name) ? `${name} (mm)` : name)),
);
const SOAKING = process.env["SOAK"] !== undefined;

test.each(SOAKING ? (["A4", "Letter"] as const) : (["Letter"] as const))(
  "in inches too, on %s, sizes are those of the cut list, and all pages no more than tickets, sheets and lengths need",
  async (paper) => {
    const { bytes, survey, plans, pages } = await printed(DEMO_IN_MM, WITHOUT_LABELS, { paper }, ["unit=in"]);
    expect(pages).toBeLessThanOrEqual(mostPages(survey, plans));
    if (hasPoppler) expect(notPrinted(bytes, survey)).toEqual([]);
  },
);

const WITHOUT_LABELS = PAPER_KINDS.filter((paperKind) => !ON_LABEL_SHEETS.includes(paperKind));

/** Sizes that the functions answer and that no ticket says, rounded as a rule is read. */
function notPrinted(pdf: Uint8Array, survey: SizedSurvey): readonly string[] {
  const text = textOf(pdf).replace(/\s+/g, " ");
  const parts = cutListTable(survey);
  expect(parts.length).toBeGreaterThan(300);
  return parts
    .map(({ count, length, width }) => `${count} ${length} × ${width}`)
    .filter((words) => !text.includes(words));
}

/** Two sides a ticket, one a sheet or length, and eight for all that is printed once a job. */
function mostPages(survey: SizedSurvey, plans: readonly StockPlan[]): number {
  const groups = plans.filter(({ material }) => material !== "closure").flatMap(sheetGroups);
  return 2 * ticketsOf(survey).length + groups.length + 8;
}

ifPoppler(
  `every size on a ticket is that of the cut list, and the pages are no more than tickets, sheets and lengths need${reason}`,
  async () => {
    const { bytes, survey, plans, pages, parts: printedParts } = await printed(DEMO_SURVEY, WITHOUT_LABELS);
    expect(pages).toBeLessThanOrEqual(mostPages(survey, plans));
    const pagesOf = (...kinds: readonly string[]) =>
      printedParts.filter((part) => kinds.includes(part.what)).reduce((sum, part) => sum + part.pages, 0);
    // A plan is one page, its back too where it has more than 40 cuts.
    const groups = plans.filter(({ material }) => material !== "closure").flatMap(sheetGroups);
    const long = groups.filter(({ sheets: [sheet] }) => sheet.cuts.length > 40);
    expect(pagesOf("plans")).toBeLessThanOrEqual(groups.length + long.length);
    expect(notPrinted(bytes, survey)).toEqual([]);
  },
);

ifPoppler(
  `the printed lines of the budget add up to its printed totals, which are those of the estimate${reason}`,
  async () => {
    const { bytes, estimate, survey } = await printed(DEMO_SURVEY, ["estimate"]);
    const text = textOf(bytes);
    const [budget = ""] = text.split("Totals are sums of the lines as printed.");
    const lines = [...budget.matchAll(/^.*?(\d+\.\d\d) +(\d+\.\d\d) +(\d+\.\d\d)$/gm)].map(([line, ...sums]) => ({
      total: line.startsWith("total"),
      sums: sums.map(Number),
    }));
    const totals = lines.filter(({ total }) => total);
    const others = lines.filter(({ total }) => !total);
    expect(totals).toHaveLength(1);
    expect(others).toHaveLength(estimate.lines.filter(({ notInCost }) => notInCost === undefined).length);
    [0, 1, 2].forEach((column) => {
      const sum = others.reduce((all, { sums }) => all + sums[column]!, 0);
      expect(sum.toFixed(2)).toBe(totals[0]!.sums[column]!.toFixed(2));
    });
    const table = estimateTable(estimate, survey.settings);
    expect(totals[0]!.sums).toEqual(table.at(-1)!.slice(8, 11));
    for (const id of ["LK 038", "LK 039", "LK 040"]) expect(text).toContain(id);
  },
);

ifPoppler(`any writing in a title is printed, and a letter without a font by its code point${reason}`, async () => {
  const title = "Ημερολόγιο Журнал 灯台日誌 등대 📖 ไ";
  const { bytes } = await printed([HEADINGS, ["ש 1", title, 300, 210, 40, "tray", 1]], ["tickets"]);
  const text = textOf(bytes);
  for (const word of ["Ημερολόγιο", "Журнал", "灯台日誌", "등대", "U+1F4D6", "U+0E44", "ש"])
    expect(text).toContain(word);
  const fonts = execFileSync("pdffonts", [inFile(bytes)], { encoding: "utf8" })
    .trim()
    .split("\n")
    .slice(2);
  expect(fonts.length).toBeGreaterThanOrEqual(4);
  for (const line of fonts) expect(line).toMatch(/yes yes yes\s+\d+\s+0$/);
});

ifPoppler(`another program reads headings, tables by row and cell, and what a drawing shows${reason}`, async () => {
  const { bytes } = await printed(ONE, ["tickets"]);
  const path = inFile(bytes);
  expect(execFileSync("pdfinfo", [path], { encoding: "utf8" })).toMatch(/Tagged: +yes/);
  const read = execFileSync("pdfinfo", ["-struct-text", path], { encoding: "utf8" });
  const said = read.replace(/\(block\)|:\n +\/Scope \/Column/g, "").replace(/\s+/g, " ");
  expect(said).toContain('H1 "LK 1" P "Log"');
  expect(said).toMatch(
    /H2 "First round, conservation board 2\.5: cut these, mm\. Care: blade\." Table TR TH .*?TH "part" TH "cut" TH "length × width"/,
  );
  expect(said).toMatch(/TR TD .*?TD "1" TD "side" TD "4" TD "307 × 213"/);
  // What is at the foot of a page is no part of the text.
  expect(said).not.toContain("1 of 2");
  const file = Buffer.from(bytes).toString("latin1");
  for (const alt of ["QR code: LK 1", "grain along length"]) expect(file).toContain(`/Alt (${alt})`);
  expect(file.match(/\/S \/Figure/g)!.length).toBeGreaterThanOrEqual(3);
});

ifPoppler(
  `all that is drawn is tagged or an artifact, headings do not jump, pictures and links are named${reason}`,
  async () => {
    const { bytes } = await printed(ONE, ["tickets", "plans"], { date: new Date(Date.UTC(2026, 4, 31)) });
    const path = inFile(bytes);
    const file = Buffer.from(bytes).toString("latin1");
    expect(file).toMatch(/\/Lang \(en\)/);
    expect(file).toMatch(/\/DisplayDocTitle true/);
    expect(file).toMatch(/\/Marked true/);
    expect(execFileSync("pdfinfo", [path], { encoding: "utf8" })).toMatch(/Title: +On paper at the bench/);
    const tree = execFileSync("pdfinfo", ["-struct", path], { encoding: "utf8" }).split("\n");
    const heads = tree.flatMap((line) => /^\s*H(\d)\b/.exec(line)?.slice(1).map(Number) ?? []);
    expect(heads[0]).toBe(1);
    heads.forEach((level, index) => expect(level - (heads[index - 1] ?? 0)).toBeLessThanOrEqual(1));
    const depth = (line: string) => line.search(/\S/);
    const links = tree.flatMap((line, index) => (/^\s*Link\b/.test(line) ? [index] : []));
    expect(links.length).toBeGreaterThan(1);
    // Each link holds the place on the page that is pressed.
    for (const at of links) {
      expect(tree[at + 1]).toMatch(/Object \d+/);
      expect(depth(tree[at + 1]!)).toBeGreaterThan(depth(tree[at]!));
    }
    const figures = file.match(/\/S \/Figure\b/g)!.length;
    expect(file.match(/\/Alt \((?!grain)[^)]/g)!.length).toBeGreaterThanOrEqual(figures);
    const pages = commandsOf(bytes);
    expect(pages.length).toBeGreaterThan(5);
    for (const commands of pages) expect(untagged(commands)).toEqual([]);
  },
);

/** What a page draws outside all marked content. */
function untagged(commands: string): readonly string[] {
  let depth = 0;
  return commands.split("\n").flatMap((line) => {
    const operator = line.split(" ").at(-1)!;
    if (operator === "BDC" || operator === "BMC") depth++;
    if (operator === "EMC") depth--;
    return depth === 0 && DRAWING.has(operator) ? [line] : [];
  });
}

const DRAWING: ReadonlySet<string> = new Set(["f", "f*", "S", "s", "B", "B*", "b", "b*", "Tj", "TJ", "Do", "sh"]);

ifPoppler(`Arabic is joined and reads from the right${reason}`, async () => {
  const { bytes } = await printed([HEADINGS, ["A 1", "سجل المنارة", 300, 210, 40, "tray", 1]], ["tickets"]);
  // Poppler gives letters back in the order of reading, joined forms as the plain letters that they stand for.
  expect(textOf(bytes).normalize("NFKC")).toMatch(/سجل المنارة/);
});

ifPoppler(`the code on a label reads back as identifier and part, in any writing${reason}`, async () => {
  const identifier = "灯台 LK/1897-№ 12";
  const { bytes } = await printed([HEADINGS, [identifier, "Log", 300, 210, 40, "folded tray", 1]], ["labels"]);
  const path = inFile(bytes);
  execFileSync("pdftoppm", [
    "-r",
    "200",
    "-gray",
    "-x",
    "0",
    "-y",
    "0",
    "-W",
    "550",
    "-H",
    "290",
    "-singlefile",
    path,
    join(dirname(path), "page"),
  ]);
  const { pixels, width, height } = grey(readFileSync(join(dirname(path), "page.pgm")));
  expect(jsQR(pixels, width, height)?.data).toBe(`${identifier}; 1 blank`);
});

test("a label of a box says the shelf that the survey names", () => {
  const rows = [
    [...HEADINGS, "Shelf"],
    ["LK 1", "Log", 300, 210, 40, "tray", 1, "B 3"],
    ["LK 2", "Log", 300, 210, 40, "tray", 1, ""],
  ];
  const labels = boxLabelsOf(ticketsOf(sizeSurvey(rows, []), rows));
  expect(labels.map(({ shelf }) => shelf)).toEqual(["shelf B 3", ""]);
});

ifPoppler(`printed in grey a page is the same page: nothing is told by colour${reason}`, async () => {
  const { bytes } = await printed(DEMO_SURVEY.slice(0, 6), ["tickets", "plans"]);
  const colours = commandsOf(bytes).flatMap((commands) => [
    ...commands.matchAll(/(\S+) (\S+) (\S+) (?:scn|SCN|rg|RG)\n/g),
  ]);
  expect(colours.length).toBeGreaterThan(100);
  for (const [, red, green, blue] of colours) expect([green, blue]).toEqual([red, red]);
});

test("every piece of every sheet is named on the cutting plans", async () => {
  const { plans, survey } = await printed(DEMO_SURVEY.slice(0, 12), ["plans"]);
  const { cuttingPages } = await import("../../src/paper/cuttingPages");
  const { pageFrame } = await import("../../src/paper/frames");
  const { everyFont } = await import("./paperTools");
  const pages = cuttingPages([{ group: "", plans }], survey.settings, pageFrame("A4"), await everyFont());
  const all = pages.flatMap(({ placed }) => placed.flatMap(wordsOf)).join(" ");
  const pieces = plans.flatMap(({ plan }) => plan?.sheets.flatMap(({ placements }) => placements) ?? []);
  expect(pieces.length).toBeGreaterThan(50);
  for (const { piece } of pieces) expect(all).toContain(piece.item);
  // A label names its piece as the ticket does, and where it comes off the plan.
  const labels = labelsOf(ticketsOf(survey), "item", planPlaces(plans, survey.settings));
  const placed = labels.flatMap(({ more: [grain, place], part }) =>
    place?.includes(", ") ? [{ grain, place, part }] : [],
  );
  expect(placed.length).toBeGreaterThan(0.9 * labels.length);
  for (const { grain, place, part } of placed) {
    expect(part).toMatch(/^\d+ \D/);
    expect(grain).toMatch(/^grain (along (length|width)|either way)$/);
    expect(place).toMatch(/^(sheet|length) \d+[a-z]?, [A-Z]/);
    expect(all).toContain(place.split(", ")[1]);
  }
});

function wordsOf(placed: Placed): readonly string[] {
  if (placed.kind === "text") return [placed.text];
  if (placed.kind !== "drawing") return [];
  return placed.picture.shapes.flatMap((shape) => (shape.kind === "text" ? [shape.text] : []));
}

/** A portable grey map as the pixels that a code reader takes. */
function grey(file: Buffer) {
  const [head = "", size = ""] = file.toString("latin1", 0, 40).split("\n");
  if (head !== "P5") throw new Error(`a file of kind ${head}`);
  const [width, height] = size.split(" ").map(Number) as [number, number];
  const start = file.length - width * height;
  const pixels = new Uint8ClampedArray(width * height * 4);
  for (let at = 0; at < width * height; at++)
    pixels.set([file[start + at]!, file[start + at]!, file[start + at]!, 255], at * 4);
  return { pixels, width, height };
}
