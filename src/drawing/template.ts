import type { Part } from "../enclosure/part";
import type { Mm } from "../measure/units";

/** A length of a blank between two of its lines, and what it lies on. */
export interface Stretch {
  readonly name: string;
  readonly length: Mm;
}

/** A line on a blank; x along its length, y along its width, from the corner. */
export interface TemplateLine {
  readonly kind: "fold" | "cut";
  readonly from: readonly [x: Mm, y: Mm];
  readonly to: readonly [x: Mm, y: Mm];
}

/** A corner of the blank that is cut away: 0 or 1 for the near or far end of each direction. */
export interface Corner {
  readonly farLength: boolean;
  readonly farWidth: boolean;
  readonly length: Mm;
  readonly width: Mm;
}

/** A flat piece with everything that is drawn on it before it is cut and folded. */
export interface Template {
  readonly name: string;
  readonly count: number;
  /** As cut. */
  readonly length: Mm;
  readonly width: Mm;
  readonly alongLength: readonly Stretch[];
  readonly alongWidth: readonly Stretch[];
  readonly lines: readonly TemplateLine[];
  readonly corners: readonly Corner[];
  readonly grain: Part["grain"];
  readonly note: string;
}
