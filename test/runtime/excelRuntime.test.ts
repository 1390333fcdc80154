import { loadExcelRuntime, type Build } from "./excelRuntime";

// Two functions made for this file: `SEEN` answers what reached it as text, `ANSWER` answers or throws as told.
const build: Build = {
  metadata: {
    allowErrorForDataTypeAny: true,
    functions: [
      {
        id: "SEEN",
        name: "SEEN",
        parameters: [
          { name: "height", type: "any" },
          { name: "part", type: "any", dimensionality: "matrix" },
          { name: "settings", type: "any", dimensionality: "matrix", optional: true, repeating: true },
        ],
        result: {},
      },
      { id: "ANSWER", name: "ANSWER", parameters: [{ name: "which", type: "any", optional: true }], result: {} },
    ],
  },
  script: `
    CustomFunctions.associate("SEEN", (...args) => JSON.stringify(args.slice(0, 3), function (key, value) {
      return this[key] instanceof CustomFunctions.Error ? "error " + this[key].code : value;
    }));
    CustomFunctions.associate("ANSWER", (which) => {
      const { Error: CellError, ErrorCode } = CustomFunctions;
      switch (which) {
        case "value": throw new CellError(ErrorCode.invalidValue, "depth: got 4O mm");
        case "none": throw new CellError(ErrorCode.notAvailable, "a tray has no lid");
        case "none, silent": throw new CellError(ErrorCode.notAvailable);
        case "zero": throw new CellError(ErrorCode.divisionByZero);
        case "bug": throw new Error("lost");
        case "promise": return Promise.resolve([[1]]);
        case "rejected": return Promise.reject(new CellError(ErrorCode.notAvailable, "late"));
        case "returned": return new CellError(ErrorCode.invalidValue, "returned");
        case "NaN": return NaN;
        case "table": return [["part", 1], [new CellError(ErrorCode.invalidValue, "row 2"), NaN]];
        default: return which === null ? "omitted" : which;
      }
    });`,
};

const runtime = loadExcelRuntime(build);

async function seen(args: Parameters<typeof runtime.callCell>[1], from = runtime): Promise<unknown> {
  const answer = await from.callCell("SEEN", args);
  return "value" in answer ? JSON.parse(String(answer.value)) : answer;
}

describe("arguments reach a function as Excel hands them over", () => {
  test.each([
    ["a range argument of one value is a table of one cell", [3, "all"], [3, [["all"]], null]],
    ["a value argument is not wrapped, and a number stored as text stays text", ["3", "all"], ["3", [["all"]], null]],
    ["a single-cell range in a value argument is its value", [[[3]], "all"], [3, [["all"]], null]],
    ["an argument left empty is null", [undefined, undefined], [null, null, null]],
    [
      "repeating ranges come as one list",
      [3, "all", "fit=loose", [["unit", "in"]]],
      [3, [["all"]], [[["fit=loose"]], [["unit", "in"]]]],
    ],
    ["an empty place among repeating ranges is null", [3, "all", undefined, 0], [3, [["all"]], [null, [[0]]]]],
    [
      "an error cell is a CustomFunctions.Error",
      [{ error: "#N/A" }, [[{ error: "#REF!" }]]],
      ["error #N/A", [["error #REF!"]], null],
    ],
  ])("%s", async (_fact, args, expected) => {
    expect(await seen(args)).toEqual(expected);
  });

  test("repeating ranges left off are an empty list when that is asked for", async () => {
    expect(await seen([3, "all"], loadExcelRuntime(build, "empty list"))).toEqual([3, [["all"]], []]);
  });

  test("a plain optional argument left off is null", async () => {
    expect(await runtime.callCell("ANSWER", [])).toEqual({ value: "omitted" });
  });
});

test.each([
  ["SEEN", [3], "part is missing"],
  ["ANSWER", [1, 2], "2 arguments where 1 are declared"],
  ["SEEN", [[[1, 2]], "all"], "a range in a single value is not modelled here"],
  ["LOST", [], "functions.json declares no LOST"],
] as const)("a formula that Excel refuses is refused: %s %j", async (id, args, message) => {
  await expect(runtime.callCell(id, args)).rejects.toThrow(message);
});

describe("answers come back as Excel shows them", () => {
  test.each([
    ["value", { error: "#VALUE!", message: "depth: got 4O mm" }],
    ["none", { error: "#N/A", message: "a tray has no lid" }],
    ["none, silent", { error: "#N/A" }],
    ["zero", { error: "#DIV/0!" }],
    ["bug", { error: "#VALUE!" }],
    ["promise", { value: [[1]] }],
    ["rejected", { error: "#N/A", message: "late" }],
    ["returned", { error: "#VALUE!", message: "returned" }],
    ["NaN", { error: "#VALUE!" }],
    [true, { value: true }],
    [
      "table",
      {
        value: [
          ["part", 1],
          [{ error: "#VALUE!", message: "row 2" }, null],
        ],
      },
    ],
  ])("%s", async (which, expected) => {
    expect(await runtime.callCell("ANSWER", [which])).toEqual(expected);
  });

  test("a column of calls sent at once is answered in its own order", async () => {
    const numbers = Array.from({ length: 1000 }, (_, index) => index);
    const answers = await runtime.callMany(numbers.map((number) => ["ANSWER", [number]]));
    expect(answers).toEqual(numbers.map((value) => ({ value })));
  });
});
