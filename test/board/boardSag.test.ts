import { boardSag } from "../../src/board/boardSag";
import { plateSag } from "../../src/board/plateSag";
import { springing } from "../../src/board/springing";
import { settingsOf } from "../../src/settings/settingsOf";

const settings = settingsOf(["modulus along=2; modulus across=1"]);
const board = { listed: undefined, caliper: 2 };
const plate = { spanX: 200, spanY: 300, freeEdge: "none", grain: "y", gluedTo: 0 } as const;

test("the grain lies as the plate says, and a board of its own stiffness keeps it", () => {
  const across = plateSag({ ...plate, loadKg: 1, caliper: 2, modulusX: 1, modulusY: 2 });
  expect(boardSag(board, plate, 1, settings)).toBe(across);
  const along = plateSag({ ...plate, loadKg: 1, caliper: 2, modulusX: 2, modulusY: 1 });
  expect(boardSag(board, { ...plate, grain: "x" }, 1, settings)).toBe(along);
  const stiff = { ...settings.stock[0]!, modulusAlongGpa: 4, modulusAcrossGpa: 2 };
  expect(boardSag({ ...board, listed: stiff }, plate, 1, settings)).toBeCloseTo(across / 2, 12);
});

test("what is glued under it counts with its thickness, by the cube", () => {
  expect(boardSag(board, { ...plate, gluedTo: 2 }, 1, settings) * 8).toBeCloseTo(
    boardSag(board, plate, 1, settings),
    12,
  );
});

test.each([0, 0.001, 0.5, 3, 40, 2000])("springing solves w + 0.4 w^3 / t^2 = w0 / 2 for w0 = %p mm", (w0) => {
  for (const t of [1.5, 2, 4.5]) {
    const w = springing(w0, t);
    expect(w + (0.4 * w ** 3) / t ** 2).toBeCloseTo(w0 / 2, 9);
  }
});

test("a small sag is halved by the glued walls, a great one stiffens", () => {
  expect(springing(0.01, 2)).toBeCloseTo(0.005, 6);
  expect(springing(100, 2)).toBeLessThan(10);
});
