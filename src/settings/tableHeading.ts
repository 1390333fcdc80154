import { plainName } from "./names";

/** A heading of a table of ours, `caliper (pt)`: its plain name, and its unit as written; both empty where there is none. */
export function tableHeading(heading: unknown): { readonly name: string; readonly unit: string } {
  if (typeof heading !== "string") return { name: "", unit: "" };
  // No two parts of the pattern can share a character, so that no heading takes long.
  const match = /^(.*)[([]([^()[\]]*)[)\]]$/s.exec(heading.trim());
  return { name: plainName(match?.[1] ?? heading), unit: match?.[2]?.trim() ?? "" };
}
