import { DEMO_SURVEY } from "../../src/cli/demoSurvey";
import { roundsOf, finished } from "../../src/enclosure/rounds";
import { X, Y, Z } from "../../src/enclosure/space";
import { benchTicket } from "../../src/paper/benchTicket";
import { halfFrame, onLeaves, pageFrame, twoUp } from "../../src/paper/frames";
import type { Page } from "../../src/paper/page";
import { frontPages } from "../../src/paper/frontPages";
import { readAs, ticketsOf } from "../../src/paper/ticket";
import { matchLines } from "../../src/paper/ticketMatch";
import { numberedParts } from "../../src/paper/ticketBoards";
import { ticketSets } from "../../src/paper/ticketSets";
import { sizeSurvey } from "../../src/survey/sizeSurvey";
import { enclosed, book } from "../enclosure/sizing";
import { everyFont, faults, textsOn } from "./paperTools";

jest.setTimeout(240_000);

const tickets = ticketsOf(sizeSurvey(DEMO_SURVEY, []));
const type = everyFont();

function textOn(pages: readonly Page[]): string {
  return pages.flatMap((page) => textsOn(page).map(({ text }) => text)).join(" ");
}

test("tickets come in the order of batch, priority and row, blanks last", () => {
  const order = tickets.map(({ batch, priority, row }) => [batch, priority, row]);
  expect(order[0]).toEqual(["1", "1", 2]);
  const sorted = [...order].sort(
    ([a, b, c], [d, e, f]) => Number(a) - Number(d) || Number(b) - Number(e) || Number(c) - Number(f),
  );
  expect(order).toEqual(sorted);
});

test.each(["A4", "Letter"] as const)(
  "on %s most tickets are one leaf, none is over two, each begins on a front",
  async (paper) => {
    const { wholes } = ticketSets(tickets, false, { whole: pageFrame(paper) }, await type);
    const own = wholes.slice(0, tickets.length);
    expect(own.filter((pages) => pages.length <= 2).length).toBeGreaterThanOrEqual(0.8 * tickets.length);
    expect(Math.max(...own.map((pages) => pages.length))).toBeLessThanOrEqual(4);
    const pages = onLeaves(wholes);
    expect(pages.length).toBeLessThanOrEqual(2 * tickets.length + 2);
    pages.forEach((page, index) => {
      if (page.bookmark !== "") expect(index % 2).toBe(0);
    });
  },
);

test("parts made to a finished tray are trimmed to it where they were cut larger, and checked where they were not", async () => {
  const set = await type;
  const survey = [
    ["id", "height", "width", "depth", "enclosure"],
    ["A", 300, 210, 40, "lidded box"],
  ];
  const said = (...settings: readonly string[]) =>
    textOn(benchTicket(ticketsOf(sizeSurvey(survey, settings))[0]!, pageFrame("A4"), set).pages());
  expect(said()).toContain("trim to fit");
  for (const setting of ["plan style=least sheets", "match allowance=none"])
    expect(said(setting)).toContain("check the fit");
});

test("what to beware of at every bench is said once a job, in short beside the steps, and lifting only over the limit", async () => {
  const set = await type;
  const said = (rows: typeof DEMO_SURVEY, ...settings: readonly string[]) =>
    textOn(frontPages(sizeSurvey(rows, settings), pageFrame("A4"), set));
  const light = DEMO_SURVEY.slice(0, 3);
  const job = said(light);
  for (const text of ["Blade: cut along", "Adhesive: keep to", "Local rules come first"]) expect(job).toContain(text);
  expect(job).not.toContain("Weight: lift");
  expect(said(light, "lift limit=0.5")).toContain("Weight: lift");
  const [ticket] = ticketsOf(sizeSurvey(light, []));
  const own = textOn(benchTicket(ticket!, pageFrame("A4"), set).pages());
  expect(own).toContain("Care: blade.");
  expect(own).toMatch(/Care: blade in steps? [\d, and]+; adhesive in steps? [\d, and]+\./);
  expect(own).not.toMatch(/Blade: cut along|Adhesive: keep to|Local rules come first|Weight: lift/);
});

test("an order of assembly that tickets share is printed once where it is asked for, with a box a step on each ticket", async () => {
  const set = await type;
  const boxes = tickets.filter(({ sized }) => sized.kind.name === "slipcase");
  expect(boxes.length).toBeGreaterThan(1);
  const [first, ...others] = ticketSets(boxes, true, { whole: pageFrame("A4") }, set).wholes;
  const { text } = boxes[0]!.sized.kind.order(boxes[0]!.sized.assembly, boxes[0]!.sized.settings)[1]!;
  expect(textOn(first!)).toContain("list A, printed once");
  expect(textOn(first!)).not.toContain(text.slice(0, 30));
  expect(textOn(others.at(-1)!)).toContain(text.slice(0, 30));
  expect(textOn(others.at(-1)!)).toContain("LK 005");
});

test("backs of half pages lie behind their fronts when the sheet is turned on its short edge", async () => {
  const set = await type;
  const frame = halfFrame("A4");
  const sets = tickets.slice(20, 24).map((ticket) => benchTicket(ticket, frame, set).pages());
  const [front, back] = twoUp(sets);
  expect(textsOn(front!).find(({ text }) => text === tickets[20]!.identifier)!.box.x).toBeLessThan(frame.width);
  const behind = textsOn(back!).filter(({ text }) => text === tickets[20]!.identifier);
  expect(behind.every(({ box }) => box.x > frame.width)).toBe(true);
  for (const page of twoUp(sets)) expect(faults(page, set)).toEqual([]);
});

test.each(["A4", "Letter"] as const)(
  "on halves of %s a ticket is one leaf of two half pages, or it is on whole pages and named",
  async (paper) => {
    const frames = { whole: pageFrame(paper), half: halfFrame(paper) };
    const { halves, wholes, tooLarge } = ticketSets(tickets, false, frames, await type);
    expect(halves.length).toBeGreaterThanOrEqual(14);
    for (const pages of halves) expect(pages).toHaveLength(2);
    expect(halves.length + tooLarge.length).toBe(tickets.length);
    expect(wholes.slice(0, tooLarge.length).map(([page]) => page!.width)).toEqual(
      tooLarge.map(() => frames.whole.width),
    );
    for (const pages of wholes.slice(0, tooLarge.length))
      expect(textOn(pages.slice(0, 1))).toMatch(/On a whole page: half a page has no room for its \d+ parts/);
    // Two tickets share a sheet: front and back.
    expect(twoUp(halves)).toHaveLength(2 * Math.ceil(halves.length / 2));
  },
);

test("a lid and a case are cut after what they go over is measured, with the sums of the sizing rules", () => {
  // By hand: lid inside = finished + 2c + g = + 1 + 1; a full lid's depth = finished - reveal.
  const [, lid] = roundsOf(enclosed(book(300, 210, 40), "lidded box"));
  expect(lid!.madeTo!.name).toBe("box");
  expect(finished(lid!.madeTo!, Y)).toBeCloseTo(308, 9);
  expect(lid!.rules.map(({ direction, more }) => [direction, Math.round(more * 1e6) / 1e6])).toEqual([
    [Y, 2],
    [X, 2],
    [Z, -3],
  ]);
  // Large tray: height finished + 2c + g, width and depth finished + g. Case: height + 2 squares, width + square - c,
  // spine the finished depth and the covering inside each board.
  const [first, large, boards] = roundsOf(enclosed(book(300, 210, 40), "clamshell box"));
  expect(first!.parts.every(({ tray }) => tray === "small")).toBe(true);
  expect(large!.rules.map(({ more }) => Math.round(more * 1e6) / 1e6)).toEqual([2, 1, 1]);
  expect(boards!.madeTo!.name).toBe("large");
  expect(boards!.rules.map(({ of, more }) => [of, Math.round(more * 1e6) / 1e6])).toEqual([
    ["case board", 6],
    ["case board", 2.5],
    ["case spine", 1],
  ]);
});

test("a lid of given depth does not follow the depth of its box", () => {
  const text = "lid depth=20 mm";
  const [, lid] = roundsOf(enclosed(book(300, 210, 60), "lidded box", text));
  expect(lid!.rules.map(({ direction }) => direction)).toEqual([Y, X]);
});

test("a bottom is made to an inner tray that is bare below: its depth = finished - covering on the rim - neck", () => {
  const [, around] = roundsOf(enclosed(book(300, 210, 40), "three-tray box"));
  // Inner: 44.9 bare, 45.4 with its rim covered; 45.4 - 0.5 - 10 = 34.9, cut 35.
  expect(finished(around!.madeTo!, Z)).toBeCloseTo(45.4, 9);
  expect(around!.rules.map(({ of, direction, more }) => [of, direction, more])).toEqual([
    ["bottom inside", Y, 2],
    ["bottom inside", X, 2],
    ["bottom inside", Z, -10.5],
    ["lid inside", Y, 2],
    ["lid inside", X, 2],
  ]);
});

test("every part is in exactly one round", () => {
  for (const { sized } of tickets) {
    const parts = roundsOf(sized.assembly).flatMap((round) => round.parts);
    expect([...parts].sort(byName)).toEqual([...sized.assembly.parts].sort(byName));
  }
  function byName(one: { name: string; tray: string }, other: { name: string; tray: string }): number {
    return `${one.tray} ${one.name}`.localeCompare(`${other.tray} ${other.name}`);
  }
});

test("a wall is matched by a sum with room for the caliper that was measured", () => {
  const ticket = tickets.find(({ sized }) => sized.kind.name === "tray")!;
  const lines = numberedParts(ticket)
    .filter(({ part }) => part.placed?.role === "wall")
    .map(({ part }) => matchLines(part, ticket.sized));
  expect(lines[0]).toEqual([
    { text: "length: base height + 2 × board", blank: true },
    { text: "height: inside depth + board", blank: true },
  ]);
  expect(lines[1]).toEqual([
    { text: "length: base width", blank: false },
    { text: "height: as the side wall", blank: false },
  ]);
});

test("what is as large as a board but is none is not said to be a board: a flap is cut shorter by its relief", () => {
  // Relief 3 mm, board 3 mm: by hand 410 + 1 - 3 = 408.
  const survey = [
    ["id", "height", "width", "depth", "enclosure"],
    ["A", 560, 410, 8, "flap portfolio"],
  ];
  const [ticket] = ticketsOf(sizeSurvey(survey, ["wall board=3 mm"]));
  const flap = numberedParts(ticket!).find(({ part }) => part.name === "fore-edge flap")!.part;
  expect(flap.width).toBeCloseTo(408, 9);
  expect(matchLines(flap, ticket!.sized).map(({ text }) => text)).toEqual([
    "length: portfolio board height",
    "width: cut to size",
  ]);
});

test("cushions say how thick they are", () => {
  const survey = [
    ["id", "height", "width", "depth", "enclosure"],
    ["A", 170, 125, 92, "lidded box"],
  ];
  const [ticket] = ticketsOf(sizeSurvey(survey, ["cushion base=5 mm; cushion sides=6 mm"]));
  const cushions = numberedParts(ticket!).filter(({ part }) => part.material === "cushion");
  expect(cushions.map(({ part }) => [part.name, matchLines(part, ticket!.sized)[0]!.text])).toEqual([
    ["cushion base", "5 thick"],
    ["cushion side", "6 thick"],
    ["cushion head", "6 thick"],
  ]);
});

test("a ticket that one page holds is on the front alone", async () => {
  const set = await type;
  for (const identifier of ["LK 009", "LK 010", "LK 016"]) {
    const ticket = tickets.find((each) => each.identifier === identifier)!;
    const pages = benchTicket(ticket, pageFrame("A4"), set).pages();
    expect(pages).toHaveLength(1);
    expect(pages.flatMap((page) => faults(page, set))).toEqual([]);
    expect(textOn(pages)).toContain("Order of assembly");
  }
});

test("dividers say where they stand", () => {
  // By hand: 180 + 2, and covering of 0.5 on the wall and on the divider.
  const survey = [
    ["id", "height", "width", "depth", "enclosure", "box", "arrangement"],
    ["A", 240, 180, 60, "lidded box", "1", "side by side"],
    ["B", 240, 190, 60, "lidded box", "1", "side by side"],
  ];
  const [ticket] = ticketsOf(sizeSurvey(survey, []));
  const divider = numberedParts(ticket!).find(({ part }) => part.name === "divider")!.part;
  const said = matchLines(divider, ticket!.sized).map(({ text }) => text);
  expect(said).toContain("stands 183 from the wall at the spine");
});

test("the strip of an inner tray, which is bare below, is not turned in under its base", () => {
  const { assembly, settings, kind } = tickets.find(({ sized }) => sized.kind.name === "three-tray box")!.sized;
  const strips = kind
    .order(assembly, settings)
    .filter(({ parts }) => parts.some((name) => name.endsWith("wall strip")));
  expect(strips.map(({ text }) => [text.split(":")[0], text.includes("under the base")])).toEqual([
    ["Inner", false],
    ["Bottom", true],
    ["Lid", true],
  ]);
});

test("an inch ticket asks for no millimetres, gives calipers in thousandths, and parts no number from its fraction", async () => {
  const survey = [
    ["id", "height", "width", "depth", "enclosure"],
    ["A", 12.31, 8.47, 2.07, "folded clamshell"],
    ["B", 8.63, 5.5, 0.88, "four-flap wrapper"],
    ["C", 11.8, 9.1, 1.3, "flap portfolio"],
    ["D", 9.33, 6.71, 1.57, "lidded box"],
  ];
  const set = await type;
  for (const ticket of ticketsOf(sizeSurvey(survey, ["unit=in"]))) {
    const lines = benchTicket(ticket, pageFrame("Letter"), set)
      .pages()
      .flatMap((page) => textsOn(page).map(({ text }) => text));
    expect(lines.filter((text) => /\d mm\b/u.test(text))).toEqual([]);
    expect(lines.filter((text, index) => /\d$/u.test(text) && /^\d+\/\d+\D/u.test(lines[index + 1] ?? ""))).toEqual([]);
    expect(lines.filter((text) => text.startsWith("Measure "))).toEqual(
      expect.arrayContaining([expect.stringMatching(/sized for 0\.\d{3} in:$/u)]),
    );
  }
});

test("a narrow strip is drawn wider, and says so, so that its lines lie apart", async () => {
  const said = async (depth: number) => {
    const survey = [
      ["id", "height", "width", "depth", "enclosure"],
      ["A", 305, 230, depth, "tray"],
    ];
    return textOn(benchTicket(ticketsOf(sizeSurvey(survey, []))[0]!, pageFrame("A4"), await type).pages());
  };
  expect(await said(2)).toContain("wall strip (drawn wider than to scale)");
  expect(await said(120)).not.toContain("drawn wider");
});

test("a weight is printed as fine as scales for objects show it", () => {
  const read = (weight: string) => {
    const survey = [
      ["id", "height", "width", "depth", "weight", "enclosure"],
      ["A", 12, 8, 2, weight, "tray"],
    ];
    return readAs(ticketsOf(sizeSurvey(survey, ["unit=in"]))[0]!.sized);
  };
  expect(read("24.6 kg")).toBe("12 × 8 × 2 in, 54.2 lb");
  expect(read("0.4 kg")).toBe("12 × 8 × 2 in, 0.88 lb");
});
