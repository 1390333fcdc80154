import type { Mm } from "../../measure/units";
import type { Settings } from "../../settings/schema";
import type { Tray } from "../assembly";
import type { Blank } from "../blank";
import { extent, X, Y, Z } from "../space";
import type { TrayDress } from "./trayDress";

/** How far a side lining runs round each corner, and how far a head lining stops short of it. Common practice. */
const ROUND_CORNER_MM: Mm = 5;
const SHORT_OF_CORNER_MM: Mm = 1;

/**
 * Linings of the walls of a tray where its covering leaves them bare.
 *
 *     lined before            lined after
 *      __                      __
 *     |  | covering           |  | covering
 *     |  |______              |  |______
 *      :  lining under it      |  lining over it
 *      :                       |_____  and on to the floor
 *
 * Grain runs along the walls (common practice, no source).
 */
export function wallLinings(tray: Tray, dress: TrayDress, { turnIn }: Settings): readonly Blank[] {
  const { inside, floorTurn, wallsLined, linedFirst: first } = dress;
  if (!wallsLined) return [];
  const high = extent(tray.inside, Z) - inside + Math.min(turnIn / 2, inside);
  const across = first ? high : high + floorTurn;
  const note = first ? "before assembly, under the turn-in" : "over the turn-in and on to the floor";
  const blank = (name: string, count: number, along: Mm): Blank => ({
    name,
    tray: tray.name,
    material: "lining",
    count,
    along,
    across,
    within: true,
    note,
    runAlong: undefined,
    runAcross: undefined,
    cutAway: undefined,
    slit: undefined,
    lines: { face: "wall", first },
  });
  const [side, head] = first ? [0, 0] : [2 * ROUND_CORNER_MM, -2 * SHORT_OF_CORNER_MM];
  return [
    tray.openSpine
      ? blank("fore-edge wall lining", 1, extent(tray.inside, Y) + side)
      : blank("side wall lining", 2, extent(tray.inside, Y) + side),
    blank("head wall lining", 2, extent(tray.inside, X) + head),
  ];
}
