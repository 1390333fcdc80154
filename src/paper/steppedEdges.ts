import type { EdgeStep } from "../enclosure/placedPart";
import type { Template } from "../drawing/template";
import type { Mm } from "../measure/units";
import { AROUND_CORNER, templatesToMark } from "./cornerTemplates";
import type { Ticket } from "./ticket";

/** An edge that is cut in steps: x along it from its end, y in from the edge. The opposite edge is its mirror image. */
export interface SteppedEdge {
  readonly long: Mm;
  /** What is shown in from the edge. */
  readonly high: Mm;
  readonly steps: readonly EdgeStep[];
  /** Folds and cuts that lie within what is shown. */
  readonly lines: Template["lines"];
  /** The end that is measured from: `the end of the small tray`. */
  readonly fromEnd: string;
  /** `LK 020, blank: both edges`. */
  readonly serves: string;
}

/** Every edge of a blank that is cut in steps. */
export function steppedEdges(tickets: readonly Ticket[]): readonly SteppedEdge[] {
  return tickets.flatMap((ticket) =>
    templatesToMark(ticket).flatMap(({ name, length, width, lines, edges }) => {
      if (edges === undefined) return [];
      const { along, steps, fromEnd } = edges;
      const high = Math.max(...steps.map(({ deep }) => deep)) + AROUND_CORNER;
      const turn = ([x, y]: readonly [Mm, Mm]) => (along === "length" ? ([x, y] as const) : ([y, x] as const));
      return [
        {
          ...{ long: along === "length" ? length : width, high, steps, fromEnd },
          lines: lines
            .map(({ kind, from, to }) => ({ kind, from: turn(from), to: turn(to) }))
            .flatMap((line) => within(line, [0, Infinity], [0, high])),
          serves: `${ticket.identifier}, ${name}: both edges`,
        },
      ];
    }),
  );
}

/** The stretch of an edge from one place to another, its lines from the first. */
export function stretchOf(edge: SteppedEdge, from: Mm, to: Mm): Pick<SteppedEdge, "steps" | "lines"> {
  const clipped = (at: Mm) => Math.min(Math.max(at, from), to) - from;
  return {
    steps: edge.steps
      .map((step) => ({ ...step, from: clipped(step.from), to: clipped(step.to) }))
      .filter((step) => step.to > step.from),
    lines: edge.lines
      .flatMap((line) => within(line, [from, to], [0, edge.high]))
      .map(({ kind, from: [x0, y0], to: [x1, y1] }) => ({ kind, from: [x0 - from, y0], to: [x1 - from, y1] })),
  };
}

type Range = readonly [least: Mm, most: Mm];

/** What of a level or upright line lies within a rectangle; nothing of one that lies beyond it. */
function within({ kind, from, to }: Template["lines"][number], across: Range, down: Range): Template["lines"] {
  const ranges = [across, down] as const;
  const isOff = ranges.some(
    ([least, most], at) => Math.max(from[at]!, to[at]!) < least || Math.min(from[at]!, to[at]!) > most,
  );
  if (isOff) return [];
  const clip = (point: readonly [Mm, Mm]): readonly [Mm, Mm] => [inRange(point[0], across), inRange(point[1], down)];
  return [{ kind, from: clip(from), to: clip(to) }];
}

function inRange(at: Mm, [least, most]: Range): Mm {
  return Math.min(Math.max(at, least), most);
}
