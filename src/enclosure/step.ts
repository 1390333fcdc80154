/** A step of putting an enclosure together. Common practice, no source. */
export interface Step {
  readonly text: string;
  /** Full names of the parts that it puts in their place; none where it prepares or checks. */
  readonly parts: readonly string[];
  /** What to beware of in this step. */
  readonly caution?: keyof typeof CAUTIONS;
}

/** Said once a job, that of the weight only where one is known to be over the limit for lifting; local rules and the maker's own sheets come first. */
export const CAUTIONS = {
  blade: "Blade: cut along a heavy steel rule, fingers behind its edge, in several light passes; a dull blade slips.",
  adhesive: "Adhesive: keep to its maker's safety sheet, with fresh air, and keep the item away until all is dry.",
  weight: "Weight: lift large boards and filled boxes with another person; your local handling rules come first.",
} as const;

/** What is said over steps that have a danger, in short: the first page of a job explains it. */
export const CARE = { blade: "blade", adhesive: "adhesive" } as const;
