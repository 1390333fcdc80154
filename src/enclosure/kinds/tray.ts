import type { Construction, Settings, SettledSettings } from "../../settings/schema";
import { baseBoardOf, freePlay, oneFace, roundedUp } from "../build/allowances";
import { assembled, plateOf } from "../assembly";
import { ARRANGED, CONSTRUCTIONS, DIVIDERS, NO_CAUTIONS, WALLS, WELL_OPTIONS, type Kind } from "../kind";
import type { RestingItem } from "../restingItem";
import { CUT_BOARDS, SET_UP } from "../order";
import type { Vec } from "../space";
import { betweenItems, divided } from "../build/dividers";
import { trayBlanks, TRAY_BLANKS } from "../build/trayBlanks";
import { trayBoards, type TrayForm, type TrayMaterials } from "../build/trayBoards";
import { trayWork } from "../build/trayWork";
import { traysApart } from "../build/trayViews";
import { panelsOf } from "../placedPart";
import { openBodies } from "../view";

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
    ...DIVIDERS,
  ],
  coverings: TRAY_BLANKS,
  constructions: CONSTRUCTIONS,
  keptFlat: true,
  body: WALLS,
  folded: false,
  options: [
    ...WELL_OPTIONS,
    ...ARRANGED,
    "construction",
    "through",
    "wallLayers",
    "endCards",
    "flangeCard",
    "insideTurn",
    "liningOrder",
    "coverStyle",
  ],
  assemble(item, settings) {
    const built = divided(
      trayBoards("", insideFor(item, settings), trayForm(settings), trayMaterials(settings)),
      item,
      settings,
    );
    return assembled(
      {
        kind: tray,
        parts: built.parts,
        trays: [built.tray],
        holder: built.tray,
        base: plateOf(built.tray, built.base),
        cushion: item.cushion,
      },
      settings,
    );
  },
  blanks: ({ holder }, settings) => trayBlanks(holder, settings),
  cautions: NO_CAUTIONS,
  opened: ({ parts }) => openBodies(panelsOf(parts)),
  apart: (assembly) => traysApart(assembly, [assembly.holder]),
  order({ holder }, settings) {
    return [CUT_BOARDS, SET_UP, ...trayWork(holder, trayForm(settings), settings)];
  },
};

/** The inside of a tray that holds an item: covered on both walls of a direction, and on the floor alone. */
export function insideFor(item: RestingItem, settings: SettledSettings): Vec {
  const c = oneFace(settings);
  const fit = freePlay(settings, "standard");
  const up = (size: number) => roundedUp(size, settings.roundTo);
  const [x, y] = betweenItems(item, settings);
  return [up(item.width + 2 * c + fit.x + x), up(item.height + 2 * c + fit.y + y), up(item.depth + c + fit.z)];
}

/** Four walls, in the construction, layers and end cards of the settings. */
export function trayForm(settings: Settings): TrayForm {
  return {
    construction: settings.construction ?? "flanged base",
    through: settings.through ?? "side",
    layers: settings.wallLayers,
    endCards: settings.endCards,
    openSpine: false,
  };
}

/** Four walls of one layer, without end cards: the lid of a box, and trays that nest. */
export function plainForm(construction: Construction, settings: Settings): TrayForm {
  return { construction, through: settings.through ?? "side", layers: 1, endCards: false, openSpine: false };
}

export function trayMaterials(settings: SettledSettings): TrayMaterials {
  return {
    wallBoard: settings.wallBoard,
    baseBoard: baseBoardOf(settings),
    card: settings.flangeCard,
    cardTrim: settings.cardTrim,
    covering: oneFace(settings),
  };
}
