import type { Tray } from "../enclosure/assembly";
import { extent, X, Y, Z } from "../enclosure/space";
import { formatLength } from "../measure/formatLength";
import type { Mm } from "../measure/units";
import type { Settings } from "../settings/schema";
import type { Blank } from "./blank";

/** How much smaller a panel is than the outside face that it lies on, and a floor lining than the covered floor. */
const PANEL_LESS_MM: Mm = 4;
const LINING_LESS_MM: Mm = 1;

/**
 * Covering and lining of a tray.
 *
 *     strip style, seen in section          turned in on the floor
 *        rim ____                                 |
 *       |    |  inside turn                  _____|
 *       |    |_______ <- turned in        T
 *       |    [_______  floor lining
 *       |____________
 *        T   <- turned in under the base, base panel over it
 *
 * Grain (common practice, no source): strips along their length, everything else with the base.
 */
export function trayBlanks(tray: Tray, c: Mm, settings: Settings): readonly Blank[] {
  const [width, height, depth] = [extent(tray.inside, X), extent(tray.inside, Y), extent(tray.inside, Z)];
  const [outerWidth, outerHeight, outerDepth] = [
    extent(tray.outside, X),
    extent(tray.outside, Y),
    extent(tray.outside, Z),
  ];
  const floorTurn = half(settings.turnIn, Math.min(width, height));
  const footTurn = half(settings.turnIn, Math.min(outerWidth, outerHeight));
  const inside = settings.insideTurn === "full" ? depth + floorTurn : Math.min(settings.insideTurn, depth + floorTurn);
  const wallRun = outerDepth + tray.rim + inside;
  const alongHeight = tray.openSpine || height >= width;
  const flat = (x: Mm, y: Mm) => (alongHeight ? { along: y, across: x } : { along: x, across: y });
  const shown = (size: Mm) => formatLength(size, settings.unit);
  const covering = { tray: tray.name, material: "covering", count: 1, within: false, note: "" } as const;
  const lining: Blank = {
    ...covering,
    name: "floor lining",
    material: "lining",
    ...flat(width - 2 * c - LINING_LESS_MM, height - 2 * c - LINING_LESS_MM),
    within: true,
    note: "on the floor, over the turn-ins",
  };
  if (settings.coverStyle === "one piece") {
    const tab = half(settings.turnIn, Math.min(outerWidth, outerHeight));
    const note = `cut away the corners ${shown(wallRun - tab)} x ${shown(wallRun)}, leaving tabs ${shown(tab)} wide`;
    const x = tray.openSpine ? outerWidth + wallRun + tray.floor + floorTurn : outerWidth + 2 * wallRun;
    return [{ ...covering, name: "one-piece blank", ...flat(x, outerHeight + 2 * wallRun), note }, lining];
  }
  const around = tray.openSpine
    ? 2 * outerWidth + outerHeight + 2 * half(settings.turnIn, width)
    : 2 * (outerWidth + outerHeight) + half(settings.turnIn, Math.min(outerWidth, outerHeight));
  const strip: Blank = {
    ...covering,
    name: "wall strip",
    along: around,
    across: footTurn + wallRun,
    note: `round the walls; turn in ${shown(footTurn)} under the base, ${shown(inside)} down inside`,
  };
  const spineEdge: Blank = {
    ...covering,
    name: "spine-edge strip",
    along: outerHeight,
    across: footTurn + floorTurn + tray.floor,
    note: "over the spine edge of the base",
  };
  const panel: Blank = {
    ...covering,
    name: "base panel",
    ...flat(outerWidth - PANEL_LESS_MM, outerHeight - PANEL_LESS_MM),
    within: true,
    note: "under the base, over the turn-ins",
  };
  return [strip, tray.openSpine ? spineEdge : panel, lining];
}

/** A turn-in is never longer than half the face that it lies on. */
export function half(turnIn: Mm, face: Mm): Mm {
  return Math.min(turnIn, face / 2);
}
