import { InputError } from "../../measure/errors";
import { formatLengthWithUnit } from "../../measure/formatLength";
import type { Mm } from "../../measure/units";
import type { Settings } from "../../settings/schema";
import { oneFace, roundedDown, roundedUp } from "../build/allowances";
import { assembled, plateOf } from "../assembly";
import { CONSTRUCTIONS, NO_CAUTIONS, WALLS, type Kind } from "../kind";
import { CUT_BOARDS, SET_UP } from "../order";
import { tray as trayKind, insideFor, plainForm, trayForm, trayMaterials } from "./tray";
import { divided } from "../build/dividers";
import { lidOver } from "../build/lidOver";
import { trayBlanks, TRAY_BLANKS } from "../build/trayBlanks";
import { trayWork } from "../build/trayWork";
import { outsideOf, trayBoards } from "../build/trayBoards";
import { lidLifted, traysApart } from "../build/trayViews";

/**
 * Two trays: the lid comes down over the box and rests on its rim.
 *
 *      ______________
 *     |  __________  |   lid
 *     | |          | |
 *     | |   item   | |
 *       |__________|     box, its foot showing by the reveal
 */
export const liddedBox: Kind = {
  name: "lidded box",
  otherNames: ["two-tray box", "box and lid"],
  trays: ["box", "lid"],
  parts: trayKind.parts,
  coverings: TRAY_BLANKS,
  constructions: CONSTRUCTIONS,
  body: WALLS,
  folded: false,
  closes: { edges: 0, byDefault: "none" },
  options: ["closure", ...trayKind.options, "lidConstruction", "lidDepth", "lidReveal", "lidClearance"],
  assemble(item, settings) {
    const c = oneFace(settings);
    const materials = trayMaterials(settings);
    const box = divided(trayBoards("box", insideFor(item, settings), trayForm(settings), materials), item, settings);
    const [, , depth] = outsideOf(box.tray);
    const { lid, nest } = lidOver(
      box.tray,
      {
        form: plainForm(settings.lidConstruction, settings),
        materials,
        depth: lidInsideDepth(depth, c, settings),
        madeDepth: lidDepthOf(depth, settings) === "full" ? -settings.lidReveal : undefined,
      },
      settings,
    );
    return assembled(
      {
        kind: liddedBox,
        parts: [...box.parts, ...lid.parts],
        trays: [box.tray, lid.tray],
        holder: box.tray,
        nests: [nest],
        base: plateOf(box.tray, box.base),
        top: plateOf(lid.tray, lid.base),
        cushion: item.cushion,
      },
      settings,
    );
  },
  blanks: ({ trays }, settings) => trays.flatMap((tray) => trayBlanks(tray, settings)),
  cautions: NO_CAUTIONS,
  opened: (assembly) => lidLifted(assembly, assembly.trays[1]!),
  apart: (assembly) => traysApart(assembly, assembly.trays),
  order({ trays: [box, lid] }, settings) {
    return [
      CUT_BOARDS,
      SET_UP,
      ...trayWork(box!, trayForm(settings), settings),
      { text: "Measure the finished box before the lid is cut: the lid is made to it.", parts: [] },
      ...trayWork(lid!, plainForm(settings.lidConstruction, settings), settings),
    ];
  },
};

/** A full lid of a higher box drags on it and holds air; what a lid reaches down then. From memory. */
const MOST_FULL_MM: Mm = 120;
const SHORT_LID_MM: Mm = 75;

function lidDepthOf(boxDepth: Mm, { lidDepth }: Settings): Mm | "full" {
  if (lidDepth !== "auto") return lidDepth;
  return boxDepth <= MOST_FULL_MM ? "full" : SHORT_LID_MM;
}

/**
 * @param boxDepth bare outside depth of the box
 * @param c covering on one face
 * @throws InputError naming `lid reveal` or `lid depth`
 */
export function lidInsideDepth(boxDepth: Mm, c: Mm, settings: Settings): Mm {
  const { lidReveal, roundTo, answerUnit: unit } = settings;
  const lidDepth = lidDepthOf(boxDepth, settings);
  const shown = (size: Mm) => formatLengthWithUnit(size, unit);
  if (lidDepth === "full") {
    const depth = roundedDown(boxDepth + 2 * c - lidReveal, roundTo);
    if (depth > 0) return depth;
    throw new InputError(
      "lid reveal",
      shown(lidReveal),
      `give less than ${shown(boxDepth + 2 * c - roundTo)}, the height of this box`,
    );
  }
  if (lidDepth <= 0 || lidDepth > boxDepth + c)
    throw new InputError(
      "lid depth",
      shown(lidDepth),
      `give full, or a length above 0 up to ${shown(boxDepth + c)}, the height of this box`,
    );
  // Rounding up must not let the lid reach past the foot of its box.
  const depth = roundedUp(lidDepth + c, roundTo);
  return depth <= boxDepth + 2 * c ? depth : roundedDown(boxDepth + 2 * c, roundTo);
}
