import { expect as own } from "@jest/globals";

const VALUES = [0, -0, 1, 1.004, 1.005, Number.NaN, Infinity, "", "a", "ab", undefined, null, [], [1], [undefined]];
/** A pattern that remembers its last place. */
const AGAIN = /a/g;
AGAIN.lastIndex = 1;
const OBJECTS = [
  AGAIN,
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
  ...["toBeCloseTo", "toContain", "toMatch", "toHaveLength", "toMatchObject"],
];

type Says = Readonly<Record<string, (expected: unknown) => void>>;
type Asked = (actual: unknown) => Says & { readonly not: Says };

function said(says: Says, matcher: string, expected: unknown): string {
  try {
    says[matcher]!(expected);
    return "passed";
  } catch (error) {
    return (error as Error).message;
  }
}

const [ours, jests] = [expect, own] as unknown as readonly Asked[];
const WAYS = {
  "": (ask: Asked) => ask,
  "not.": (ask: Asked) => (actual: unknown) => ask(actual).not,
};

test.each(MATCHERS.flatMap((matcher) => Object.entries(WAYS).map(([way, of]) => [way, matcher, of] as const)))(
  "%s%s passes where Jest's own does, and fails with the same words",
  (_way, matcher, of) => {
    const differ = ALL.flatMap((actual) =>
      ALL.filter(
        (expected) => said(of(ours!)(actual), matcher, expected) !== said(of(jests!)(actual), matcher, expected),
      ).map((expected) => [actual, expected]),
    );
    own(differ).toEqual([]);
  },
);

test("what fails names the line of its test first", () => {
  let trace = "";
  try {
    expect(1).toBe(2);
  } catch (error) {
    trace = (error as Error).stack!;
  }
  own(trace.split("\n").find((line) => line.trim().startsWith("at "))).toContain("quickExpect.test.ts");
});

test("resolves, rejects and what is expected of any value are Jest's own", async () => {
  await expect(Promise.resolve(1)).resolves.toBe(1);
  await expect(Promise.reject(new Error("a"))).rejects.toThrow("a");
  expect({ a: 1 }).toEqual({ a: expect.any(Number) });
});
