import { fitted, textWidth, wrapped } from "../../src/drawing/lettering";
import { labelPlaces } from "../../src/drawing/labelPlaces";
import { spreadOut } from "../../src/drawing/spreadOut";
import { stairs } from "../../src/drawing/stairs";
import { thickened } from "../../src/drawing/thickened";
import { cuboid } from "../../src/enclosure/space";

test("a text is shortened to its room, never through a letter of two halves", () => {
  expect(fitted("side wall", 100, 10)).toBe("side wall");
  expect(fitted("  side \n wall ", 100, 10)).toBe("side wall");
  expect(fitted("📚📚📚", 30, 10)).toBe("📚📚…");
  for (const text of ["outer side wall", "x".repeat(1000), "📚".repeat(50)])
    for (const width of [20, 45, 130]) expect(textWidth(fitted(text, width, 9), 9)).toBeLessThanOrEqual(width);
});

test("a note is broken between words", () => {
  expect(wrapped("turn in at the mouth", 66, 11)).toEqual(["turn in at", "the mouth"]);
  expect(wrapped("", 66, 11)).toEqual([]);
});

test("boxes that want the same place share it evenly, within bounds", () => {
  const at = (wanted: number) => ({ wanted, size: 10 });
  expect(spreadOut([at(50), at(50)], 0, 100)).toEqual([45, 55]);
  expect(spreadOut([at(0), at(0), at(80)], 0, 100)).toEqual([5, 15, 80]);
  expect(spreadOut([at(99), at(99)], 0, 100)).toEqual([85, 95]);
});

test("texts too wide for their stretches come down like stairs from the right", () => {
  const steps = stairs([0, 10, 20, 30], [40, 40, 40], 2);
  expect(steps.map(({ row }) => row)).toEqual([2, 1, 0]);
  expect(steps.map(({ leader }) => leader)).toEqual([5, 15, 25]);
  expect(stairs([0, 100], [40], 2)).toEqual([{ start: 30, width: 40, row: 0, leader: undefined }]);
});

test("labels change sides or places until no leader crosses another", () => {
  const room = { left: 0, right: 100, top: 0, bottom: 100, step: 20 };
  const places = labelPlaces(
    [
      [10, 90],
      [90, 10],
    ],
    room,
  );
  expect(places.map(({ side }) => side)).toEqual(["left", "right"]);
});

test("what is thin is drawn thicker, card still thinner than board, and nothing moves past anything", () => {
  const [board, card, box] = thickened(
    [cuboid(0, 100, 0, 100, 0, 2), cuboid(0, 100, 0, 100, -0.5, 0), cuboid(0, 100, 0, 100, 2, 42)],
    8,
  );
  // Geometric means: sqrt(2 x 8) = 4, sqrt(0.5 x 8) = 2.
  expect([card!.max[2] - card!.min[2], board!.max[2] - board!.min[2], box!.max[2] - box!.min[2]]).toEqual([2, 4, 40]);
  expect(card!.max[2]).toBe(board!.min[2]);
  expect(board!.max[2]).toBe(box!.min[2]);
  expect(board!.max[0]).toBe(100);
});
