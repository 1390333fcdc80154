import { partList } from "../../src/covering/partList";
import { stepsOf } from "../../src/covering/stepsOf";
import { estimateOf } from "../../src/estimate/estimate";
import { stockPlans } from "../../src/estimate/stockPlans";
import { sizeRow } from "../../src/item/sizeItem";
import { KINDS } from "../../src/enclosure/registry";
import { CLOSURES } from "../../src/settings/stock";
import { settingsOf } from "../../src/settings/settingsOf";

const ROW = { height: 300, width: 210, depth: 40, weight: 1 };
const STOCK = [
  ["stock", "material", "caliper", "sheet length", "sheet width", "price", "pack"],
  ["board 2", "board", 2, 1000, 700, 5, 1],
  ["card", "card", 0.5, 1000, 700, 2, 1],
  ["cloth", "covering", 0.3, "", 1000, 10, 1],
  ["paper", "lining", 0.15, 1000, 700, 1, 1],
  ["linen tie tape", "closure", 0.5, "", 12, 0.5, 5],
  ["bone clasp", "closure", "", "", "", 3, 1],
];
const SHOP = [
  ["setting", "value"],
  ["wall board", "board 2"],
  ["wrapper card", "card"],
];
const settings = (text: string) => settingsOf([STOCK, SHOP, text]);

function closureOf(enclosure: string, text: string) {
  const { assembly, settings: inForce } = sizeRow({ ...ROW, enclosure }, settings(text))!;
  const part = partList(assembly, inForce).find(({ material }) => material === "closure");
  return part && [part.name, part.stock, part.count, part.length, part.width];
}

test.each([
  // 300 high: two places at the fore-edge, one each at head and tail (221 wide at most): 4 pairs.
  ["flap portfolio", "", ["tie", "linen tie tape", 8, 250, 12]],
  ["folded clamshell", "", ["tie", "linen tie tape", 4, 250, 12]],
  // Of card 0.5 outside 211 + 1 wide, 41 + 6 x 0.5 deep: 2 x (212 + 44) + 400 for the bow, two places.
  ["four-flap wrapper", "flap relief=none", ["tie", "linen tie tape", 2, 912, 12]],
  ["four-flap wrapper", "closure=none", undefined],
  ["lidded box", "", undefined],
  // Outside depth of the case 57 and two laps of 40; no stock has the word.
  ["clamshell box", "closure=tongue", ["tongue", "closure, not in stock", 2, 136, 15]],
  ["clamshell box", "closure=clasp", ["clasp", "bone clasp", 2, 136, 15]],
])("%s, %s: what holds it shut, by hand", (enclosure, text, expected) => {
  expect(closureOf(enclosure, text)).toEqual(expected);
});

test.each(CLOSURES)("%s has its step, before what covers its ends, in every kind that opens", (closure) => {
  for (const { name, closes } of KINDS) {
    if (closes === undefined) {
      expect(() => closureOf(name, `closure=${closure}`)).toThrow("which has no use for it");
      continue;
    }
    const { assembly, settings: inForce } = sizeRow({ ...ROW, enclosure: name }, settings(`closure=${closure}`))!;
    const steps = stepsOf(assembly, inForce);
    const [piece] = closureOf(name, `closure=${closure}`)!;
    const at = steps.findIndex(({ parts }) => parts.includes(piece as string));
    expect(at).toBeGreaterThan(0);
    const lined = steps.findIndex(({ parts }) => parts.includes("board lining"));
    if (lined > 0) expect(at).toBeLessThan(lined);
  }
});

test("the places of ties are said: a quarter and three quarters of the outside, before the bases of a wrapper are glued", () => {
  const stepsFor = (enclosure: string, text: string) => {
    const { assembly, settings: inForce } = sizeRow({ ...ROW, enclosure }, settings(text))!;
    return stepsOf(assembly, inForce);
  };
  // Outside 302 of the book's 300: its fit of 1, and a card at head and at tail.
  const wrapper = stepsFor("four-flap wrapper", "wrapper card=0.5");
  const at = wrapper.findIndex(({ parts }) => parts.includes("tie"));
  expect(wrapper[at]!.text).toMatch(/two slits .* Places: 75\.5 and 226\.5 mm from the head\.$/);
  expect(wrapper.findIndex(({ parts }) => parts.includes("inner piece"))).toBeGreaterThan(at);
  const portfolio = stepsFor("flap portfolio", "").find(({ parts }) => parts.includes("tie"));
  expect(portfolio!.text).toMatch(/ from the head; at head and tail, .* from the spine\.$/);
});

const PLAIN = { batch: "", relativeSize: 1, turn: 0 };

test("tape is bought by the metre, in its packs; clasps by number; both are in the money", () => {
  const lines = (enclosure: string, text: string, quantity: number) => {
    const { assembly, settings: inForce } = sizeRow({ ...ROW, enclosure }, settings(text))!;
    const demands = [{ item: "A", row: 2, enclosure, quantity, parts: partList(assembly, inForce), ...PLAIN }];
    return estimateOf([{ group: "", demands, plans: stockPlans(demands, inForce) }], inForce)
      .lines.filter(({ material }) => material === "closure")
      .map(({ stock, quantity: bought, unit, cost, notInCost }) => [stock, bought, unit, cost, notInCost]);
  };
  // 8 x 0.25 m a portfolio, three of them: 6 m, sold in fives.
  expect(lines("flap portfolio", "edge trim=5 mm", 3)).toEqual([["linen tie tape", 10, "m", 5, undefined]]);
  expect(lines("clamshell box", "closure=clasp", 3)).toEqual([["bone clasp", 6, "pieces", 18, undefined]]);
});
