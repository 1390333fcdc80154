import { DEMO_SURVEY } from "../../src/cli/demoSurvey";
import type { Shape } from "../../src/drawing/picture";
import { sheetPlan } from "../../src/drawing/sheetPlan";
import { benchTicket } from "../../src/paper/benchTicket";
import { cuttingPages } from "../../src/paper/cuttingPages";
import { estimatePages } from "../../src/paper/estimatePages";
import { pageFrame } from "../../src/paper/frames";
import { boxLabelsOf, labelSheets, labelsOf, USUAL_LABELS } from "../../src/paper/labelSheets";
import type { Page } from "../../src/paper/page";
import { PAPER_KINDS, type PaperKind } from "../../src/paper/paperKinds";
import { shelfPages } from "../../src/paper/shelfPages";
import { templatePages, trueSizesOf } from "../../src/paper/templatePages";
import { ticketsOf } from "../../src/paper/ticket";
import { commandsOf, everyFont, inkBox, printed, textsOn } from "./paperTools";

const HEADINGS = DEMO_SURVEY[0]!;
const ROWS = DEMO_SURVEY.slice(1, 8);
/** Its corners are cut away and its walls folded, so that it has templates. */
const FOLDED = ["LK 90", "Glass", 165, 120, 12, "", "", "folded tray"];
const SURVEY = [HEADINGS, ...ROWS, HEADINGS.map((_, index) => FOLDED[index] ?? "")];
const LEAST_CONTRAST = 4.5;

const pagesOf = printed(SURVEY, ["plans"]).then(async ({ survey, plans, estimate }) => {
  const [type, frame] = [await everyFont(), pageFrame("A4")];
  const tickets = ticketsOf(survey);
  const pages: Readonly<Record<PaperKind, readonly Page[]>> = {
    estimate: estimatePages(estimate, survey, frame, type),
    tickets: tickets.flatMap((ticket) => benchTicket(ticket, frame, type).pages()),
    plans: cuttingPages([{ group: "", plans }], survey.settings, frame, type),
    shelf: shelfPages(survey, SURVEY, frame, type),
    templates: templatePages(trueSizesOf(tickets), "mm", frame, type),
    labels: labelSheets(labelsOf(tickets, "item"), { paper: "A4", ...USUAL_LABELS }, type),
    "box-labels": labelSheets(boxLabelsOf(tickets), { paper: "A4", ...USUAL_LABELS }, type),
  };
  return { pages, type };
});

test.each(PAPER_KINDS)("every colour on the %s is a grey, in the PDF's own operators", async (paperKind) => {
  const commands = commandsOf((await printed(SURVEY, [paperKind])).bytes).join("");
  const operands = [...commands.matchAll(/^([\d.\s-]*?) ?(scn|SCN|rg|RG|k|K)$/gm)].map(([, numbers, operator]) => ({
    operator,
    numbers: numbers!.trim().split(/\s+/).map(Number),
  }));
  expect(operands.length).toBeGreaterThan(5);
  for (const { operator, numbers } of operands) {
    expect(["scn", "SCN", "rg", "RG"]).toContain(operator);
    expect(numbers).toEqual([numbers[0], numbers[0], numbers[0]]);
  }
});

test.each(PAPER_KINDS)("letters on the %s stand out from their ground by 4.5 to 1 at least", async (paperKind) => {
  const { pages, type } = await pagesOf;
  let letters = 0;
  for (const page of pages[paperKind])
    for (const text of textsOn(page)) {
      const { x, y, width, height } = inkBox(text, type);
      const grounds = page.placed.flatMap((each) => {
        if (each.kind !== "outline" || each.shade === 0) return [];
        const [xs, ys] = [each.points.map(([at]) => at), each.points.map(([, at]) => at)];
        const over =
          Math.min(...xs) < x + width && Math.max(...xs) > x && Math.min(...ys) < y + height && Math.max(...ys) > y;
        return over ? [each.shade] : [];
      });
      letters++;
      expect({ text: text.text, enough: contrast(1, Math.max(0, ...grounds)) >= LEAST_CONTRAST }).toEqual({
        text: text.text,
        enough: true,
      });
    }
  expect(letters).toBeGreaterThan(paperKind === "templates" ? 3 : 10);
});

test("letters within drawings stand on tones that leave them 4.5 to 1", async () => {
  const { pages } = await pagesOf;
  const tones = Object.values(pages).flatMap((some) =>
    some.flatMap(({ placed }) =>
      placed.flatMap((each) => (each.kind === "drawing" ? underLetters(each.picture.shapes) : [])),
    ),
  );
  expect(tones.length).toBeGreaterThan(50);
  for (const tone of tones) expect(contrast(1, tone)).toBeGreaterThanOrEqual(LEAST_CONTRAST);
});

test("on a sheet off-cuts are hatched, pieces plain, cuts dashed, the edge of the sheet and the grain whole lines", () => {
  const piece = { piece: { item: "LK 1", part: "base" }, x: 0, y: 0, length: 600, width: 700 };
  const cut = { way: "across", at: 600, from: 0, to: 700 } as const;
  const sheet = { stock: "board", length: 1000, width: 700, placements: [piece], cuts: [cut] };
  const { shapes } = sheetPlan(sheet, { unit: "mm" });
  // A piece is laid over the hatch in the paper's tone, so nothing of the hatch shows within it.
  const hatch = shapes.findIndex(({ kind }) => kind === "hatch");
  const plain = shapes.findIndex((each) => each.kind === "rectangle" && each.fill === 0 && each.stroke === undefined);
  expect(hatch).toBeGreaterThan(0);
  expect(plain).toBeGreaterThan(hatch);
  const { lines } = shapes[hatch] as Shape & { readonly kind: "hatch" };
  expect(lines.length).toBeGreaterThan(10);
  for (const [[x1, y1], [x2, y2]] of lines) expect(Math.abs(x1 - x2)).toBeCloseTo(Math.abs(y1 - y2), 0);
  const polylines = shapes.filter((each) => each.kind === "polyline");
  const dashed = polylines.filter(({ stroke }) => stroke.dash !== undefined);
  expect(dashed).toHaveLength(1);
  const [[from], [to]] = dashed[0]!.points as [[number, number], [number, number]];
  expect(from).toBeCloseTo(to, 6);
  // The grain: a shaft and two heads of three points each, none dashed.
  const heads = polylines.filter(({ points }) => points.length === 3);
  expect(heads.map(({ stroke }) => stroke.dash)).toEqual([undefined, undefined]);
});

test("on templates what is cut away is hatched, a fold is dashed and a cut is a heavier whole line", async () => {
  const { pages } = await pagesOf;
  const placed = pages.templates.flatMap((page) => page.placed);
  expect(placed.some((each) => each.kind === "outline" && each.hatched && each.shade === 0)).toBe(true);
  const lines = placed.filter((each) => each.kind === "line");
  const folds = lines.filter(({ dashed }) => dashed);
  const cuts = lines.filter(({ dashed, weight }) => !dashed && weight > folds[0]!.weight);
  expect(folds.length).toBeGreaterThan(0);
  expect(cuts.length).toBeGreaterThan(0);
});

/** The darkest fill that is in sight under the foot of each text: what is drawn last hides what is beneath. */
function underLetters(shapes: readonly Shape[]): readonly number[] {
  return shapes.flatMap((shape, index) => {
    if (shape.kind !== "text") return [];
    let tone = 0;
    for (const below of shapes.slice(0, index)) {
      if (!("fill" in below) || below.fill === undefined) continue;
      if (holds(below, shape.at)) tone = below.fill;
    }
    return [tone];
  });
}

function holds(shape: Shape, [x, y]: readonly [number, number]): boolean {
  if (shape.kind === "circle") return Math.hypot(shape.middle[0] - x, shape.middle[1] - y) < shape.radius;
  if (shape.kind === "polygon") return isWithin([x, y], shape.points);
  if (shape.kind !== "rectangle") return false;
  const [left, top] = shape.corner;
  return x > left && x < left + shape.width && y > top && y < top + shape.height;
}

function isWithin([x, y]: readonly [number, number], corners: readonly (readonly [number, number])[]): boolean {
  return corners.reduce((inside, [x1, y1], index) => {
    const [x2, y2] = corners[(index + 1) % corners.length]!;
    const crossed = y1 > y !== y2 > y && x < ((x2 - x1) * (y - y1)) / (y2 - y1) + x1;
    return crossed ? !inside : inside;
  }, false);
}

/** Contrast of two tones of ink, 0 for paper to 1 for black, as WCAG 2.2 defines it from relative luminance. */
function contrast(one: number, other: number): number {
  const luminance = (ink: number) => {
    const level = 1 - ink;
    return level <= 0.04045 ? level / 12.92 : ((level + 0.055) / 1.055) ** 2.4;
  };
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}
