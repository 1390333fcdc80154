import { stepsOf } from "../../src/covering/stepsOf";
import { CAUTIONS, type Step } from "../../src/enclosure/step";
import { KINDS } from "../../src/enclosure/registry";
import { settledOf } from "../settings/settledOf";
import { saysTheOrder } from "../suites/saysTheOrder";
import { assemblyOf, EVERY_STRUCTURE } from "./everyEnclosure";
import { book, enclosed } from "./sizing";

function orderOf(kind: string, text = "", item = book(300, 210, 40)): readonly Step[] {
  return stepsOf(enclosed(item, kind, text), settledOf(text));
}

/** Where the only step that says so stands. */
function place(steps: readonly Step[], words: RegExp): number {
  const found = steps.flatMap(({ text }, index) => (words.test(text) ? [index] : []));
  expect({ words: String(words), found: found.length }).toEqual({ words: String(words), found: 1 });
  return found[0]!;
}

const STRUCTURES = EVERY_STRUCTURE.map(
  ({ kind, text, settings }) => [`${kind.name}: ${text}`, kind, settings] as const,
);

test("structures to try: every kind, more than one of each that has options", () => {
  expect(new Set(EVERY_STRUCTURE.map(({ kind }) => kind.name))).toEqual(new Set(KINDS.map(({ name }) => name)));
  expect(STRUCTURES.length).toBeGreaterThan(100);
});

describe("every structure", () => saysTheOrder(EVERY_STRUCTURE));

describe("cautions", () => {
  test.each([
    ["blade", /rule, fingers behind its edge/],
    ["adhesive", /safety sheet, with fresh air/],
    ["weight", /with another person; your local handling rules/],
  ] as const)("%s", (name, words) => expect(CAUTIONS[name]).toMatch(words));
});

describe("walls of a tray", () => {
  test("round a base the walls that it matches come first, and the others cover their ends", () => {
    const steps = orderOf("tray", "construction=around base");
    expect(place(steps, /Glue the head walls first, along the edge of the base and level with its underside/)).toBe(2);
    expect(place(steps, /Glue the side walls along the base and over the ends of the head walls/)).toBe(3);
  });

  test("through=head: the other way round", () => {
    const steps = orderOf("tray", "construction=around base; through=head");
    expect(place(steps, /Glue the side walls first/)).toBe(2);
    expect(place(steps, /Glue the head walls along the base and over the ends of the side walls/)).toBe(3);
  });

  test("on a base the walls along its full edge come first, and the others fit between them", () => {
    const steps = orderOf("tray", "construction=on base");
    expect(place(steps, /Glue the side walls first, on the base along its full edge/)).toBe(2);
    expect(place(steps, /Fit the head walls between them/)).toBe(3);
  });

  test("a flange card is under the base before any wall, and is trimmed last", () => {
    const steps = orderOf("tray");
    expect(place(steps, /Glue the base to the middle of the larger flange card/)).toBe(2);
    expect(place(steps, /Glue the head walls first, along the edge of the base and down on the card/)).toBe(3);
    expect(place(steps, /Glue the side walls along the base, down on the card/)).toBe(4);
    expect(place(steps, /trim the flange card flush/)).toBe(5);
  });

  test.each(["on base", "around base"])("%s has no flange card to glue or trim", (construction) => {
    expect(orderOf("tray", `construction=${construction}`).some(({ text }) => text.includes("card"))).toBe(false);
  });

  test("a clamshell has a fore-edge wall where a tray has side walls", () => {
    const texts = orderOf("clamshell box").map(({ text }) => text);
    expect(texts.filter((text) => text.includes("fore-edge wall")).length).toBeGreaterThanOrEqual(2);
    expect(texts.filter((text) => text.includes("side walls"))).toEqual([]);
  });
});

describe("two layers", () => {
  test.each([
    ["construction=on base", /outer ring round the inner one, on the base/],
    ["construction=around base", /outer ring round the inner one, beside the base/],
    ["construction=flanged base", /outer ring round the inner one, beside the base/],
  ])("%s", (text, words) => {
    const steps = orderOf("tray", `${text}; wall layers=2`);
    const outer = place(steps, words);
    // In every construction the inner ring stands on the base.
    expect(place(steps, /Glue the inner side walls first, on the base/)).toBeLessThan(outer);
    expect(place(steps, /Fit the inner head walls between them/)).toBeLessThan(outer);
    expect(steps[outer]!.text).toMatch(/now the outer head walls run through/);
  });

  test("through=head: the outer side walls run through", () => {
    const steps = orderOf("lidded box", "wall layers=2; through=head");
    expect(steps[place(steps, /outer ring/)]!.text).toMatch(/^Box: .*now the outer side walls run through/);
  });

  test("one layer speaks of no ring", () => {
    for (const { name } of KINDS)
      expect(orderOf(name).filter(({ text }) => /outer ring|inner (?:side|head) wall/.test(text))).toEqual([]);
  });
});

describe("cards", () => {
  const flanged = STRUCTURES.filter(([, { options }, { construction }]) =>
    options.includes("construction") && construction === "flanged base" ? true : false,
  );

  test.each(flanged)(
    "a flange card is glued before the walls, and trimmed after them when dry: %s",
    (_name, kind, settings) => {
      const steps = stepsOf(assemblyOf(kind, book(300, 210, 40), settings)!, settings);
      const found = (words: RegExp) => steps.flatMap(({ text }, index) => (words.test(text) ? [index] : []));
      const glued = found(/larger flange card/);
      const trimmed = found(/When all is dry, trim the flange cards? flush/);
      const walls = found(/Glue the (?:inner )?(?:head|side|back|fore-edge) walls? (?:first|to one side)/);
      expect(glued.length).toBeGreaterThanOrEqual(1);
      expect(trimmed).toHaveLength(glued.length);
      for (const [at, trim] of trimmed.entries()) {
        expect(walls.some((wall) => wall > glued[at]! && wall < trim)).toBe(true);
        expect(steps[trim]!.caution).toBe("blade");
      }
    },
  );

  test.each(["construction=flanged base", "construction=on base; wall layers=2", "construction=around base"])(
    "end cards come after the flange card and all walls, before covering: %s",
    (text) => {
      const steps = orderOf("tray", `${text}; end cards=yes`);
      const end = place(steps, /end cards/);
      expect(steps[end]).toMatchObject({
        caution: "blade",
        text: expect.stringMatching(/trim flush when dry/) as string,
      });
      const before = steps.slice(0, end).map((each) => each.text);
      const after = steps.slice(end + 1).map((each) => each.text);
      expect(before.filter((each) => /walls|outer ring|flange card/.test(each)).length).toBeGreaterThanOrEqual(2);
      expect(
        after.filter((each) => /Glue the (?:inner |outer )?(?:side|head) walls|outer ring|flange card/.test(each)),
      ).toEqual([]);
      expect(after.some((each) => each.includes("wall strip"))).toBe(true);
    },
  );

  test("only the box of a lidded box has end cards", () => {
    const steps = orderOf("lidded box", "end cards=yes");
    expect(steps[place(steps, /end cards/)]!.text).toMatch(/^Box: /);
  });
});

describe("slipcase", () => {
  test.each(["construction=on base", "construction=around base", "construction=flanged base"])(
    "is lined before assembly: %s",
    (text) => {
      const steps = orderOf("slipcase", text);
      const lined = place(steps, /^Line the inside faces .* before assembly/);
      // The sides are laminated to their cards, if any, before the lining.
      expect(lined).toBe(text.includes("flanged") ? 3 : 2);
      expect(steps.slice(lined + 1).filter(({ text: each }) => /\blin(?:e|ing)\b/i.test(each))).toEqual([]);
      expect(place(steps, /to one side/)).toBeGreaterThan(lined);
    },
  );

  test("the book is tried before the second side closes it, the wrap comes after", () => {
    const steps = orderOf("slipcase");
    expect(place(steps, /Try the book before the second side/)).toBeLessThan(place(steps, /^Glue the wrap/));
  });

  test.each([
    ["through=side", /Glue the back wall to one side, then the head walls between them/],
    ["through=head", /Glue the head walls to one side, then the back wall between them/],
    ["through=side; construction=around base", /Glue the head walls to one side, then the back wall over their ends/],
    ["through=head; construction=around base", /Glue the back wall to one side, then the head walls over their ends/],
  ])("%s", (text, words) => expect(place(orderOf("slipcase", text), words)).toBe(3));
});

describe("trays made to one another", () => {
  test.each([
    ["lidded box", /^Box: Glue the wall strip/, /Measure the finished box before/, /^Lid: Glue the side walls first/],
    [
      "three-tray box",
      /^Inner: Glue the wall strip/,
      /Measure the finished inner tray before/,
      /^Bottom: Put its boards together in the same order as those of the inner tray/,
    ],
    [
      "clamshell box",
      /^Small: Glue the wall strip/,
      /Measure the finished small tray before/,
      /^Large: Put its boards together in the same order as those of the small tray/,
    ],
  ])("%s: the first is covered, then measured, before the next is made", (kind, covered, measured, next) => {
    const steps = orderOf(kind);
    expect(place(steps, covered)).toBeLessThan(place(steps, measured));
    expect(place(steps, measured)).toBeLessThan(place(steps, next));
  });

  test("a clamshell's case is cut to the finished large tray, and tried dry before it is glued", () => {
    const steps = orderOf("clamshell box");
    const cut = place(steps, /^Cut the case to the finished large tray/);
    expect(place(steps, /^Large: Glue the wall strip/)).toBeLessThan(cut);
    const closed = place(steps, /^Close the case over both trays, dry, and check that it shuts and opens. Then glue/);
    expect(closed).toBe(steps.length - 1);
    expect(steps[closed]!.caution).toBe("weight");
  });
});

describe("folded tray and wrapper", () => {
  test.each([
    ["", /Cut part-way through the blank at the folds/, true],
    ["fold=cut; joint strips=no", /Cut part-way through the blank at the folds/, false],
    ["fold=crease", /Crease the blank at the folds/, false],
    ["fold=crease; joint strips=yes", /Crease the blank at the folds/, true],
  ])("folded tray %s", (text, folds, strips) => {
    const steps = orderOf("folded tray", text);
    expect(place(steps, folds)).toBe(1);
    expect(steps.some((each) => each.text.includes("joint strip"))).toBe(strips);
    expect(steps.some((each) => each.text.includes("tabs of the head walls"))).toBe(text.includes("crease"));
  });

  test("a wrapper's inner flaps close before its outer ones", () => {
    expect(orderOf("four-flap wrapper").at(-1)!.text).toMatch(/inner flaps first.*then the outer flaps/);
  });
});

describe("covering", () => {
  test("strip style: strip, base panel, floor lining last", () => {
    const steps = orderOf("tray");
    const [strip, panel, lining] = [/Glue the wall strip/, /base panel/, /Glue the floor lining in last/].map((words) =>
      place(steps, words),
    );
    expect([strip, panel, lining]).toEqual([steps.length - 3, steps.length - 2, steps.length - 1]);
  });

  test("one piece: no strip, no panel", () => {
    const steps = orderOf("tray", "cover style=one piece");
    expect(steps.at(-2)!.text).toMatch(/one-piece blank/);
    expect(steps.some(({ text }) => /wall strip|base panel/.test(text))).toBe(false);
  });
});

describe("what is not to be done is not said", () => {
  test.each(KINDS.map(({ name }) => [name]))("covering=none; lining=none of a %s", (kind) => {
    const steps = orderOf(kind, "covering=none; lining=none");
    expect(
      steps.filter(({ text }) => /wall strip|base panel|floor lining|Line the inside|wrap round/.test(text)),
    ).toEqual([]);
  });

  test("flange card none of a slipcase", () => {
    expect(orderOf("slipcase", "construction=around base").some(({ text }) => text.includes("card"))).toBe(false);
  });
});
