/** Where the text goes on behind what a sticky pattern finds at `at`; `at` itself when it finds nothing. */
export function endOf(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : at;
}
