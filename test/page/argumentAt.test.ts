import { argumentValues } from "../../src/item/argumentValues";
import { argumentAt, goingOn, quotedText } from "../../src/page/argumentAt";

test.each([
  ['=ENC.INSIDE(A2,B2,C2,"tray","he', ["INSIDE", 4, '"he']],
  ['=1+ENC.WALL.LENGTH(A2,B2,C2,"lidded box", ', ["WALL.LENGTH", 4, ""]],
  ["=ENC.INSIDE(MAX(A2,B2),{1,2},", ["INSIDE", 2, ""]],
  ['=ENC.INSIDE("a,b(",', ["INSIDE", 1, ""]],
  ["=enc.mass(1;2;", ["MASS", 2, ""]],
] as const)("in %s the cursor is in that argument", (text, wanted) => {
  const { name, index, typed, from } = argumentAt(text, text.length)!;
  expect([name, index, typed]).toEqual(wanted);
  expect(text.slice(from)).toBe(typed);
});

test.each(["ENC.INSIDE(", "=SUM(A1,", "=ENC.MASS(1,2,3)", "=ENC.INSIDE(SUM(1,", "="])("in %s it is in none", (text) => {
  expect(argumentAt(text, text.length)).toBeUndefined();
});

test("kinds, directions and walls are offered, the walls of the kind that is named", () => {
  const of = (parameter: string, enclosure = "", name = "WALL.LENGTH") =>
    argumentValues({ name, parameter, enclosure });
  expect(goingOn(of("enclosure"), '"clam')).toEqual(["clamshell box", "folded clamshell"]);
  expect(of("direction")).toEqual(["height", "width", "depth", "all"]);
  expect(of("direction", "", "COVER.BLANK")).toEqual(["along", "across", "all"]);
  expect(goingOn(of("wall", quotedText('"drop-spine box"')), '"fore')).toEqual(
    expect.arrayContaining(["fore-edge wall", "small fore-edge wall"]),
  );
  expect(of("wall", "slipcase")).toContain("back wall");
  expect(of("wall", "slipcase").some((wall) => wall.includes("fore-edge"))).toBe(false);
  expect(goingOn(of("direction"), "D2")).toEqual([]);
});
