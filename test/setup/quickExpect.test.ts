import { expect as own } from "@jest/globals";

const VALUES = [
  0,
  -0,
  1,
  1.004,
  1.005,
  Number.NaN,
  Infinity,
  "",
  "a",
  "ab",
  undefined,
  null,
  true,
  [],
  [1],
  [undefined],
];
const OBJECTS = [
  {},
  { a: 1 },
  { a: undefined },
  new Map([[1, 2]]),
  new Set([1]),
  new Date(0),
  /a/,
  Object.create(null),
];
const ALL: readonly unknown[] = [...VALUES, ...OBJECTS, [{ a: [1, { b: 2 }] }], [{ a: [1, { b: 3 }] }], new Error("a")];

const MATCHERS = [
  ...["toBe", "toEqual", "toBeLessThan", "toBeLessThanOrEqual", "toBeGreaterThan", "toBeGreaterThanOrEqual"],
  ...["toBeCloseTo", "toContain", "toStrictEqual", "toMatchObject"],
];

type Asked = (actual: unknown) => Readonly<Record<string, (expected: unknown) => void>>;

function said(ask: Asked, matcher: string, actual: unknown, expected: unknown): string {
  try {
    ask(actual)[matcher]!(expected);
    return "passed";
  } catch (error) {
    return (error as Error).message;
  }
}

test.each(MATCHERS)("%s passes where Jest's own does, and fails with the same words", (matcher) => {
  const differ = ALL.flatMap((actual) =>
    ALL.filter(
      (expected) =>
        said(expect as unknown as Asked, matcher, actual, expected) !==
        said(own as unknown as Asked, matcher, actual, expected),
    ).map((expected) => [actual, expected]),
  );
  own(differ).toEqual([]);
});

test("what fails names the line of its test first", () => {
  let trace = "";
  try {
    expect(1).toBe(2);
  } catch (error) {
    trace = (error as Error).stack!;
  }
  own(trace.split("\n").find((line) => line.trim().startsWith("at "))).toContain("quickExpect.test.ts");
});

test("not, resolves, rejects and what is expected of any value are Jest's own", async () => {
  expect(1).not.toBe(2);
  own(() => expect(1).not.toBe(1)).toThrow();
  await expect(Promise.resolve(1)).resolves.toBe(1);
  await expect(Promise.reject(new Error("a"))).rejects.toThrow("a");
  expect({ a: 1 }).toEqual({ a: expect.any(Number) });
});
