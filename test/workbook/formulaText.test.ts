import { storedFormula, typedFormula } from "../../src/workbook/formulaText";

const PAIRS = [
  ['_xldudf_ENC_WALL_LENGTH(B5,"side wall")', 'ENC.WALL.LENGTH(B5,"side wall")'],
  ['IF(_xldudf_ENC_MASS(B5)="","x",_xldudf_ENC_MASS(B5))', 'IF(ENC.MASS(B5)="","x",ENC.MASS(B5))'],
  ['"_xldudf_ENC_MASS(" & _xldudf_ENC_MASS(B5)', '"_xldudf_ENC_MASS(" & ENC.MASS(B5)'],
  ["'ENC.MASS('!A1+_xldudf_ENC_MASS(B5)", "'ENC.MASS('!A1+ENC.MASS(B5)"],
  ['"a ""quoted"" ENC.MASS("', '"a ""quoted"" ENC.MASS("'],
] as const;

test.each(PAIRS)("%s is typed as %s, and stored so again", (stored, typed) => {
  expect(typedFormula(stored)).toBe(typed);
  expect(storedFormula(typed)).toBe(stored);
});

test("names in another case, and with the number of a linked workbook, are read", () => {
  expect(typedFormula("[1]!_xldudf_enc_inside(A1)")).toBe("ENC.INSIDE(A1)");
  expect(storedFormula("enc.inside(A1)")).toBe("_xldudf_ENC_INSIDE(A1)");
});

test("a name that only ends like ours is left alone", () => {
  expect(storedFormula("MY.ENC.INSIDE(A1)+my_xldudf_ENC_INSIDE(A1)")).toBe(
    "MY.ENC.INSIDE(A1)+my_xldudf_ENC_INSIDE(A1)",
  );
  expect(typedFormula("my_xldudf_ENC_INSIDE(A1)")).toBe("my_xldudf_ENC_INSIDE(A1)");
});
