import fc from "fast-check";
import { boardSag } from "../../src/board/boardSag";
import { neededCaliper, sagAllowed, type CaliperQuestion } from "../../src/board/neededCaliper";

const board = (caliper: number, sizeLimit?: number) => ({
  stock: `${caliper} mm`,
  caliper,
  modulusAlongGpa: 2,
  modulusAcrossGpa: 1,
  sizeLimit,
});
type StockBoard = ReturnType<typeof board>;

const QUESTION: CaliperQuestion<StockBoard> = {
  boards: [board(3), board(1.5), board(2.5), board(2)],
  spanX: 200,
  spanY: 200,
  loadKg: 1,
  freeEdge: "none",
  grain: "y",
  creep: 2,
  sagRatio: 150,
  sagLimit: 2,
  longestSide: 198,
};

function chosen(question: CaliperQuestion<StockBoard>): string {
  const answer = neededCaliper(question);
  return answer.holds ? answer.board.stock : "none";
}

describe("sagAllowed", () => {
  it.each([
    [150, 450, 1],
    [450, 150, 1],
    [300, 300, 2],
    [900, 600, 2],
  ])("a base of %d x %d may sag %d mm at a ratio of 150 and a limit of 2 mm", (spanX, spanY, allowed) => {
    expect(sagAllowed({ spanX, spanY }, { sagRatio: 150, sagLimit: 2 })).toBe(allowed);
  });
});

describe("neededCaliper", () => {
  // By hand, 200 x 200, E 2 and 1 GPa: stretched b/a = 2^(1/4) = 1.189, a the stiff direction, alpha = .00555 (between
  // Table 8's .00406 and .00564), so with creep sag = 2 x .00555 x 9.80665 kg / 40000 x 200^4 / D, D = 2000 t^3 / 10.92:
  // 23.8 kg / t^3 mm. Allowed 200 / 150 = 1.333 mm, so a board holds .0561 t^3 kg: .189, .449, .876, 1.51.
  it.each([
    [0.18, "1.5 mm"],
    [0.2, "2 mm"],
    [0.44, "2 mm"],
    [0.46, "2.5 mm"],
    [0.86, "2.5 mm"],
    [0.89, "3 mm"],
    [1.49, "3 mm"],
    [1.54, "none"],
  ])("%d kg on a base of 200 x 200 needs %s", (loadKg, stock) => {
    expect(chosen({ ...QUESTION, loadKg })).toBe(stock);
  });

  it("says why the thinner boards were left", () => {
    const boards = [board(1.5, 150), board(2), board(2.5), board(3)];
    const answer = neededCaliper({ ...QUESTION, boards, loadKg: 0.6 });
    expect(answer.holds && answer.board.stock).toBe("2.5 mm");
    expect(answer.passedOver.map((left) => [left.board.stock, left.because])).toEqual([
      ["1.5 mm", "size limit"],
      ["2 mm", "sag"],
    ]);
    expect(answer.passedOver[1]?.sag).toBeGreaterThan(answer.allowed);
  });

  it("when none holds, says so of every board", () => {
    const answer = neededCaliper({ ...QUESTION, loadKg: 40 });
    expect(answer.holds).toBe(false);
    expect(answer.passedOver.map((left) => left.board.caliper)).toEqual([1.5, 2, 2.5, 3]);
    expect(neededCaliper({ ...QUESTION, boards: [] })).toEqual({ holds: false, allowed: 200 / 150, passedOver: [] });
  });

  it("a size limit covers an item of just that side, and no larger", () => {
    const boards = [board(1.5, 198), board(2)];
    expect(chosen({ ...QUESTION, boards, loadKg: 0.05 })).toBe("1.5 mm");
    expect(chosen({ ...QUESTION, boards, loadKg: 0.05, longestSide: 198.5 })).toBe("2 mm");
  });

  it("of two boards of one caliper the first that holds is taken", () => {
    const soft = { ...board(2), stock: "soft", modulusAlongGpa: 0.5, modulusAcrossGpa: 0.3 };
    const stiff = { ...board(2), stock: "stiff" };
    expect(chosen({ ...QUESTION, boards: [soft, stiff], loadKg: 0.2 })).toBe("stiff");
    expect(chosen({ ...QUESTION, boards: [soft, stiff], loadKg: 0.02 })).toBe("soft");
  });

  it("glued to a case board of 2 mm, a thinner board holds", () => {
    expect(chosen({ ...QUESTION, thickness: ({ caliper }) => caliper + 2, loadKg: 1.6 })).toBe("1.5 mm");
  });

  it("a spine edge without a wall asks for a thicker board", () => {
    expect(chosen({ ...QUESTION, loadKg: 0.4 })).toBe("2 mm");
    expect(chosen({ ...QUESTION, loadKg: 0.4, freeEdge: "x0" })).toBe("3 mm");
  });

  it("does not reorder the boards it was given", () => {
    const boards = [board(3), board(2)];
    neededCaliper({ ...QUESTION, boards });
    expect(boards.map((each) => each.caliper)).toEqual([3, 2]);
  });

  it.each([
    [{ sagRatio: 0 }, "sag ratio: got 0; give a number above zero"],
    [{ sagLimit: -1 }, "sag limit: got -1; give a number above zero"],
    [{ spanX: 0 }, "span: got 0; give a number above zero"],
  ])("%j is refused", (bad, message) => {
    expect(() => neededCaliper({ ...QUESTION, ...bad })).toThrow(message);
  });

  const questions = fc.record({
    spanX: fc.double({ min: 50, max: 900, noNaN: true }),
    spanY: fc.double({ min: 50, max: 900, noNaN: true }),
    loadKg: fc.integer({ min: 0, max: 2000 }).map((hundredths) => hundredths / 100),
    grain: fc.constantFrom("x" as const, "y" as const),
    freeEdge: fc.constantFrom("none" as const, "x0" as const),
    calipers: fc.uniqueArray(
      fc.integer({ min: 3, max: 100 }).map((tenths) => tenths / 10),
      { maxLength: 8 },
    ),
  });

  it("the board chosen holds and every thinner one does not", () => {
    fc.assert(
      fc.property(questions, ({ calipers, ...base }) => {
        const question = { ...QUESTION, ...base, boards: calipers.map((caliper) => board(caliper)) };
        const holding = question.boards.filter((each) => boardSag(each, question) <= sagAllowed(question, question));
        const thinnest = holding.length === 0 ? undefined : Math.min(...holding.map((each) => each.caliper));
        const answer = neededCaliper(question);
        expect(answer.holds ? answer.board.caliper : undefined).toBe(thinnest);
      }),
    );
  });

  it("a heavier item, and a larger base in proportion under the same item, never get a thinner board", () => {
    const more = fc.double({ min: 1, max: 4, noNaN: true });
    fc.assert(
      fc.property(questions, more, ({ calipers, ...base }, times) => {
        const question = { ...QUESTION, ...base, boards: calipers.map((caliper) => board(caliper)) };
        const caliper = caliperOf(question);
        expect(caliperOf({ ...question, loadKg: question.loadKg * times })).toBeGreaterThanOrEqual(caliper);
        const larger = { ...question, spanX: question.spanX * times, spanY: question.spanY * times };
        expect(caliperOf(larger)).toBeGreaterThanOrEqual(caliper);
      }),
    );
  });

  it("the same weight on a base grown one way alone may do with a thinner board", () => {
    expect(chosen({ ...QUESTION, loadKg: 0.46 })).toBe("2.5 mm");
    expect(chosen({ ...QUESTION, loadKg: 0.46, spanY: 1100 })).toBe("2 mm");
  });
});

function caliperOf(question: CaliperQuestion<StockBoard>): number {
  const answer = neededCaliper(question);
  return answer.holds ? answer.board.caliper : Infinity;
}
