/**
 * The examples in the words of what a setting accepts: `2`, `2 mm` and `1/16 in` of "a length such as 2, 2 mm or 1/16
 * in, or none".
 */
export function examplesIn(accepts: string): readonly string[] {
  const words = /such as (.*)$/.exec(accepts)?.[1] ?? "";
  return words
    .replace(/,? or (none|auto)$/, "")
    .split(/, | or /)
    .filter((example) => /\d/.test(example));
}
