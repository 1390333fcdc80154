import { stepsOf } from "../../src/covering/stepsOf";
import { partList } from "../../src/covering/partList";
import { enclosureMass } from "../../src/board/mass";
import { sizeRow } from "../../src/item/sizeItem";
import { settingsOf } from "../../src/settings/settingsOf";

const ROW = { height: 300, width: 210, depth: 40, weight: 1 };
const STOCK = [
  ["stock", "material", "caliper", "sheet length", "sheet width", "mass"],
  ["board 2", "board", 2, 1000, 700, 1290],
  ["card", "card", 0.4, 1000, 700, 300],
  ["cloth", "covering", 0.3, "", 1000, 240],
  ["paper", "lining", 0.15, 1000, 700, 120],
  ["foam 10", "cushion", 10, 2000, 1000, 350],
];

function sized(enclosure: string, text: string, depth = ROW.depth) {
  return sizeRow({ ...ROW, depth, enclosure }, settingsOf([STOCK, text]))!;
}

function pieces({ assembly, settings }: ReturnType<typeof sized>) {
  return partList(assembly, settings)
    .filter(({ name }) => /cushion|well|ribbon/.test(name))
    .map(({ name, count, length, width, caliper }) => [name, count, length, width, caliper]);
}

test("a well, by hand: 10 mm under, round and over 300 x 210 x 40, in layers of 10 mm", () => {
  // Inside 300 + 20 + 1 + 2 by 210 + 20 + 1 + 2; less the coverings and 1: 321 x 231. 40 + 2 of play: 4 layers.
  const row = sized("tray", "well=yes");
  expect(pieces(row)).toEqual([
    ["cushion base", 1, 321, 231, 10],
    ["well layer", 4, 321, 231, 10],
    ["cushion top", 1, 321, 231, 10],
  ]);
  const layer = partList(row.assembly, row.settings).find(({ name }) => name === "well layer")!;
  // The item and its play: 300 + 2 by 210 + 2.
  expect(layer.recess).toEqual({ length: 302, width: 212 });
  expect(layer.note).toBe("cut out the recess in the middle, 302 x 212");
});

test("the item stands out of the last layer, never the layer over the item; a thin item has one thin layer", () => {
  expect(pieces(sized("tray", "well=yes", 47))[1]).toEqual(["well layer", 4, 321, 231, 10]);
  expect(pieces(sized("tray", "well=yes", 48))[1]).toEqual(["well layer", 5, 321, 231, 10]);
  expect(pieces(sized("tray", "well=yes; fit=none", 6))[1]).toEqual(["well layer", 1, 319, 229, 6]);
});

test("what is cut out weighs nothing", () => {
  const { assembly, settings } = sized("tray", "well=yes");
  const layers = partList(assembly, settings).filter(({ name }) => name === "well layer");
  // 4 x (0.321 x 0.231 - 0.302 x 0.212) m2 of 350 g/m2.
  expect(enclosureMass(layers, settings)).toBeCloseTo(4 * (0.321 * 0.231 - 0.302 * 0.212) * 0.35, 9);
});

test("cushioning that is given stays; without sides there is nothing to cut a recess in", () => {
  expect(pieces(sized("lidded box", "well=yes; cushion base=5; cushion top=none")).map(([name]) => name)).toEqual([
    "cushion base",
    "well layer",
  ]);
  expect(pieces(sized("tray", "well=yes; cushion sides=0 mm")).map(([name]) => name)).toEqual([
    "cushion base",
    "cushion top",
  ]);
});

test("a lifting ribbon goes under the item and up both sides: 212 + 2 x (42 + 30)", () => {
  // 210 + 2 wide, 40 + 2 deep.
  expect(pieces(sized("tray", "lifting ribbon=yes"))).toEqual([["lifting ribbon", 1, 356, 20, 0.3]]);
});

test("both have their step, the recess with the caution for blades", () => {
  const { assembly, settings } = sized("clamshell box", "well=yes; lifting ribbon=yes");
  const steps = stepsOf(assembly, settings).filter(({ parts }) => parts.some((part) => /well|ribbon/.test(part)));
  expect(steps.map(({ parts, caution }) => [parts, caution])).toEqual([
    [["small well layer"], "blade"],
    [["small lifting ribbon"], undefined],
  ]);
});

test("a kind without a floor between walls has no well: refused in its own row, left alone in shared settings", () => {
  expect(() => sized("slipcase", "well=yes")).toThrow("well: got a value for a slipcase, which has no use for it");
  const shared = [
    ["setting", "value"],
    ["well", "yes"],
  ];
  const row = sizeRow({ ...ROW, enclosure: "slipcase" }, settingsOf([STOCK, shared]))!;
  expect(pieces(row)).toEqual([]);
});
