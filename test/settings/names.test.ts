import fc from "fast-check";
import { didYouMean, listed, nearestNames, plainName } from "../../src/settings/names";

test.each([
  ["  Drop\u2010Spine   BOX ", "drop spine box"],
  ["turn_in", "turn in"],
  ["turn\u00a0in", "turn in"],
  ["four\u2013flap", "four flap"],
  ["", ""],
])("%p is compared as %p", (text, plain) => {
  expect(plainName(text)).toBe(plain);
});

const WALLS = ["side wall", "head wall", "back wall", "flange card"];

test.each([
  ["sid wall", ["side wall", "head wall"]],
  ["back", ["back wall"]],
  ["Back-Wall", ["back wall"]],
  ["wall", ["side wall", "head wall", "back wall"]],
  ["flnage crad", ["flange card"]],
  ["lid", []],
  ["", []],
  ["   ", []],
])("nearest to %p of four names: %j", (typed, near) => {
  expect(nearestNames(typed, WALLS)).toEqual(near);
});

test("a name is never its neighbour's misspelling when a third of its letters differ", () => {
  expect(nearestNames("tray", ["slipcase"])).toEqual([]);
  expect(nearestNames("try", ["tray"])).toEqual(["tray"]);
});

test("one letter wrong, left out or doubled always finds a name", () => {
  fc.assert(
    fc.property(fc.constantFrom(...WALLS), fc.nat(8), fc.constantFrom("wrong", "out", "double"), (name, at, how) => {
      const [before, letter, after] = [name.slice(0, at), name.charAt(at), name.slice(at + 1)];
      const typed = before + { wrong: "q", out: "", double: letter + letter }[how] + after;
      expect(nearestNames(typed, WALLS)).toContain(name);
    }),
  );
});

test("lists read as people say them", () => {
  expect(listed(["a"], "or")).toBe("a");
  expect(listed(["a", "b"], "and")).toBe("a and b");
  expect(listed(["a", "b", "c"], "or")).toBe("a, b or c");
  expect(listed([], "or")).toBe("");
});

test("without a near name the fallback is told", () => {
  expect(didYouMean("xyzzy", WALLS, "ENC.KINDS lists them")).toBe("ENC.KINDS lists them");
  expect(didYouMean("side", WALLS)).toBe("did you mean side wall?");
});
