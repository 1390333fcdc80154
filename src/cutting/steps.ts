/** Work that gives the thread back now and then: whoever runs it decides what happens between two steps. */
export type Steps<Result> = Generator<undefined, Result, undefined>;

/** Does all steps at once. */
export function finish<Result>(steps: Steps<Result>): Result {
  for (;;) {
    const { done, value } = steps.next();
    if (done === true) return value;
  }
}
