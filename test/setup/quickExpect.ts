/**
 * Jest's own `expect` makes some 300 functions and a trace of calls each time, passed or not: half of the time of tests
 * that look at many values. What plainly holds is seen here without it; all else is asked of Jest's own, which decides
 * and says why.
 */
const own = expect;

/** True where the matcher surely holds, false where it surely does not, undefined where Jest's own must say. */
type Check = (actual: unknown, expected: unknown, digits?: unknown) => boolean | undefined;
type Equals = (one: unknown, other: unknown, testers?: readonly unknown[]) => boolean;

const [equals, iterableEquality] = jestEquality();

const numbers =
  (holds: (actual: number, expected: number) => boolean | undefined): Check =>
  (actual, expected) =>
    typeof actual === "number" && typeof expected === "number" ? holds(actual, expected) : undefined;

const PLAINLY: Readonly<Record<string, Check>> = {
  toBe: Object.is,
  toEqual: (actual, expected) => Object.is(actual, expected) || equals(actual, expected, [iterableEquality]),
  toBeLessThan: numbers((actual, expected) => actual < expected),
  toBeLessThanOrEqual: numbers((actual, expected) => actual <= expected),
  toBeGreaterThan: numbers((actual, expected) => actual > expected),
  toBeGreaterThanOrEqual: numbers((actual, expected) => actual >= expected),
  toBeCloseTo: (actual, expected, digits = 2) =>
    numbers((one, other) => {
      const apart = Math.abs(other - one);
      return Number.isFinite(apart) ? apart < 10 ** -Number(digits) / 2 : undefined;
    })(actual, expected),
  toContain: (actual, expected) => {
    if (typeof actual === "string" && typeof expected === "string") return actual.includes(expected);
    return Array.isArray(actual) ? [...actual].indexOf(expected) !== -1 : undefined;
  },
  toMatch: (actual, expected) => {
    if (typeof actual !== "string") return undefined;
    if (typeof expected === "string") return actual.includes(expected);
    // A copy, so that a pattern that goes on from its last place does not.
    return expected instanceof RegExp ? new RegExp(expected).test(actual) : undefined;
  },
  toHaveLength: (actual, expected) =>
    (typeof actual === "string" || Array.isArray(actual)) && Number.isInteger(expected) && Number(expected) >= 0
      ? actual.length === expected
      : undefined,
};

class Expectation {
  constructor(readonly actual: unknown) {}

  get not(): Denial {
    return new Denial(this.actual);
  }
}

class Denial {
  constructor(readonly actual: unknown) {}
}

type Matchers = Readonly<Record<string, (...args: readonly unknown[]) => unknown>>;

for (const name of Object.keys(own(undefined)) as (keyof jest.JestMatchers<unknown>)[]) {
  if (name === "not") continue;
  if (typeof own(undefined)[name] !== "function") {
    Object.defineProperty(Expectation.prototype, name, {
      get(this: Expectation) {
        return own(this.actual)[name];
      },
    });
    continue;
  }
  const says = (actual: unknown) => own(actual) as unknown as Matchers;
  Object.defineProperty(Expectation.prototype, name, { value: matcher(name, true, says) });
  const denies = (actual: unknown) => own(actual).not as unknown as Matchers;
  Object.defineProperty(Denial.prototype, name, { value: matcher(name, false, denies) });
}

function matcher(name: string, passes: boolean, ofOwn: (actual: unknown) => Matchers) {
  const plainly = PLAINLY[name];
  return function matches(this: Expectation | Denial, ...args: readonly unknown[]): unknown {
    if (plainly !== undefined && args.length > 0 && plainly(this.actual, args[0], args[1]) === passes) return undefined;
    try {
      return ofOwn(this.actual)[name]!(...args);
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
