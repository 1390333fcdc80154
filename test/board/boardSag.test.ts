import { boardSag, type BaseUnderLoad } from "../../src/board/boardSag";
import { plateSag } from "../../src/board/plateSag";

const BOARD = { caliper: 2, modulusAlongGpa: 2, modulusAcrossGpa: 1 };
const BASE: BaseUnderLoad = { spanX: 213, spanY: 303, loadKg: 3, freeEdge: "none", grain: "y", creep: 1 };
const PLATE = { spanX: 213, spanY: 303, loadKg: 3, freeEdge: "none", caliper: 2 } as const;

describe("boardSag", () => {
  it("grain along y puts the greater modulus in y, grain along x in x", () => {
    expect(boardSag(BOARD, BASE)).toBe(plateSag({ ...PLATE, modulusX: 1, modulusY: 2 }));
    expect(boardSag(BOARD, { ...BASE, grain: "x" })).toBe(plateSag({ ...PLATE, modulusX: 2, modulusY: 1 }));
  });

  it("creep multiplies the sag", () => {
    expect(boardSag(BOARD, { ...BASE, creep: 2 })).toBe(2 * boardSag(BOARD, BASE));
    expect(() => boardSag(BOARD, { ...BASE, creep: 0 })).toThrow("creep: got 0; give a number above zero");
  });

  it("glued to a board of its own caliper, it sags an eighth", () => {
    expect(boardSag(BOARD, BASE, 4)).toBeCloseTo(boardSag(BOARD, BASE) / 8, 12);
  });

  it("a free edge sags more", () => {
    expect(boardSag(BOARD, { ...BASE, freeEdge: "x0" })).toBeGreaterThan(2 * boardSag(BOARD, BASE));
  });
});
