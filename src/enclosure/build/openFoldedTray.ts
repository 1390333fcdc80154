import type { Mm } from "../../measure/units";
import type { SettledSettings } from "../../settings/schema";
import type { Tray } from "../assembly";
import type { PlacedPart } from "../placedPart";
import { AT_ORIGIN, cuboid, placed, Y, type Cuboid, type Place, type Vec } from "../space";
import { openTray } from "./openTray";
import { wallRing } from "./wallRing";

/**
 * A tray of three walls folded up from one board, open at the spine; creases in mid-thickness.
 *
 *       +---------+---+      head wall and its tab
 *     +-+---------+---+-+
 *     |    base     |wall|   fore-edge wall
 *     +-+---------+---+-+
 *       +---------+---+
 *
 * @param inside clear space between boards; tabs inside take one board of its width
 * @param tabs on which side of the fore-edge wall the tabs of the head walls are glued
 */
export function openFoldedTray(
  name: string,
  [width, height, depth]: Vec,
  tabs: "inside" | "outside",
  { wallBoard: board, turnIn }: SettledSettings,
  place: Place = AT_ORIGIN,
): { readonly tray: Tray; readonly blank: PlacedPart } {
  const t = board.caliper;
  const within = tabs === "inside";
  const clear = { x0: 0, x1: width, y0: 0, y1: height };
  // Where the tabs lie outside, the head walls run past the fore-edge wall to their crease.
  const ring = wallRing(clear, -t, depth, t, { through: within ? "side" : "head", openSpine: true });
  const tabCrease = within ? width - t / 2 : width + 1.5 * t;
  const [foldX, foldY] = [width + t / 2, depth + t / 2];
  const [x, y] = [foldX + foldY, height + t + 2 * foldY];
  const long = Math.max(0, Math.min(turnIn, x - tabCrease, height / 2));
  const at = within ? width - t : width + t;
  const heads = ring.head.map(({ min, max }) => ({ min, max: [within ? max[0] : at + t, max[1], max[2]] }) as const);
  // Measured from the crease in mid-thickness of the head wall.
  const reach = long - t / 2;
  const tab = (from: Mm) => cuboid(at, at + t, from, from + reach, 0, depth);
  const panels: readonly Cuboid[] = [
    cuboid(0, width, 0, height, -t, 0),
    ...ring.side,
    ...heads,
    ...(reach > 0 ? [tab(0), tab(height - reach)] : []),
  ].map((panel) => placed(panel, place));
  const tall = y >= x;
  const foldsY = [foldY, foldY + height + t];
  const blank: PlacedPart = {
    name: "blank",
    tray: name,
    role: "folded",
    material: "board",
    board,
    count: 1,
    panels,
    lengthAxis: undefined,
    widthAxis: undefined,
    grain: tall ? "along length" : "along width",
    grainAxis: Y,
    length: tall ? y : x,
    width: tall ? x : y,
    trim: 0,
    folds: { by: "crease", alongLength: tall ? foldsY : [foldX], alongWidth: tall ? [foldX] : foldsY },
    corners: {
      form: "end tab",
      from: tall ? "width" : "length",
      crease: tabCrease,
      long,
      high: depth,
      wallFrom: within ? depth : depth + t,
    },
  };
  return {
    blank,
    // One crease in width, half a board outside the inside.
    tray: openTray(name, [width, height, depth], panels, blank, { boards: 1 / 2, tabs: within ? t : 0, place }),
  };
}
