import type { Mm } from "../../measure/units";
import type { Tray } from "../assembly";
import type { PlacedPart } from "../placedPart";
import { boundingBox, cuboid, placed, type Cuboid, type Place, type Vec } from "../space";

/**
 * A bare tray of three walls folded up from a blank, open at the spine.
 *
 * @param boards what is lost of its base in width: half a board at a crease, and what stands within it
 * @param tabs board that lies inside its fore-edge wall
 */
export function openTray(
  name: string,
  [width, height, depth]: Vec,
  panels: readonly Cuboid[],
  blank: PlacedPart,
  { boards, tabs, place }: { readonly boards: number; readonly tabs: Mm; readonly place: Place },
): Tray {
  const { caliper } = blank.board;
  const span = (lost: number) => ({ part: blank, boards: lost, of: blank });
  return {
    name,
    openSpine: true,
    mouth: undefined,
    construction: undefined,
    rings: [],
    closedCorners: true,
    inside: placed(cuboid(0, width, 0, height, 0, depth), place),
    outside: boundingBox(panels),
    // Two creases in height; one at the foot of a wall.
    spans: [span(boards), span(1), span(1 / 2)],
    covering: 0,
    coveredFaces: [0, 0, 0],
    rim: caliper,
    tabs,
    floor: caliper,
  };
}
