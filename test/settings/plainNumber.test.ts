import { plainNumber } from "../../src/settings/plainNumber";

test.each([
  [12, 12],
  ["12", 12],
  [" 12.5 ", 12.5],
  ["12,5", 12.5],
  ["12,25", 12.25],
  [".5", 0.5],
  ["5.", 5],
  ["-3", -3],
  ["+3", 3],
])("%p is %p", (value, number) => {
  expect(plainNumber(value)).toBe(number);
});

test.each([
  "1,234",
  "1,2,3",
  "0x10",
  "1e3",
  "Infinity",
  "",
  " ",
  "12 %",
  "1 000",
  "--3",
  "1.2.3",
  "١٢",
  true,
  null,
  {},
])("%p is no plain number", (value) => {
  expect(plainNumber(value)).toBeNaN();
});

test("a suffix that may be written is left out", () => {
  expect(plainNumber("10 %", "%")).toBe(10);
  expect(plainNumber("10", "%")).toBe(10);
  expect(plainNumber("%", "%")).toBeNaN();
});
