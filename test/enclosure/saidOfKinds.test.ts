import { KIND_PURPOSES } from "../../src/application/kindPurposes";
import type { Kind } from "../../src/enclosure/kind";
import { KINDS } from "../../src/enclosure/registry";
import { DEFINITIONS } from "../../src/settings/schema";
import { STARTER_HOURS } from "../../src/settings/starterHours";

// What is said of each kind outside its own file, since the cell functions and the settings must not carry it there.

const NAMES = KINDS.map(({ name }) => name);

test("every kind has a line of purpose and starter hours, and no other name has", () => {
  expect([...KIND_PURPOSES.keys()].sort()).toEqual([...NAMES].sort());
  expect(STARTER_HOURS.map(([name]) => name).sort()).toEqual([...NAMES].sort());
});

/** Whether a default in words names a kind, by its name or the last word of it: `wrapper`. */
function names(text: string, { name }: Kind): boolean {
  const longer = NAMES.filter((other) => other !== name && /[ -]/.test(other));
  const own = longer.reduce((words, other) => words.replaceAll(other, ""), text);
  return new RegExp(`\\b${name.split(" ").at(-1)!}s?\\b`).test(own);
}

test("the defaults in words name the kinds that have them, and no other", () => {
  const { closure, orientation, restsOn } = DEFINITIONS;
  for (const kind of KINDS) {
    const byDefault = kind.closes?.byDefault ?? "none";
    const said = [
      [closure.name, names(closure.defaultText, kind)],
      [orientation.name, names(orientation.defaultText, kind)],
      [restsOn.name, names(restsOn.defaultText, kind)],
    ];
    expect([kind.name, said]).toEqual([
      kind.name,
      [
        [closure.name, byDefault !== "none"],
        [orientation.name, kind.keptFlat === true],
        [restsOn.name, kind.restsOn !== undefined],
      ],
    ]);
  }
});
