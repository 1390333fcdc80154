import fc from "fast-check";
import { KINDS } from "../../src/enclosure/registry";
import { sizeRow } from "../../src/item/sizeItem";
import { settingsOf } from "../../src/settings/settingsOf";
import { examplesOf } from "./examplesOf";
import { DEFINITIONS, type Settings } from "../../src/settings/schema";
import { settingsTable } from "../../src/settings/settingsTable";

const valueOf = (settings: Settings, setting: string) => settingsTable(settings).find((row) => row[0] === setting)?.[1];

describe("values are written exactly, in the shop unit", () => {
  test.each([
    ["turn-in=18", "18 mm"],
    ["turn-in=18; shop unit=cm", "18 cm"],
    ["turn-in=18 mm; shop unit=cm", "1.8 cm"],
    ["turn-in=5/8; shop unit=in", "5/8 in"],
    ["turn-in=0.6; shop unit=in", "0.6 in"],
    ["turn-in=15 mm; shop unit=in", "15 mm"],
    ["turn-in=1 1/64 in; shop unit=in", "1 1/64 in"],
    ["turn-in=1/7 in; shop unit=in", "1/7 in"],
  ])("%s: %s", (text, written) => {
    if (written === "1/7 in")
      expect(settingsOf([`turn-in=${valueOf(settingsOf([text]), "turn-in")}`]).turnIn).toBeCloseTo(25.4 / 7, 7);
    else expect(valueOf(settingsOf([text]), "turn-in")).toBe(written);
  });

  test.each([
    ["cushion base=0", "cushion base", "none"],
    ["end cards=true", "end cards", "yes"],
    ["flaps=1 / 0.3", "flaps", "1 / 0.3"],
    ["wall board=conservation board 3", "wall board", "conservation board 3"],
    ["wall board=2.2", "wall board", "2.2 mm"],
    ["wall board=auto", "wall board", "auto"],
    ["weight=850 g", "weight", "0.85 kg"],
    ["weight=2; unit=in", "weight", "2 lb"],
    ["contingency=none", "contingency", "none"],
    ["covering=none", "covering", "none"],
    ["wall layers=2", "wall layers", 2],
    ["", "fit", "default"],
    ["", "wall board", "default"],
  ])("%s: %s is %p", (text, setting, written) => {
    expect(valueOf(settingsOf([text]), setting)).toBe(written);
  });
});

describe("the settings table given back changes no answer", () => {
  test.each(KINDS.map((kind) => [kind.name, kind] as const))("of a %s", (enclosure, { options }) => {
    const row = { height: 300, width: 210, depth: 40, enclosure };
    const given = settingsTable(settingsOf([]));
    // A survey's column may ask for a well beside a sheet that lists every setting.
    for (const own of ["fit=2", ...(options.includes("well") ? ["well=yes"] : [])])
      expect(sizeRow(row, settingsOf([given, own]))!.assembly).toEqual(sizeRow(row, settingsOf([own]))!.assembly);
  });

  test("of a survey, which still asks the guide", () => {
    expect(settingsOf([settingsTable(settingsOf([]))], { starterGuide: true }).wallBoard).toBe("auto");
  });
});

const length = fc.oneof(
  fc.integer({ min: 1, max: 400 }).map((tenths) => String(tenths / 10)),
  fc.integer({ min: 1, max: 200 }).map((parts) => `${Math.floor(parts / 64)} ${parts % 64 || 1}/64 in`),
  fc.double({ min: 0.3, max: 40, noNaN: true }).map((mm) => `${mm.toFixed(7)} mm`),
);
const zeroToo = fc.oneof(length, fc.constantFrom("none", "0 mm"));
const board = fc.constantFrom(
  "2 mm",
  "2.2 mm",
  "80 pt",
  "conservation board 3",
  "Folding card 0.4",
  "1/8 in",
  "0.508 mm",
);
const percent = fc.integer({ min: 0, max: 400 }).map((tenths) => (tenths === 0 ? "none" : String(tenths / 10)));

const VALUES: Readonly<Record<string, fc.Arbitrary<string>>> = {
  unit: fc.constantFrom("mm", "cm", "in"),
  "answer unit": fc.constantFrom("mm", "cm", "in"),
  "shop unit": fc.constantFrom("mm", "cm"),
  fit: fc.oneof(zeroToo, fc.constantFrom("snug", "standard", "loose")),
  "fit height": fc.oneof(zeroToo, fc.constantFrom("snug", "loose")),
  "fit width": zeroToo,
  "fit depth": zeroToo,
  "covering allowance": fc.oneof(zeroToo, fc.constant("auto")),
  "cushion base": zeroToo,
  "cushion sides": zeroToo,
  "rests on": fc.constantFrom("back", "foot", "edge"),
  construction: fc.constantFrom("around base", "on base", "flanged base"),
  "lid construction": fc.constantFrom("around base", "flanged base"),
  through: fc.constantFrom("side", "head"),
  "wall layers": fc.constantFrom("1", "2"),
  "end cards": fc.constantFrom("yes", "no", "TRUE"),
  fold: fc.constantFrom("cut", "crease"),
  "clamshell spine": fc.constantFrom("hinged", "creased"),
  "joint strips": fc.constantFrom("yes", "no", "lining paper"),
  "base board": fc.constantFrom("auto", "2.5 mm", "conservation board 1.5"),
  covering: fc.constantFrom("none", "book cloth"),
  lining: fc.constantFrom("none", "Lining paper"),
  "turn-in": fc.oneof(length, fc.constant("auto")),
  "inside turn": fc.oneof(length, fc.constantFrom("auto", "full")),
  "cover style": fc.constantFrom("strip", "one piece"),
  "lid depth": fc.oneof(length, fc.constantFrom("auto", "full")),
  "lid reveal": zeroToo,
  neck: fc.oneof(length, fc.constant("auto")),
  joint: fc.oneof(length, fc.constant("auto")),
  "hinge lap": length,
  flaps: fc.constantFrom("1 / 0.5", "0.25/1", "0,5 / 0,5"),
  "round to": zeroToo,
  weight: fc.constantFrom("850 g", "2 lb", "2 lb 3 oz", "1.25"),
  "item density": fc.constantFrom("none", "700"),
  "modulus along": fc.constantFrom("2.5", "3"),
  "lift limit": fc.constantFrom("20", "35 lb"),
  "piece gap": zeroToo,
  "estimate by": fc.constantFrom("kind", "Batch"),
  contingency: percent,
  currency: fc.constantFrom("EUR", "£"),
  order: fc.constantFrom("LWD", "WHD"),
  "text unit": fc.constantFrom("mm", "cm", "m", "in", "ft"),
};

const BOARDS = ["wall board", "case board", "flange card", "wrapper card"].map(
  (name): [string, fc.Arbitrary<string>] => [name, board],
);

/** Settings that are not in the list above, by the examples that their messages give. */
const OTHERS = Object.values(DEFINITIONS)
  .map(({ name, takes }) => ({ name, examples: examplesOf(takes.choices) }))
  .filter(({ name, examples }) => VALUES[name] === undefined && examples.length > 0)
  .map(({ name, examples }): [string, fc.Arbitrary<string>] => [name, fc.constantFrom(...examples)]);

/** `fit=loose; turn-in=0.55; ...`, of any settings. */
const anySettingsText: fc.Arbitrary<string> = fc
  .record<Record<string, string>>(Object.fromEntries([...OTHERS, ...BOARDS, ...Object.entries(VALUES)]), {
    noNullPrototype: true,
    requiredKeys: [],
  })
  .map((given) =>
    Object.entries(given)
      .map(([name, value]) => `${name}=${value}`)
      .join("; "),
  );

/** What was read, apart from where it came from. */
const valuesIn = (settings: Settings): unknown =>
  Object.fromEntries(Object.entries(settings).filter(([key]) => !["origins", "ownOfRow", "stock"].includes(key)));

/** Nothing is cut to a ten-millionth of a millimetre, nor weighed so. */
const NOISE = 1e-7;

const expectSame = (one: unknown, other: unknown): void => {
  if (typeof one === "number" && typeof other === "number") expect(Math.abs(one - other)).toBeLessThan(NOISE);
  else if (typeof one === "object" && one !== null) {
    expect(Object.keys(other as object)).toEqual(Object.keys(one));
    for (const [key, value] of Object.entries(one)) expectSame(value, (other as Record<string, unknown>)[key]);
  } else expect(other).toBe(one);
};

describe("the table given back as a settings range reads as the same settings", () => {
  test.each(["mm", "in"])("in a workbook and shop in %s, for any settings", (unit) => {
    fc.assert(
      fc.property(anySettingsText, (text) => {
        const settings = settingsOf([`${text}; unit=${unit}; shop unit=${unit}`], { starterGuide: true });
        expectSame(valuesIn(settings), valuesIn(settingsOf([settingsTable(settings)], { starterGuide: true })));
      }),
    );
  });

  test("in any mixture of units, its first two columns alone", () => {
    fc.assert(
      fc.property(anySettingsText, (text) => {
        const settings = settingsOf([text]);
        const again = settingsOf([settingsTable(settings).map((row) => row.slice(0, 2))]);
        expectSame(valuesIn(settings), valuesIn(again));
      }),
    );
  });

  test("and printed again it is the same table, but for where the values came from", () => {
    fc.assert(
      fc.property(anySettingsText, (text) => {
        const table = settingsTable(settingsOf([text]));
        const again = settingsTable(settingsOf([table]));
        expect(again.map((row) => row[1])).toEqual(table.map((row) => row[1]));
      }),
    );
  });
});
