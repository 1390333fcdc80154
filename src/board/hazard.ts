/** What a survey writes where there is no hazard, in lower case. */
export const NO_HAZARD = ["", "0", "false", "no", "n", "none", "nil", "n/a", "-", "\u2013", "\u2014"] as const;

/** What stands before and after the hazard in its caution. */
export const HAZARD_CAUTION = { before: "hazard (", after: "): assess before handling; local rules" } as const;

/** The hazard that a cell of a survey names, as it is typed; empty where it says that there is none. */
export function hazardIn(cell: unknown): string {
  if (typeof cell === "boolean") return cell ? "TRUE" : "";
  if (typeof cell !== "string" && typeof cell !== "number") return "";
  const said = String(cell).replace(/\s+/g, " ").trim();
  return (NO_HAZARD as readonly string[]).includes(said.toLowerCase()) ? "" : said;
}

export function hazardCaution(hazard: string): string {
  return `${HAZARD_CAUTION.before}${hazard}${HAZARD_CAUTION.after}`;
}
