import { severalMeasures } from "../measure/severalMeasures";

/** What a row says of its item beside the sizes, and cautions go by. */
export interface SaidOfRow {
  /** Empty where there is none. */
  readonly hazard: string;
  /** The height, where it was typed as a text. */
  readonly heightAsTyped: string;
}

export const NOTHING_SAID: SaidOfRow = { hazard: "", heightAsTyped: "" };

/** The height as it was typed, where it is a text; of several items that of the first. */
export function typedHeight(cell: unknown): string {
  return severalMeasures(cell)?.[0]?.text ?? (typeof cell === "string" ? cell : "");
}
