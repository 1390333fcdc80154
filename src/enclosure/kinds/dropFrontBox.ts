import { InputError } from "../../measure/errors";
import { formatLengthWithUnit } from "../../measure/formatLength";
import type { Mm } from "../../measure/units";
import type { Settings } from "../../settings/schema";
import { assembled, plateOf } from "../assembly";
import { oneFace } from "../build/allowances";
import { dropFrontBlanks, DROP_FRONT_BLANKS } from "../build/dropFrontBlanks";
import { dropFrontTray, frontLaidDown } from "../build/dropFrontTray";
import { dropFrontOrder } from "../build/dropFrontOrder";
import { lidOver } from "../build/lidOver";
import { trayBlanks, TRAY_BLANKS } from "../build/trayBlanks";
import { outsideOf } from "../build/trayBoards";
import { lidLifted, traysApart } from "../build/trayViews";
import { NO_CAUTIONS, WALLS, type Kind } from "../kind";
import { extent, Z } from "../space";
import { openBodies, piecesOf } from "../view";
import { lidInsideDepth } from "./liddedBox";
import { insideFor, plainForm, trayMaterials } from "./tray";

/**
 * A deep tray whose front wall turns on a cloth hinge at its foot and opens downwards, under a lid that holds it shut: for standing and
 * fragile objects, which are slid out and not lifted.
 *
 *        ___________
 *       |___________|   lid
 *       |  |     |  |
 *       |  |     |  |   front wall between the side walls
 *       |__|_____|__|
 */
export const dropFrontBox: Kind = {
  name: "drop-front box",
  otherNames: ["drop front", "front-drop box"],
  trays: ["box", "lid"],
  parts: ["base", "side wall", "back wall", "front wall", "flange card", "head wall"],
  coverings: [...DROP_FRONT_BLANKS, ...TRAY_BLANKS.filter((name) => !DROP_FRONT_BLANKS.some((own) => own === name))],
  constructions: ["flanged base", "around base"],
  body: WALLS,
  folded: false,
  closes: { edges: 0, byDefault: "none" },
  restsOn: "foot",
  options: [
    "closure",
    "construction",
    "flangeCard",
    "insideTurn",
    "coverStyle",
    "nestClearance",
    "lidConstruction",
    "lidDepth",
    "lidReveal",
    "lidClearance",
  ],
  assemble(item, settings) {
    const c = oneFace(settings);
    const inside = insideFor(item, settings);
    const front = inside[0] - 4 * c - settings.nestClearance;
    if (front <= 0)
      throw new InputError(
        "width",
        formatLengthWithUnit(item.width, settings.answerUnit),
        "give an item wider than the coverings and the clearance beside the front wall",
        "or choose another enclosure for an item so narrow",
      );
    const box = dropFrontTray("box", inside, flanged(settings), trayMaterials(settings), front);
    const [, , depth] = outsideOf(box.tray);
    const { lid, nest } = lidOver(
      box.tray,
      {
        form: plainForm(settings.lidConstruction, settings),
        materials: trayMaterials(settings),
        depth: lidInsideDepth(depth, c, { ...settings, lidDepth: lidDepthOf(depth, settings) }),
        madeDepth: undefined,
      },
      settings,
    );
    return assembled(
      {
        kind: dropFrontBox,
        parts: [...box.parts, ...lid.parts],
        trays: [box.tray, lid.tray],
        holder: box.tray,
        nests: [nest],
        cover: {
          boards: box.front,
          spine: undefined,
          cutFirst: true,
          boardWidth: front,
          boardHeight: extent(box.front.panels[0]!, Z),
          boardCaliper: box.front.board.caliper,
          spineWidth: 0,
          joint: box.front.board.caliper,
          hingeLap: settings.hingeLap,
          liningHeight: front,
          covering: c,
        },
        base: plateOf(box.tray, box.base),
        top: plateOf(lid.tray, lid.base),
        cushion: item.cushion,
      },
      settings,
    );
  },
  blanks: (assembly, settings) => [...dropFrontBlanks(assembly, settings), ...trayBlanks(assembly.trays[1]!, settings)],
  cautions: NO_CAUTIONS,
  opened: (assembly) => [
    ...lidLifted(assembly, assembly.trays[1]!),
    ...openBodies([frontLaidDown(assembly.cover!.boards!.panels[0]!)]),
  ],
  apart(assembly) {
    const [box, lid] = traysApart(assembly, assembly.trays).groups;
    const front = piecesOf([assembly.cover!.boards!]);
    return { arranged: "above", groups: [{ ...box!, pieces: [...box!.pieces, ...front] }, lid!], between: [] };
  },
  order: (assembly, settings) => dropFrontOrder(assembly, flanged(settings), settings),
};

/** Deep enough to hold the front wall shut, not so deep that it must be lifted far. From memory. */
const LID_DEPTH_MM: Mm = 30;
const LID_SHARE = 1 / 3;

function lidDepthOf(boxDepth: Mm, { lidDepth }: Settings): Mm | "full" {
  return lidDepth === "auto" ? Math.min(LID_DEPTH_MM, boxDepth * LID_SHARE) : lidDepth;
}

/** The foot of the front wall is level with the underside, so the walls never stand on the base. */
function flanged({ construction, ownOfRow }: Settings): boolean {
  if (construction === "on base" && ownOfRow.has("construction"))
    throw new InputError(
      "construction",
      '"on base"',
      "give flanged base or around base for a drop-front box",
      "its front wall stands beside the base",
    );
  return construction !== "around base";
}
