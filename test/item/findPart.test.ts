import { partList } from "../../src/covering/partList";
import { kindNamed } from "../../src/enclosure/kindNamed";
import { KINDS } from "../../src/enclosure/registry";
import { InputError, NoAnswer } from "../../src/measure/errors";
import { settingsOf } from "../../src/settings/settingsOf";
import { findPart } from "../../src/item/findPart";
import { sizeRow, type Sized } from "../../src/item/sizeItem";
import { namesItsParts } from "../suites/namesItsParts";
import { EVERY_STRUCTURE } from "../enclosure/everyEnclosure";

const item = { height: 300, width: 210, depth: 40 };
const sized = (enclosure: string, text = ""): Sized => sizeRow({ ...item, enclosure }, settingsOf([text]))!;
const found = (wanted: string, of: Sized) => findPart(partList(of.assembly, of.settings), wanted, of, "part").fullName;

namesItsParts(EVERY_STRUCTURE);

describe("without its tray a part is that of the tray that holds the item, else of the only tray that has it", () => {
  test.each([
    ["lidded box", "", "base", "box base"],
    ["lidded box", "", "wall strip", "box wall strip"],
    ["three-tray box", "", "side wall", "inner side wall"],
    ["clamshell box", "", "fore-edge wall", "small fore-edge wall"],
    ["clamshell box", "", "case board", "case board"],
    ["clamshell box", "", "spine lining", "spine lining"],
    // The box stands on its base alone; the lid has the only card.
    ["lidded box", "construction=on base; lid construction=flanged base", "flange card", "lid flange card"],
    ["three-tray box", "construction=on base; lid construction=flanged base", "flange card", "lid flange card"],
  ])("%s, %s: %s is the %s", (enclosure, text, wanted, fullName) => {
    expect(found(wanted, sized(enclosure, text))).toBe(fullName);
  });
});

describe("the trade's other words", () => {
  test.each([
    ["tray", "tail wall", "head wall"],
    ["tray", "end wall", "head wall"],
    ["clamshell box", "foreedge wall", "small fore-edge wall"],
    ["clamshell box", "large front wall", "large fore-edge wall"],
    ["clamshell box", "Fore edge wall", "small fore-edge wall"],
  ])("%s: %s is the %s", (enclosure, wanted, fullName) => {
    expect(found(wanted, sized(enclosure))).toBe(fullName);
  });
});

describe("inner side wall", () => {
  test("is a ring of a double-walled tray", () => {
    expect(found("inner side wall", sized("tray", "wall layers=2"))).toBe("inner side wall");
    expect(found("inner side wall", sized("lidded box", "wall layers=2"))).toBe("box inner side wall");
  });

  test("is the inner tray's side wall in a three-tray box", () => {
    expect(found("inner side wall", sized("three-tray box"))).toBe("inner side wall");
    expect(
      findPart(
        partList(sized("three-tray box").assembly, settingsOf([])),
        "inner side wall",
        sized("three-tray box"),
        "part",
      ).tray,
    ).toBe("inner");
  });

  test("is no part of a tray of one layer: #N/A, not a misspelling", () => {
    expect(() => found("inner side wall", sized("tray"))).toThrow(NoAnswer);
  });
});

test("a name that fits two parts is refused with both; a lone fit of several trays too", () => {
  expect(() => found("side wall", sized("tray", "wall layers=2"))).toThrow(
    new InputError("part", '"side wall"', "give inner side wall or outer side wall"),
  );
  const bare = sized("three-tray box", "lining=none");
  const outer = partList(bare.assembly, bare.settings).filter((part) => part.tray !== "inner");
  expect(() => findPart(outer, "base", bare, "part")).toThrow(
    new InputError("part", '"base"', "give bottom base or lid base"),
  );
});

test("a part of some kind is never a misspelling, whatever the kind at hand", () => {
  for (const { name } of KINDS)
    for (const part of KINDS.flatMap((kind) => kind.parts))
      try {
        found(part, sized(name));
      } catch (error) {
        // Found, lacking, or two of them: never unknown.
        if (!(error instanceof NoAnswer)) expect((error as InputError).expected).toMatch(/^give .* or /);
      }
  expect(kindNamed("tray").name).toBe("tray");
});
