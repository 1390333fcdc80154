import fc from "fast-check";
import { isBlankRow } from "../../src/item/itemsOfRow";
import { problemOf, sizeRow, type Row } from "../../src/item/sizeItem";
import { settingsOf } from "../../src/settings/settingsOf";
import { hwd } from "../enclosure/sizing";

const insideOf = (row: Row, text = "") => {
  const { inside } = sizeRow(row, settingsOf([text]))!.assembly.holder;
  return hwd([inside.max[0] - inside.min[0], inside.max[1] - inside.min[1], inside.max[2] - inside.min[2]]);
};
const row = (height: unknown, width: unknown, depth: unknown, weight?: unknown): Row => ({
  height,
  width,
  depth,
  enclosure: "tray",
  ...(weight === undefined ? {} : { weight }),
});

test("measures of several items in one cell are of items that share the box, by hand", () => {
  const three = row("300 | 31 cm * 2", "210 | 200", "40 | 15 |", "0.9 | 300 g");
  // One on another: 310 x 210 x 40 + 2 x 15, play of 2 and of 1.5, coverings of 1.
  expect(insideOf(three)).toEqual([313, 213, 72.5]);
  // 310 + 310 high, 210 + 200 wide; two of play and one divider of 3 more.
  expect(insideOf(three, "arrangement=rows of 2; wall board=2")).toEqual([628, 418, 42.5]);
  expect(sizeRow(three, settingsOf([]))!.weightKg).toBeCloseTo(0.9 + 2 * 0.3, 12);
  expect(sizeRow(row("300|310", "210|200", "40|15", "900 g||"), settingsOf([]))!.weightKg).toBeUndefined();
  // Without a bar it is the weight of all together.
  expect(sizeRow(row("300|310", "210|200", "40|15", "900 g"), settingsOf([]))!.weightKg).toBe(0.9);
});

test.each([
  [row("300 | 310", "210", "40 | 15"), "width: got 1 measure; the height has 2 measures; give each as many"],
  [
    row("300 | 310 | 290", "210 | 200", "40|40|40"),
    "width: got 2 measures; the height has 3 measures; give each as many",
  ],
  [
    row("300 * two | 310", "210|200", "40|15"),
    'quantity: got "two"; give a whole number of 1 or more, or leave it blank for 1',
  ],
  [row("300 | 4O", "210 | 200", "40|15"), 'item 2, height: got "4O"; give a length such as 40, 40 mm or 1 9/16 in'],
])("%j: %s", (bad, message) => {
  expect(problemOf(bad, settingsOf(["wall board=2"]))).toBe(message);
});

test("blank cells that are joined are a blank row", () => {
  expect(isBlankRow(row("*|*2|", "||", "0| 0 |"))).toBe(true);
  expect(isBlankRow(row("*|5|", "||", "||"))).toBe(false);
});

test("copies of an item are as many items of its own", () => {
  const size = fc.integer({ min: 20, max: 400 });
  fc.assert(
    fc.property(
      size,
      size,
      size,
      fc.integer({ min: 1, max: 5 }),
      fc.integer({ min: 1, max: 4 }),
      (h, w, d, copies, of) => {
        const times = (value: number) => Array.from({ length: copies }, () => value).join("|");
        const text = `arrangement=rows of ${of}; wall board=2`;
        const counted = insideOf(row(`${h}*${copies}|50`, `${w}|60`, `${d}|10`), text);
        expect(counted).toEqual(insideOf(row(`${times(h)}|50`, `${times(w)}|60`, `${times(d)}|10`), text));
      },
    ),
    { numRuns: 40, seed: 3 },
  );
});
