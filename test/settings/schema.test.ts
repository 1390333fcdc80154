import { choicesText, NONE, words, type Choice } from "../../src/settings/choices";
import { examplesOf } from "./examplesOf";
import { SETTING_KEYS, SETTING_NAMES, settingKey } from "../../src/settings/given";
import { plainName } from "../../src/settings/names";
import { DEFINITIONS } from "../../src/settings/schema";
import { settingsOf } from "../../src/settings/settingsOf";
import { settingsTable } from "../../src/settings/settingsTable";

describe.each(SETTING_KEYS)("%s", (key) => {
  const definition = DEFINITIONS[key];

  test("has name, default, meaning, what it accepts, a unit where it is a measure, and a standing", () => {
    expect(definition.name).toMatch(/^[a-z]+([ -][a-z]+)*$/);
    for (const words of [definition.defaultText, definition.meaning, definition.accepts])
      expect(words).toMatch(/^\S(.*\S)?$/);
    expect(["common practice", "shop", "from memory"]).toContain(definition.standing);
    expect(definition.unit).toMatch(/^$|^length$|^mass$|^[A-Za-z%]+[23]?(\/[a-z]+[23]?)?( per %RH)?$/);
  });

  test("is found by its name in any writing", () => {
    const typed = definition.name.toUpperCase().replaceAll(" ", "  ").replaceAll("-", " ");
    expect(settingKey(` ${typed} `)).toBe(key);
  });

  test("what ends its refusal is what it accepts", () => {
    const refused = () => settingsOf([[[definition.name, "\u0000 no value of any setting"]]]);
    if (["estimateBy", "currency", "order", "material", "supplier", "quoteDate"].includes(key) || definition.retired)
      expect(refused).not.toThrow();
    else expect(refused).toThrow(`; give ${definition.accepts}`);
  });

  test("the examples in the words of what it accepts are accepted", () => {
    for (const example of examplesOf(definition.takes.choices))
      expect(() => settingsOf([`${definition.name}=${example}`])).not.toThrow();
  });
});

const length: Choice = { is: "measure", what: "a length", examples: ["2", "1/16 in"] };

test.each<[readonly Choice[], string]>([
  [words(["yes", "no"]), "yes or no"],
  [words(["mm", "cm", "in"]), "mm, cm or in"],
  [[length], "a length such as 2 or 1/16 in"],
  [[length, NONE], "a length such as 2 or 1/16 in, or none"],
  [[...words(["auto"]), length], "auto or a length such as 2 or 1/16 in"],
  [[...words(["auto", "full"]), length], "auto, full, or a length such as 2 or 1/16 in"],
  [[...words(["snug", "loose"]), length, NONE], "snug, loose, a length such as 2 or 1/16 in, or none"],
  [[{ ...length, aboveZero: true, examples: [] }], "a length above zero"],
  [[{ is: "measure", what: "a step", from: 0.01, unit: "mm" }], "a step from 0.01 mm"],
  [
    [{ is: "measure", what: "a caliper", from: 0.3, to: 10, unit: "mm", examples: ["2"] }],
    "a caliper from 0.3 to 10 mm, such as 2",
  ],
  [[{ is: "stock", materials: ["board", "card"] }, ...words(["auto"])], "a board or card of the stock table, or auto"],
  [[{ is: "stock", materials: undefined }, NONE], "a name of the stock table, or none"],
])("%j is said as %p", (choices, said) => {
  expect(choicesText(choices)).toBe(said);
});

test("names are unlike: no two settings read alike", () => {
  expect(new Set(SETTING_NAMES.map(plainName)).size).toBe(SETTING_NAMES.length);
});

test("every default in words reads as the default itself, where it is a value and not a rule", () => {
  const byDefault = settingsTable(settingsOf([]));
  for (const key of SETTING_KEYS) {
    const { name, defaultText, byRule } = DEFINITIONS[key];
    if (byRule) continue;
    const given = settingsTable(settingsOf([`${name}=${defaultText}`]));
    const valueIn = (table: typeof given) => table.find((row) => row[0] === name)?.[1];
    // A default of none that leaves the setting undefined is printed as a default.
    if (valueIn(byDefault) !== "default") expect([name, valueIn(given)]).toEqual([name, valueIn(byDefault)]);
  }
});

test("defaults are those of the design", () => {
  const settings = settingsOf([]);
  expect(settings).toMatchObject({
    surveyUnit: "mm",
    answerUnit: "mm",
    shopUnit: "mm",
    coveringAllowance: 1,
    restsOn: "back",
    lidConstruction: "on base",
    wallLayers: 1,
    endCards: false,
    fold: "cut",
    cardTrim: 10,
    turnIn: 15,
    insideTurn: "auto",
    coverStyle: "strip",
    lidDepth: "auto",
    lidReveal: 3,
    lidClearance: 1,
    neck: "auto",
    clamshellSpine: "hinged",
    nestClearance: 1,
    square: 3,
    joint: "auto",
    hingeLap: 25,
    flaps: undefined,
    flapRelief: 3,
    roundTo: 0.5,
    modulusAlong: 2,
    modulusAcross: 1,
    liftLimit: 23,
    edgeTrim: 5,
    pieceGap: 0,
    estimateBy: "material",
    contingency: 10,
    order: "HWD",
  });
  expect(settings.wallBoard).toMatchObject({ stock: "conservation board 2", caliper: 2 });
  expect(settings.flangeCard).toMatchObject({ stock: "folding card 0.4", caliper: 0.4 });
  expect(settingsOf(["unit=in"]).roundTo).toBe(25.4 / 32);
});

test("numbers without a source are labelled from memory", () => {
  const fromMemory = SETTING_KEYS.filter((key) => DEFINITIONS[key].standing === "from memory");
  expect(fromMemory).toEqual(expect.arrayContaining(["modulusAlong", "modulusAcross"]));
});
