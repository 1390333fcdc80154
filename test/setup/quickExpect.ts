/**
 * Jest's own `expect` makes some 300 functions and a trace of calls each time, passed or not: half of the time of tests
 * that look at many values. What plainly holds is seen here without it; all else is asked of Jest's own, which decides
 * and says why.
 */
const own = expect;

type Check = (actual: unknown, expected: unknown, digits?: unknown) => boolean;
type Equals = (one: unknown, other: unknown, testers?: readonly unknown[]) => boolean;

const [equals, iterableEquality] = jestEquality();

const numbers =
  (holds: (actual: number, expected: number) => boolean): Check =>
  (actual, expected) =>
    typeof actual === "number" && typeof expected === "number" && holds(actual, expected);

/** True where the matcher surely holds. */
const PLAINLY: Readonly<Record<string, Check>> = {
  toBe: Object.is,
  toEqual: (actual, expected) => Object.is(actual, expected) || equals(actual, expected, [iterableEquality]),
  toBeLessThan: numbers((actual, expected) => actual < expected),
  toBeLessThanOrEqual: numbers((actual, expected) => actual <= expected),
  toBeGreaterThan: numbers((actual, expected) => actual > expected),
  toBeGreaterThanOrEqual: numbers((actual, expected) => actual >= expected),
  toBeCloseTo: (actual, expected, digits = 2) =>
    numbers((one, other) => Math.abs(other - one) < 10 ** -Number(digits) / 2)(actual, expected),
  toContain: (actual, expected) =>
    typeof actual === "string" && typeof expected === "string" && actual.includes(expected),
};

class Expectation {
  constructor(readonly actual: unknown) {}
}

for (const name of Object.keys(own(undefined)) as (keyof jest.JestMatchers<unknown>)[]) {
  const ofOwn = (actual: unknown) => own(actual)[name];
  Object.defineProperty(
    Expectation.prototype,
    name,
    typeof ofOwn(undefined) === "function"
      ? { value: matcher(name, ofOwn as (actual: unknown) => (...args: readonly unknown[]) => unknown) }
      : {
          get(this: Expectation) {
            return ofOwn(this.actual);
          },
        },
  );
}

function matcher(name: string, ofOwn: (actual: unknown) => (...args: readonly unknown[]) => unknown) {
  const plainly = PLAINLY[name];
  return function matches(this: Expectation, ...args: readonly unknown[]): unknown {
    if (plainly !== undefined && args.length > 0 && plainly(this.actual, args[0], args[1])) return undefined;
    try {
      return ofOwn(this.actual)(...args);
    } catch (error) {
      // The line of the test comes first in the report.
      if (error instanceof Error) Error.captureStackTrace(error, matches);
      throw error;
    }
  };
}

/** What `toEqual` compares with; Jest hands it to matchers alone. */
function jestEquality(): readonly [Equals, unknown] {
  let found: readonly [Equals, unknown] | undefined;
  own.extend({
    handsOverEquality() {
      found = [this.equals as Equals, this.utils.iterableEquality];
      return { pass: true, message: () => "" };
    },
  });
  (own(undefined) as unknown as { readonly handsOverEquality: () => void }).handsOverEquality();
  return found!;
}

Object.assign(globalThis, { expect: Object.assign((actual: unknown) => new Expectation(actual), own) });
