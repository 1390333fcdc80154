import type { Mm } from "../../measure/units";
import type { Case, Tray } from "../assembly";
import type { PlacedPart } from "../placedPart";
import { cuboid, Y, Z, type Cuboid } from "../space";
import { piecesOf, type Apart } from "../view";
import { partsOf } from "./trayViews";

/**
 * A case laid open flat, both trays upright on their boards: what lies on the front board makes half a turn about the
 * spine.
 *
 * @param back the tray on the back board
 * @param front the tray on the front board
 */
export function laidOpen(
  parts: readonly PlacedPart[],
  { boards, spine, joint, spineWidth }: Case,
  back: Tray,
  front: Tray,
): Apart {
  const [backBoard, frontBoard] = boards!.panels as readonly [Cuboid, Cuboid];
  const { min, max } = backBoard;
  const hinge: Hinge = { across: 2 * joint + spineWidth, floor: max[Z], up: spineWidth };
  const flatSpine = cuboid(-joint - spineWidth, -joint, min[Y], max[Y], min[Z], max[Z]);
  const turned = piecesOf(partsOf(front, parts)).map(({ body, part }) => ({ body: swung(body, hinge), part }));
  return {
    arranged: "beside",
    groups: [
      {
        pieces: piecesOf(partsOf(back, parts)),
        around: back.inside,
        bed: [{ body: backBoard, part: boards! }],
      },
      { pieces: turned, around: swung(front.inside, hinge), bed: [{ body: swung(frontBoard, hinge), part: boards! }] },
    ],
    between: [{ body: flatSpine, part: spine! }],
  };
}

/** Half a turn: `x` goes to `-across - x`, and `z` to `2 floor + up - z`. */
interface Hinge {
  readonly across: Mm;
  readonly floor: Mm;
  readonly up: Mm;
}

export function swung({ min, max }: Cuboid, { across, floor, up }: Hinge): Cuboid {
  const top = 2 * floor + up;
  return cuboid(-across - max[0], -across - min[0], min[1], max[1], top - max[2], top - min[2]);
}
