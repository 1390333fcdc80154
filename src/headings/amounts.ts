import type { LengthUnit, WorkbookUnit } from "../measure/units";
import type { MassUnit } from "../measure/unitWords";

/** A number of a row, as written: with the unit that its own text gives, or none. */
export interface Amount<Unit> {
  readonly value: number;
  readonly unit: Unit | undefined;
}

export type Size = "height" | "width" | "depth";

export const SIZES: readonly Size[] = ["height", "width", "depth"];

/** The measures of a row as they are written. */
export interface AmountRow {
  readonly row: number;
  readonly height: Amount<LengthUnit> | undefined;
  readonly width: Amount<LengthUnit> | undefined;
  readonly depth: Amount<LengthUnit> | undefined;
  readonly weight: Amount<MassUnit> | undefined;
}

/** Where measures come from. Three sizes may come from one column of dimension texts. */
export interface AmountColumn {
  readonly column: number;
  /** How an option names it. */
  readonly name: string;
  /** Named by its heading, or by the user. */
  readonly unit: string | undefined;
}

export interface AmountSurvey {
  readonly rows: readonly AmountRow[];
  readonly columns: Readonly<Partial<Record<Size | "weight", AmountColumn>>>;
  /** What plain sizes are in where nothing says it, and whether the user said so. */
  readonly unit: WorkbookUnit;
  readonly unitGiven: boolean;
  readonly odd: "keep" | "leave-out" | undefined;
}
