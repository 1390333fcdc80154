import { SETTING_KEYS, SETTING_NAMES, settingKey } from "../../src/settings/given";
import { plainName } from "../../src/settings/names";
import { DEFINITIONS } from "../../src/settings/schema";
import { settingsOf } from "../../src/settings/settingsOf";
import { settingsTable } from "../../src/settings/settingsTable";
import { examplesIn } from "./examplesIn";

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
    if (key === "estimateBy" || key === "currency" || key === "order") expect(refused).not.toThrow();
    else expect(refused).toThrow(`; give ${definition.accepts}`);
  });

  test("the examples in the words of what it accepts are accepted", () => {
    for (const example of examplesIn(definition.accepts))
      expect(() => settingsOf([`${definition.name}=${example}`])).not.toThrow();
  });
});

test("names are unlike: no two settings read alike", () => {
  expect(new Set(SETTING_NAMES.map(plainName)).size).toBe(SETTING_NAMES.length);
});

test("every default in words reads as the default itself, where it is a value and not a rule", () => {
  const byRule = /^(by kind|as |the |not given|auto:|yes; no|-$)|\(/;
  const byDefault = settingsTable(settingsOf([]));
  for (const key of SETTING_KEYS) {
    const { name, defaultText } = DEFINITIONS[key];
    if (byRule.test(defaultText)) continue;
    const given = settingsTable(settingsOf([`${name}=${defaultText}`]));
    const valueIn = (table: typeof given) => table.find((row) => row[0] === name)?.[1];
    // A default of none that leaves the setting undefined is printed as a default.
    if (valueIn(byDefault) !== "default") expect([name, valueIn(given)]).toEqual([name, valueIn(byDefault)]);
  }
});

test("defaults are those of the design", () => {
  const settings = settingsOf([]);
  expect(settings).toMatchObject({
    unit: "mm",
    shopUnit: "mm",
    coveringAllowance: 1,
    restsOn: "back",
    lidConstruction: "on base",
    wallLayers: 1,
    endCards: false,
    fold: "cut",
    cardTrim: 10,
    turnIn: 15,
    insideTurn: "full",
    coverStyle: "strip",
    lidDepth: "full",
    lidReveal: 3,
    lidClearance: 1,
    neck: "auto",
    nestClearance: 1,
    square: 3,
    joint: "auto",
    hingeLap: 25,
    flaps: [1, 0.5],
    roundTo: 0.5,
    modulusAlong: 2,
    modulusAcross: 1,
    creep: 2,
    sagRatio: 150,
    sagLimit: 2,
    liftLimit: 23,
    edgeTrim: 5,
    pieceGap: 0,
    estimateBy: "material",
    contingency: 10,
    order: "HWD",
  });
  expect(settings.wallBoard).toMatchObject({ stock: "grey board 2", caliper: 2 });
  expect(settings.flangeCard).toMatchObject({ stock: "folding card 0.4", caliper: 0.4 });
  expect(settingsOf(["unit=in"]).roundTo).toBe(25.4 / 32);
});

test("numbers without a source are labelled from memory", () => {
  const fromMemory = SETTING_KEYS.filter((key) => DEFINITIONS[key].standing === "from memory");
  expect(fromMemory).toEqual(expect.arrayContaining(["modulusAlong", "modulusAcross", "creep"]));
});
