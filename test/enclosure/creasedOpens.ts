import type { Assembly } from "../../src/enclosure/assembly";
import { extent, X, Y, Z } from "../../src/enclosure/space";
import { apart, carried, section, TOUCHING, type Outline, type Point } from "./swings";

const STEPS = 60;
const SIDES = 12;

/** Base, fore-edge wall, its rim, what folds over, head wall: the other head wall and tabs are behind. */
const SEEN = 5;

/**
 * A clamshell of one blank, seen from its head: a crease is a bend of the board, round, in the middle of its thickness;
 * panels end half a board from it. First the large tray turns a quarter about the upper crease of the spine, then both
 * turn a quarter about the lower one, until all lies flat.
 */
export function creasedOpens({ parts: [blank], trays }: Assembly): void {
  const { panels, board } = blank!;
  const t = board.caliper;
  const at = panels.findIndex(({ max }) => max[X] <= 0);
  const upright = panels[at]!;
  const [inner, outer] = trays;
  if (inner!.outside.min[Y] - outer!.inside.min[Y] < -TOUCHING) throw new Error("head walls meet");
  const still = panels.slice(0, SEEN).map((panel) => section(panel, 0));
  const moving = panels.slice(at + 1, at + 1 + SEEN).map((panel) => section(panel, 0));
  const middle = (upright.min[X] + upright.max[X]) / 2;
  const low: Point = [middle, upright.min[Z] + t / 2];
  const high: Point = [middle, upright.max[Z] - t / 2];
  const between = section({ min: [upright.min[X], 0, low[1] + t / 2], max: [upright.max[X], 0, high[1] - t / 2] }, 0);
  const bend = ([x, z]: Point): Outline =>
    Array.from({ length: SIDES }, (_, side) => {
      const angle = (-2 * Math.PI * side) / SIDES;
      return [x + (t / 2) * Math.cos(angle), z - (t / 2) * Math.sin(angle)];
    });
  const [lowBend, highBend] = [bend(low), bend(high)];
  const turned = (open: number) => {
    const first = carried(high, high, (-Math.PI / 2) * Math.min(2 * open, 1));
    const second = carried(low, low, (-Math.PI / 2) * Math.max(2 * open - 1, 0));
    return {
      spine: between.map(second),
      bend: highBend.map(second),
      large: (outline: Outline): Outline => outline.map(first).map(second),
    };
  };
  for (let step = 0; step <= STEPS; step++) {
    const open = step / STEPS;
    const { spine, bend: above, large } = turned(open);
    const over = moving.map(large);
    for (const outline of still) {
      apart(outline, spine, "small tray and spine", open);
      apart(outline, lowBend, "small tray and lower crease", open);
      apart(outline, above, "small tray and upper crease", open);
      // The head walls stand beside each other, not in one plane.
      for (const [index, other] of over.entries())
        if (outline !== still[HEAD] && index !== HEAD) apart(outline, other, "small and large tray", open);
    }
    for (const outline of over) {
      apart(outline, spine, "large tray and spine", open);
      apart(outline, above, "large tray and upper crease", open);
      apart(outline, lowBend, "large tray and lower crease", open);
    }
  }
  // Flat at last: undersides level, a spine from crease to crease between them.
  const flat = turned(1).large(moving[0]!);
  const lowest = Math.min(...flat.map(([, z]) => z));
  if (Math.abs(lowest - panels[0]!.min[Z]) > TOUCHING) throw new Error("it does not lie flat");
  const edge = Math.max(...flat.map(([x]) => x));
  const spine = blank!.folds[blank!.grain === "along width" ? "alongLength" : "alongWidth"];
  const wide = spine[4]! - spine[3]!;
  if (Math.abs(edge - (low[0] - wide - t / 2)) > TOUCHING) throw new Error("the spine is not as wide as its creases");
  if (Math.abs(wide - (extent(upright, Z) - t)) > TOUCHING) throw new Error("the spine is not as high as it is wide");
}

const HEAD = 4;
