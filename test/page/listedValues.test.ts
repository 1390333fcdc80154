import { listedValues } from "../../src/page/listedValues";

const sheets = [
  {
    name: "Items",
    grid: {
      rows: [
        ["a", 1],
        ["b, c", 2],
        ["d", null],
      ],
    },
  },
  { name: "board choices", grid: { rows: [["boards to choose from"], ["board 2"], ["2 x board 2"]] } },
];
const names = [{ name: "shelves", refersTo: "Items!$B$1:$B$3", sheet: undefined, hidden: false, comment: "" }];

test.each([
  ['"yes, no"', ["yes", "no"]],
  ["$A$1:$A$3", ["a", "d"]],
  ["Items!$B$1:$B$2", ["1", "2"]],
  ["shelves", ["1", "2"]],
  ["OFFSET('board choices'!$A$2,0,0,COUNTA('board choices'!$A:$A)-1,1)", ["board 2", "2 x board 2"]],
  ["INDIRECT(B1)", undefined],
  ["Nowhere!$A$1:$A$2", undefined],
])("a list by %s offers %j", (formula, values) => {
  expect(listedValues(formula, { sheet: "Items", sheets, names })).toEqual(values);
});
