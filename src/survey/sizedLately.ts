import { sizeSurvey, type SizedSurvey } from "./sizeSurvey";

/** The survey sized last, by what was in its cells and settings. */
let last: { readonly key: string; readonly sized: SizedSurvey } | undefined;

/**
 * A survey sized as `sizeSurvey` does, once for all functions that ask for the same cells and settings in turn. Only the
 * last one is remembered, and it changes no answer.
 *
 * @throws InputError as `sizeSurvey`
 */
export function sizedLately(cells: readonly (readonly unknown[])[], settings: readonly unknown[]): SizedSurvey {
  const key = JSON.stringify([cells, settings], written);
  if (last?.key !== key) last = { key, sized: sizeSurvey(cells, settings) };
  return last.sized;
}

/** What JSON would lose: errors, and numbers that are none. */
function written(_: string, value: unknown): unknown {
  if (value instanceof Error) return { ...value, error: value.name, message: value.message };
  if (value === undefined || (typeof value === "number" && !Number.isFinite(value))) return { value: String(value) };
  return value;
}
