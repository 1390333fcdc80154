import type { Settings } from "../settings/schema";
import { baseBoardOf, freePlay, oneFace, roundedUp, wallBoardOf } from "./allowances";
import { assembled } from "./assembly";
import { CONSTRUCTIONS, type Kind } from "./kind";
import type { Lying } from "./lying";
import type { Vec } from "./space";
import { trayBoards, type TraySpec } from "./trayBoards";

/** A tray with four walls, open above. */
export const tray: Kind = {
  name: "tray",
  otherNames: ["open tray"],
  trays: [],
  parts: [
    "base",
    "side wall",
    "head wall",
    "inner side wall",
    "inner head wall",
    "outer side wall",
    "outer head wall",
    "flange card",
    "end card",
  ],
  constructions: CONSTRUCTIONS,
  options: ["construction", "through", "wallLayers", "endCards", "flangeCard", "insideTurn", "coverStyle"],
  assemble(item, settings) {
    const { parts, tray } = trayBoards({
      ...trayOptions(settings),
      name: "",
      inside: insideFor(item, settings),
      layers: settings.wallLayers,
      endCards: settings.endCards,
    });
    return assembled({
      kind: "tray",
      parts,
      trays: [tray],
      holder: tray,
      cover: undefined,
      covering: oneFace(settings),
      cushion: item.cushion,
    });
  },
};

/** The inside of a tray that holds an item: covered on both walls of a direction, and on the floor alone. */
export function insideFor(item: Lying, settings: Settings): Vec {
  const c = oneFace(settings);
  const fit = freePlay(settings, "standard");
  const up = (size: number) => roundedUp(size, settings.roundTo);
  return [up(item.width + 2 * c + fit.x), up(item.height + 2 * c + fit.y), up(item.depth + c + fit.z)];
}

/** What every four-walled tray takes from the settings. */
export function trayOptions(settings: Settings): Omit<TraySpec, "name" | "inside"> {
  return {
    construction: settings.construction ?? "flanged base",
    through: settings.through ?? "side",
    wallBoard: wallBoardOf(settings),
    baseBoard: baseBoardOf(settings),
    card: settings.flangeCard,
    cardTrim: settings.cardTrim,
  };
}
