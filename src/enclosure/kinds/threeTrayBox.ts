import { InputError } from "../../measure/errors";
import { formatLengthWithUnit } from "../../measure/formatLength";
import type { Mm } from "../../measure/units";
import type { Settings } from "../../settings/schema";
import { oneFace, roundedDown, roundedUp } from "../build/allowances";
import { assembled, plateOf } from "../assembly";
import { ARRANGED, CONSTRUCTIONS, DIVIDERS, NO_CAUTIONS, WALLS, WELL_OPTIONS, type Kind } from "../kind";
import { CUT_BOARDS, SET_UP } from "../order";
import { insideFor, plainForm, trayMaterials } from "./tray";
import { divided } from "../build/dividers";
import { trayWork } from "../build/trayWork";
import { trayBlanks, TRAY_BLANKS } from "../build/trayBlanks";
import { outsideOf, trayBoards } from "../build/trayBoards";
import { lidLifted, traysApart } from "../build/trayViews";

/**
 * An inner tray standing in a bottom tray; a lid of the same size comes down over its neck, rim on rim.
 *
 *      __________________
 *     |  ______________  |   lid
 *     |_|              |_|
 *      _|     neck     |_
 *     | |    inner     | |   bottom
 *     | |______________| |
 *     |__________________|
 */
export const threeTrayBox: Kind = {
  name: "three-tray box",
  otherNames: [],
  trays: ["inner", "bottom", "lid"],
  parts: ["base", "side wall", "head wall", "flange card", ...DIVIDERS],
  coverings: TRAY_BLANKS,
  constructions: CONSTRUCTIONS,
  body: WALLS,
  folded: false,
  closes: { edges: 0, byDefault: "none" },
  options: [
    "closure",
    ...WELL_OPTIONS,
    ...ARRANGED,
    "construction",
    "lidConstruction",
    "through",
    "flangeCard",
    "insideTurn",
    "liningOrder",
    "coverStyle",
    "neck",
    "nestClearance",
  ],
  assemble(item, settings) {
    const c = oneFace(settings);
    const g = settings.nestClearance;
    const up = (size: Mm) => roundedUp(size, settings.roundTo);
    const materials = trayMaterials(settings);
    const form = plainForm(settings.construction ?? "flanged base", settings);
    const built = divided(trayBoards("inner", insideFor(item, settings), form, materials), item, settings);
    const [width, height, depth] = outsideOf(built.tray);
    const neck = neckOf(depth, settings);
    const inner = { ...built, tray: { ...built.tray, outsideShown: neck } };
    const [outerWidth, outerHeight] = [up(width + 4 * c + g), up(height + 4 * c + g)];
    // The inner tray stands bare on the bare floor of the bottom, glued to it.
    const bottomDepth = up(depth - neck);
    const lidDepth = up(neck + g);
    const { min } = inner.tray.outside;
    const [x, y] = [min[0] - (outerWidth - width) / 2, min[1] - (outerHeight - height) / 2];
    const floor = min[2];
    const under = trayBoards("bottom", [outerWidth, outerHeight, bottomDepth], form, materials, {
      at: [x, y, floor],
      turnedOver: false,
    });
    const bottom = { ...under, tray: { ...under.tray, filled: true } };
    const lidForm = plainForm(settings.lidConstruction, settings);
    const lid = trayBoards("lid", [outerWidth, outerHeight, lidDepth], lidForm, materials, {
      at: [x, y, floor + bottomDepth + 2 * c + lidDepth],
      turnedOver: true,
    });
    const lap = 2 * c + g;
    return assembled(
      {
        kind: threeTrayBox,
        parts: [...inner.parts, ...bottom.parts, ...lid.parts],
        trays: [inner.tray, bottom.tray, lid.tray],
        holder: inner.tray,
        nests: [
          { inner: inner.tray, outer: bottom.tray, play: [g, g, undefined], made: [lap, lap, -neck - c] },
          { inner: inner.tray, outer: lid.tray, play: [g, g, g], made: [lap, lap, undefined] },
        ],
        base: plateOf(inner.tray, inner.base),
        top: plateOf(lid.tray, lid.base),
        cushion: item.cushion,
      },
      settings,
    );
  },
  blanks: ({ trays }, settings) => trays.flatMap((tray) => trayBlanks(tray, settings)),
  cautions: NO_CAUTIONS,
  opened: (assembly) => lidLifted(assembly, assembly.trays[2]!),
  apart(assembly) {
    const [inner, bottom, lid] = assembly.trays;
    return traysApart(assembly, [bottom!, inner!, lid!]);
  },
  order({ trays: [inner, bottom, lid] }, settings) {
    const form = plainForm(settings.construction ?? "flanged base", settings);
    return [
      CUT_BOARDS,
      SET_UP,
      ...trayWork(inner!, form, settings),
      { text: "Measure the finished inner tray before bottom and lid are cut: both are made to it.", parts: [] },
      ...trayWork(bottom!, form, settings, inner),
      ...trayWork(lid!, plainForm(settings.lidConstruction, settings), settings),
      {
        text: "Glue the inner tray into the bottom, bare board to bare board, centred; weight it until dry.",
        parts: [],
        caution: "adhesive",
      },
    ];
  },
};

/** The neck left standing unless the shop sets one, and the most of the inner tray it takes. Common practice, no source. */
const USUAL_NECK_MM: Mm = 10;
const NECK_SHARE = 1 / 3;

/** @throws InputError naming `neck` when the bottom or the lid would be left without depth */
function neckOf(innerDepth: Mm, { neck, roundTo, nestClearance, answerUnit: unit }: Settings): Mm {
  const chosen = neck === "auto" ? roundedDown(Math.min(USUAL_NECK_MM, innerDepth * NECK_SHARE), roundTo) : neck;
  const most = innerDepth;
  if (chosen < most && chosen + nestClearance > 0) return chosen;
  const shown = (size: Mm) => formatLengthWithUnit(size, unit);
  throw new InputError("neck", shown(chosen), `give auto, or a length above 0 and less than ${shown(most)}`);
}
