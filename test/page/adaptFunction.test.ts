import { adaptFunction } from "../../src/page/functions/adaptFunction";
import { CellError } from "../../src/page/functions/cellError";
import { cellMessages } from "../../src/page/functions/cellMessages";

const parameters = [
  { name: "height" },
  { name: "wall", dimensionality: "matrix" },
  { name: "settings", dimensionality: "matrix", optional: true, repeating: true },
] as const;

function calling(call: (...args: readonly unknown[]) => unknown) {
  const said: [number, number, string][] = [];
  const answer = adaptFunction({ metadata: { id: "X", name: "X.Y", parameters }, call });
  const notes = { clear: () => said.splice(0), put: (...note: [number, number, string]) => said.push(note) };
  return { said, ask: (...args: readonly unknown[]) => answer(args, notes) };
}

test("arguments arrive as Excel passes them: one value, a range, all further ranges in one array, then the invocation", () => {
  const seen: unknown[][] = [];
  const { ask } = calling((...args) => {
    seen.push([...args]);
    return [[1]];
  });
  expect(ask([[3]], [["a", null]], "fit=1", [[1], [2]])).toBe(1);
  void ask(null, "side");
  expect(seen).toEqual([
    [3, [["a", null]], [[["fit=1"]], [[1], [2]]], {}],
    [null, [["side"]], null, {}],
  ]);
});

test("an error in a cell arrives as an error", () => {
  const { ask } = calling((height) => (height instanceof CellError ? height.code : "none"));
  expect(ask("#N/A", 1)).toBe("#N/A");
  expect(ask("#1 of 3", 1)).toBe("none");
});

test("a thrown error is its code, with its message for the cell", async () => {
  const { ask, said } = calling(() => {
    throw new CellError("#N/A", "no such wall");
  });
  expect(ask(1, 2)).toBe("#N/A");
  expect(said).toEqual([[0, 0, "no such wall"]]);
  const later = calling(() => Promise.reject(new CellError("#VALUE!", "later")));
  await expect(later.ask(1, 2)).resolves.toBe("#VALUE!");
  expect(later.said).toEqual([[0, 0, "later"]]);
});

test("an error in one cell of a table keeps its place and message", async () => {
  const { ask, said } = calling(() =>
    Promise.resolve([
      ["a", 1],
      [new CellError("#VALUE!", "row 2"), ""],
    ]),
  );
  await expect(ask(1, 2)).resolves.toEqual([
    ["a", 1],
    ["#VALUE!", ""],
  ]);
  expect(said).toEqual([[1, 0, "row 2"]]);
});

test("too few arguments and a range for one cell are told in words", () => {
  const { ask, said } = calling(() => [[1]]);
  expect(ask(1)).toBe("#VALUE!");
  expect(said.at(-1)![2]).toBe("ENC.X.Y needs 2 arguments, and got 1: ENC.X.Y(height, wall, [settings])");
  expect(ask([[1, 2]], 1)).toBe("#VALUE!");
  expect(said.at(-1)![2]).toMatch(/^height: got a range of several cells/);
});

test("a formula that is calculated again takes back what it said of every cell", () => {
  const { notesOf, at } = cellMessages();
  const cell = { sheet: "s", row: 1, column: 1 };
  notesOf(cell).put(2, 0, "wrong");
  expect(at({ ...cell, row: 3 })).toBe("wrong");
  notesOf(cell).clear();
  expect(at({ ...cell, row: 3 })).toBeUndefined();
});
