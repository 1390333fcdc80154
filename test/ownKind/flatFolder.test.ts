import { sizedRow } from "../../src/item/figure";
import { figureNamed } from "../../src/item/figureCatalogue";
import { sizeRow } from "../../src/item/sizeItem";
import { settingsOf } from "../../src/settings/settingsOf";
import { kindNamed } from "../../src/enclosure/kindNamed";
import { KINDS } from "../../src/enclosure/registry";
import { structuresOf } from "../enclosure/everyEnclosure";
import { benchInstructionsLead } from "../suites/benchInstructionsLead";
import { coversItsFaces } from "../suites/coversItsFaces";
import { drawsEveryPart } from "../suites/drawsEveryPart";
import { fitsOverTheYear } from "../suites/fitsOverTheYear";
import { holdsTogether } from "../suites/holdsTogether";
import { namesItsParts } from "../suites/namesItsParts";
import { saysTheOrder } from "../suites/saysTheOrder";
import type { flatFolder } from "./flatFolder";

// The one line that a new kind needs in the registry.
jest.mock("../../src/enclosure/registry", () => {
  const { KINDS: own } = jest.requireActual<{ KINDS: readonly unknown[] }>("../../src/enclosure/registry");
  const { flatFolder: added } = jest.requireActual<{ flatFolder: typeof flatFolder }>("./flatFolder");
  return { KINDS: [...own, added] };
});

const kind = kindNamed("two-board folder");
const structures = structuresOf([kind]);

test("is one of the kinds, and a row of it is sized like any other", () => {
  expect(KINDS.map(({ name }) => name)).toContain("flat folder");
  const row = sizeRow({ height: 300, width: 210, depth: 40, enclosure: "flat folder", weight: 1 }, settingsOf([]))!;
  // Snug: 301 x 211; depth 40 + 1 of covering + 1.
  expect(row.assembly.parts.map(({ name, length, width }) => [name, length, width])).toEqual([
    ["folder board", 301, 211],
    ["folder spine", 301, 42],
  ]);
  const figures = sizedRow(row, 1);
  const numbers = ["outside height", "outside width", "outside depth", "mass"].map((name) =>
    figureNamed(name).of(figures),
  );
  for (const number of numbers) expect(number).toBeGreaterThan(0);
});

describe("holds together", () => holdsTogether(structures));
describe("bench instructions", () => benchInstructionsLead(structures));
describe("covering", () => coversItsFaces(structures));
describe("fit over the year", () => fitsOverTheYear(structures));
describe("drawings", () => drawsEveryPart(structures));
describe("order of work", () => saysTheOrder(structures));
describe("names", () => namesItsParts(structures));
