import type { Part } from "../enclosure/part";
import type { EdgeCuts } from "../enclosure/placedPart";
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
  /** What is cut away along both edges of one direction, alike. */
  readonly edges?: Pick<EdgeCuts, "along" | "steps" | "fromEnd">;
  readonly grain: Part["grain"];
  readonly note: string;
}

/** The same piece turned by a quarter and over: what ran along its length runs along its width. */
export function turnedTemplate(template: Template): Template {
  const { length, width, alongLength, alongWidth, lines, corners, edges, grain } = template;
  const turned = ([x, y]: TemplateLine["from"]): TemplateLine["from"] => [y, x];
  return {
    ...template,
    length: width,
    width: length,
    alongLength: alongWidth,
    alongWidth: alongLength,
    lines: lines.map(({ kind, from, to }) => ({ kind, from: turned(from), to: turned(to) })),
    corners: corners.map((corner) => ({
      farLength: corner.farWidth,
      farWidth: corner.farLength,
      length: corner.width,
      width: corner.length,
    })),
    ...(edges === undefined
      ? {}
      : { edges: { ...edges, along: edges.along === "length" ? ("width" as const) : ("length" as const) } }),
    grain: grain === "along length" ? "along width" : grain === "along width" ? "along length" : grain,
  };
}
