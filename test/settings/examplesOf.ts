import type { Choice } from "../../src/settings/choices";

/** The values that the words of a setting give as examples. */
export function examplesOf(choices: readonly Choice[]): readonly string[] {
  return choices.flatMap((choice) => (choice.is === "measure" ? (choice.examples ?? []) : []));
}
