import fc from "fast-check";
import { templateOfBlank } from "../../src/drawing/templateOfBlank";
import { runOf } from "../../src/enclosure/blank";
import { KINDS } from "../../src/enclosure/registry";
import { benchTicket } from "../../src/paper/benchTicket";
import { cuttingPages } from "../../src/paper/cuttingPages";
import { estimatePages } from "../../src/paper/estimatePages";
import { halfFrame, pageFrame, twoUp } from "../../src/paper/frames";
import { BOX_IDENTIFIER, boxLabelsOf, labelSheets, labelsOf } from "../../src/paper/labelSheets";
import { templatePages, trueSizesOf } from "../../src/paper/templatePages";
import { ticketsOf, type Ticket } from "../../src/paper/ticket";
import { estimateFor } from "../../src/estimate/budget";
import { sizeSurvey } from "../../src/survey/sizeSurvey";
import { everyFont, faults, smallLetters, textsOn } from "./paperTools";

const SOAKING = process.env["SOAK"] !== undefined;

const WORDS = [
  "Keeper's log",
  "with plates, loose, in a wrapper",
  "Ημερολόγιο του φαροφύλακα",
  "Журнал смотрителя маяка",
  "سجل حارس المنارة",
  "יומן שומר המגדלור",
  "灯台日誌",
  "灯塔日志及其附录",
  "등대 일지",
  "Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft",
  "📖",
  "(1897–1903)",
  "x".repeat(150),
];

const row = fc.record({
  identifier: fc.array(fc.constantFrom("LK", "1897.12", "灯", "a".repeat(60), "ب", "٣٤"), {
    minLength: 1,
    maxLength: 6,
  }),
  title: fc.array(fc.constantFrom(...WORDS), { maxLength: 25 }),
  sizes: fc.tuple(
    fc.integer({ min: 60, max: 650 }),
    fc.integer({ min: 60, max: 450 }),
    fc.integer({ min: 4, max: 120 }),
  ),
  kind: fc.constantFrom(...KINDS.map(({ name }) => name)),
  quantity: fc.integer({ min: 1, max: 9 }),
  hazard: fc.constantFrom("", "mercury", "lead, arsenic and whatever else was once used ".repeat(6)),
});

const rows = fc.sample(row, { numRuns: 500, seed: 8 });
const cells = [
  ["Shelfmark", "Title", "Height", "Width", "Depth", "Enclosure", "Quantity", "Hazard"],
  ...rows.map(({ identifier, title, sizes, kind, quantity, hazard }, index) => [
    `${identifier.join(" ")} ${index}`,
    title.join(" "),
    ...sizes,
    kind,
    quantity,
    hazard,
  ]),
];
const type = everyFont();
const survey = sizeSurvey(cells, ["cover style=one piece"]);
const tickets: readonly Ticket[] = ticketsOf(survey);

const FRAMES = {
  A4: pageFrame("A4"),
  Letter: pageFrame("Letter"),
  "half A4": halfFrame("A4"),
  "half Letter": halfFrame("Letter"),
};
const written = new Map<string, ReturnType<typeof pagesOf>>();

async function pagesOf(ticket: Ticket, frame: keyof typeof FRAMES) {
  return benchTicket(ticket, FRAMES[frame], await type).pages();
}

/** The pages of a bench ticket, written once for all tests. */
function pagesOnce(index: number, frame: keyof typeof FRAMES): ReturnType<typeof pagesOf> {
  const key = `${index} ${frame}`;
  const pages = written.get(key) ?? pagesOf(tickets[index]!, frame);
  written.set(key, pages);
  return pages;
}

test("500 generated items are sized", () => {
  expect(tickets).toHaveLength(500);
});

test.each([
  [SOAKING ? 500 : 90, "A4"],
  [SOAKING ? 500 : 40, "Letter"],
  [SOAKING ? 500 : 40, "half A4"],
  [SOAKING ? 500 : 40, "half Letter"],
] as const)(
  "%i bench tickets on %s lie within their pages, nothing over anything else, no letters under 9 points",
  async (count, frame) => {
    const set = await type;
    for (let index = 0; index < count; index++)
      for (const page of await pagesOnce(index, frame))
        expect([...faults(page, set), ...smallLetters(page)]).toEqual([]);
  },
);

test("the stretches of every blank of 500 items add up to what is cut", () => {
  const off = tickets.flatMap(({ identifier, sized: { kind, assembly, settings } }) =>
    kind.blanks(assembly, settings).flatMap((blank) => {
      const { name, length, width, alongLength, alongWidth } = templateOfBlank(blank);
      return [[length, alongLength] as const, [width, alongWidth] as const].flatMap(([cut, run]) =>
        run.length === 0 || Math.abs(runOf(run) - cut) < 1e-6 ? [] : [`${identifier}, ${name}: ${runOf(run)}, ${cut}`],
      );
    }),
  );
  expect(off).toEqual([]);
});

test("a title of any length is printed whole", async () => {
  for (const [index, ticket] of tickets.slice(0, 40).entries()) {
    const all = (await pagesOnce(index, "A4"))
      .flatMap((page) => textsOn(page).map(({ text }) => text))
      .join("")
      .replace(/\s/g, "");
    expect(all).toContain(ticket.title.replace(/\s/g, ""));
    expect(all).toContain(ticket.identifier.replace(/\s/g, ""));
  }
});

test("half pages lie two by two on a page of the paper on its side", async () => {
  const set = await type;
  const halves = await Promise.all(tickets.slice(0, 40).map((_, index) => pagesOnce(index, "half A4")));
  const pages = twoUp(halves);
  for (const page of pages) {
    expect([page.width, page.height]).toEqual([297, 210]);
    expect(faults(page, set)).toEqual([]);
  }
});

test("labels of any identifier lie within their sheets, one for every piece", async () => {
  const set = await type;
  const labels = labelsOf(tickets, "stock");
  const expected = survey.outcomes.length;
  expect(labels.length).toBeGreaterThan(expected);
  expect(labels.filter(({ part }) => part === "joint strip")).toEqual([]);
  for (const grid of [
    { columns: 3, rows: 8, margin: 0 },
    { columns: 2, rows: 5, margin: 12 },
    { columns: 4, rows: 11, margin: 5 },
  ]) {
    const pages = labelSheets(labels.slice(0, 600), { paper: "A4", order: "item", ...grid }, set);
    expect(pages).toHaveLength(Math.ceil(600 / (grid.columns * grid.rows)));
    expect(pages.flatMap((page) => faults(page, set))).toEqual([]);
  }
});

test("every finished enclosure has a label, within its sheet", async () => {
  const set = await type;
  const labels = boxLabelsOf(tickets);
  expect(labels).toHaveLength(tickets.reduce((sum, { quantity }) => sum + quantity, 0));
  // Copies of one item differ in their number alone, which is longest on the last.
  const laidOut = labels.filter(({ identifier }, at) => SOAKING || labels[at + 1]?.identifier !== identifier);
  expect(laidOut.length).toBeGreaterThanOrEqual(tickets.length);
  for (const grid of [
    { columns: 3, rows: 8, margin: 0 },
    { columns: 2, rows: 5, margin: 12 },
  ]) {
    const options = { paper: "A4", order: "item", identifierSize: BOX_IDENTIFIER, ...grid } as const;
    expect(labelSheets(laidOut, options, set).flatMap((page) => faults(page, set))).toEqual([]);
  }
});

const BOXES = SOAKING ? 200 : 24;

test(`cutting plans of ${BOXES} boxes, a page a sheet, templates and budget lie within their pages`, async () => {
  const set = await type;
  const some = cells.slice(0, 1 + BOXES);
  const sized = sizeSurvey(some, ["cover style=one piece"]);
  const estimate = estimateFor(sized, some, { budget: { iterations: 1 } });
  const plans = estimate.plans.flatMap((group) => group.plans);
  const sheets = plans.reduce((sum, { plan }) => sum + (plan?.sheets.length ?? 0), 0);
  const cutting = cuttingPages([{ group: "", plans }], sized.settings, pageFrame("A4"), set);
  expect(sheets).toBeGreaterThan(BOXES / 2);
  expect(cutting.filter(({ bookmark }) => bookmark !== "").length).toBeLessThanOrEqual(sheets);
  const pages = [
    ...cutting,
    ...templatePages(trueSizesOf(ticketsOf(sized)), "mm", pageFrame("Letter"), set),
    ...estimatePages(estimate, sized, pageFrame("A4"), set),
  ];
  expect(pages.length).toBeGreaterThan(20);
  expect(pages.flatMap((page) => faults(page, set))).toEqual([]);
  expect(cutting.flatMap(smallLetters)).toEqual([]);
});
