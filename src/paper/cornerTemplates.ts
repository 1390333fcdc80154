import { stockFor } from "../settings/coverStock";
import { boardParts } from "../enclosure/part";
import type { Template } from "../drawing/template";
import { templateOfBlank } from "../drawing/templateOfBlank";
import { templateOfPart } from "../drawing/templateOfPart";
import type { Mm } from "../measure/units";
import type { Ticket } from "./ticket";

/** A corner that is cut away, the same for every corner it serves, at the origin: x along the piece's length. */
export interface CornerTemplate {
  readonly length: Mm;
  readonly width: Mm;
  /** Folds and slits near the corner, from the edges of the piece. */
  readonly lines: Template["lines"];
  /** `LK 020, tray blank: 4 corners`. */
  readonly serves: readonly string[];
}

/** What is shown of a piece beyond its corner. */
export const AROUND_CORNER: Mm = 25;

const NOISE_MM: Mm = 1e-6;

/** Boards and cards, and blanks of covering and lining, with what is marked on them. */
export function templatesToMark({ sized: { assembly, settings } }: Ticket): readonly Template[] {
  return [
    ...boardParts(assembly).map(templateOfPart),
    ...assembly.kind
      .blanks(assembly, settings)
      .filter(({ material, along, across }) => along > 0 && across > 0 && stockFor(material, settings) !== "none")
      .map(templateOfBlank),
  ];
}

/** Every different corner of folded boards, cards and covering blanks, with all the pieces that it serves. */
export function cornerTemplates(tickets: readonly Ticket[]): readonly CornerTemplate[] {
  const found = new Map<string, { corner: Omit<CornerTemplate, "serves">; serves: string[] }>();
  for (const ticket of tickets) {
    for (const template of templatesToMark(ticket)) {
      const corner = template.corners[0];
      if (corner === undefined) continue;
      const lines = linesNear(template, corner.farLength, corner.farWidth, corner.length, corner.width);
      const key = JSON.stringify([corner.length, corner.width, lines].map(roundedSizes));
      const entry = found.get(key) ?? { corner: { length: corner.length, width: corner.width, lines }, serves: [] };
      found.set(key, entry);
      entry.serves.push(`${ticket.identifier}, ${template.name}: ${template.corners.length * template.count} corners`);
    }
  }
  return [...found.values()].map(({ corner, serves }) => ({ ...corner, serves }));
}

/** Lines of a piece within the part that is shown, turned so that the corner lies at the origin. */
function linesNear(
  { lines, length, width }: Template,
  farLength: boolean,
  farWidth: boolean,
  cornerLength: Mm,
  cornerWidth: Mm,
): Template["lines"] {
  const [right, bottom] = [
    Math.min(length, cornerLength + AROUND_CORNER),
    Math.min(width, cornerWidth + AROUND_CORNER),
  ];
  const turn = ([x, y]: readonly [Mm, Mm]): readonly [Mm, Mm] => [farLength ? length - x : x, farWidth ? width - y : y];
  const clipped = ([x, y]: readonly [Mm, Mm]): readonly [Mm, Mm] => [Math.min(x, right), Math.min(y, bottom)];
  return lines.flatMap(({ kind, from, to }) => {
    const [a, b] = [turn(from), turn(to)];
    const upright = Math.abs(a[0] - b[0]) < NOISE_MM;
    const off = upright ? a[0] > right : a[1] > bottom;
    const starts = upright ? Math.min(a[1], b[1]) : Math.min(a[0], b[0]);
    if (off || starts > (upright ? bottom : right) - NOISE_MM) return [];
    return [{ kind, from: clipped(a), to: clipped(b) }];
  });
}

function roundedSizes(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value), (_, each: unknown) =>
    typeof each === "number" ? Math.round(each / NOISE_MM) * NOISE_MM : each,
  );
}
