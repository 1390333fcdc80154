import { formulasOf } from "../../src/page/sharedFormulas";
import { storedFromTyped, typedFromStored } from "../../src/page/storedFormulas";
import { movedFormula, relativeForm } from "../../src/workbook/relativeFormula";

test.each([
  ["$C2+D$3+$E$4", 1, 2, "$C3+F$3+$E$4"],
  ['"A1"&B2', 3, 0, '"A1"&B5'],
  ["'A1 sheet'!B2+Survey[[#This Row],[C3]]", 1, 1, "'A1 sheet'!C3+Survey[[#This Row],[C3]]"],
  ["LOG10(B2)+TAXES2024", 1, 0, "LOG10(B3)+TAXES2024"],
  ["A1:B2", 1, 1, "B2:C3"],
  ["A1", -1, 0, "#REF!"],
  ["XFD1", 0, 1, "#REF!"],
  ["ENC.WALL.LENGTH(C2,settings)", 5, 0, "ENC.WALL.LENGTH(C7,settings)"],
])("%s moved by %d rows and %d columns is %s", (formula, down, across, moved) => {
  expect(movedFormula(formula, down, across)).toBe(moved);
});

test("cells filled down hold the same form, others do not", () => {
  expect(relativeForm("$C2*D$1", 2, 5)).toBe(relativeForm("$C9*D$1", 9, 5));
  expect(relativeForm("$C2*D$1", 2, 5)).not.toBe(relativeForm("$C2*D$1", 3, 5));
  expect(relativeForm("C2", 2, 5)).not.toBe(relativeForm("C2", 2, 6));
  expect(relativeForm('"C2"', 2, 5)).toBe(relativeForm('"C2"', 3, 6));
});

test("a cell that shares a formula reads it from its own place", () => {
  const { at: formula } = formulasOf({ 1: { 2: { f: "=A2+$B$1", si: "x" } }, 3: { 2: { si: "x" }, 3: { v: 1 } } });
  expect([formula(1, 2), formula(3, 2), formula(3, 3), formula(9, 9)]).toEqual([
    "=A2+$B$1",
    "=A4+$B$1",
    undefined,
    undefined,
  ]);
});

test.each([
  ["_xldudf_ENC_WALL_LENGTH(B5)", "ENC.WALL.LENGTH(B5)"],
  ['IF(A1="_xlfn.IFS(",_xlfn.IFS(A1,2),_xldudf_ENC_MASS(B1))', 'IF(A1="_xlfn.IFS(",IFS(A1,2),ENC.MASS(B1))'],
  ["_xlfn._xlws.FILTER(A1:A9,B1:B9)", "FILTER(A1:A9,B1:B9)"],
  ["_xlfn.XLOOKUP(A1,B:B,C:C)", "XLOOKUP(A1,B:B,C:C)"],
])("stored %s is typed %s, and back", (stored, typed) => {
  expect(typedFromStored(stored)).toBe(typed);
  expect(storedFromTyped(typed)).toBe(stored);
});
