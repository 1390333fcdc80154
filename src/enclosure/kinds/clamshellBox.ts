import { formatLengthWithUnit } from "../../measure/formatLength";
import type { Mm } from "../../measure/units";
import type { Board } from "../../settings/boards";
import type { Settings } from "../../settings/schema";
import { caseBoardOf, oneFace, roundedUp } from "../build/allowances";
import { assembled, plateOf, type Assembly, type Case } from "../assembly";
import { ARRANGED, CONSTRUCTIONS, DIVIDERS, WALLS, WELL_OPTIONS, type Kind } from "../kind";
import { CLOSURE_HERE, CUT_BOARDS, SET_UP } from "../order";
import type { Step } from "../step";
import { flatPart, lyingPart, type PartSpec, type PlacedPart } from "../placedPart";
import { cuboid, extent, Y, Z, type Cuboid } from "../space";
import { openBodies, type Apart } from "../view";
import { insideFor, trayMaterials } from "./tray";
import { caseBlanks, CASE_BLANKS } from "../build/caseBlanks";
import { jointOf, leastJoint, standOffOf } from "../build/joint";
import { divided } from "../build/dividers";
import { trayWork } from "../build/trayWork";
import { laidOpen } from "../build/laidOpen";
import { OPEN_TRAY_BLANKS, trayBlanks } from "../build/trayBlanks";
import { outsideOf, trayBoards, type TrayForm } from "../build/trayBoards";

/**
 * Two three-walled trays in a case: the large tray closes over the small one, which holds the item.
 *
 *     ___________________________   case board
 *      |  _____large tray______ |
 *     ||  |                   | |
 *     ||  |    small tray     | |   case spine at the left, standing off by the joint
 *      |__|___________________|_|
 *     ___________________________   case board
 */
export const clamshellBox: Kind = {
  name: "clamshell box",
  otherNames: ["drop-spine box", "drop spine box", "clamshell"],
  trays: ["small", "large"],
  parts: ["base", "fore-edge wall", "head wall", "flange card", "case board", "case spine", ...DIVIDERS],
  coverings: [...OPEN_TRAY_BLANKS, ...CASE_BLANKS],
  constructions: CONSTRUCTIONS,
  body: WALLS,
  folded: false,
  closes: { edges: 1, byDefault: "none" },
  options: [
    "closure",
    ...WELL_OPTIONS,
    ...ARRANGED,
    "construction",
    "through",
    "flangeCard",
    "insideTurn",
    "liningOrder",
    "coverStyle",
    "nestClearance",
    "caseBoard",
    "square",
    "joint",
    "hingeLap",
  ],
  assemble(item, settings) {
    const c = oneFace(settings);
    const g = settings.nestClearance;
    const up = (size: Mm) => roundedUp(size, settings.roundTo);
    const form = clamshellForm(settings);
    const materials = trayMaterials(settings);
    const small = divided(trayBoards("small", insideFor(item, settings), form, materials), item, settings);
    const [width, height, depth] = outsideOf(small.tray);
    const inside = [up(width + 2 * c + g), up(height + 4 * c + g), up(depth + 2 * c + g)] as const;
    // Closed, both spine edges at x = 0.
    const large = trayBoards("large", inside, form, materials, {
      at: [
        0,
        small.tray.outside.min[Y] - (inside[1] - height) / 2,
        // Its rim, covered, rests on the covered case board, which lies 2c below the small tray.
        small.tray.outside.min[Z] + inside[2],
      ],
      turnedOver: true,
    });
    const [outerWidth, outerHeight, outerDepth] = outsideOf(large.tray);

    const board = caseBoardOf(settings);
    const q = board.caliper;
    const boardWidth = outerWidth + c + settings.square;
    const boardHeight = outerHeight + 2 * c + 2 * settings.square;
    const spineWidth = outerDepth + 4 * c;
    const joint = jointOf(q, c, settings, "the trays strike the spine");
    const standOff = standOffOf(joint, q);
    const head = large.tray.outside.min[Y] - c - settings.square;
    const back = small.tray.outside.min[Z] - 2 * c;
    const boards = lyingPart(caseSpec("case board", board), "spine", [
      cuboid(0, boardWidth, head, head + boardHeight, back - q, back),
      cuboid(0, boardWidth, head, head + boardHeight, back + spineWidth, back + spineWidth + q),
    ]);
    const spineBody = cuboid(-standOff, q - standOff, head, head + boardHeight, back, back + spineWidth);
    const spine = spinePart(board, spineBody);
    return assembled(
      {
        kind: clamshellBox,
        parts: [...small.parts, ...large.parts, boards, spine],
        trays: [small.tray, large.tray],
        holder: small.tray,
        nests: [{ inner: small.tray, outer: large.tray, play: [g, g, g], made: [g, 2 * c + g, g] }],
        cover: {
          boards,
          spine,
          boardWidth,
          boardHeight,
          boardCaliper: q,
          spineWidth,
          joint,
          hingeLap: settings.hingeLap,
          leastTurnIn: q + settings.wallBoard.caliper + settings.square + 2 * c + g,
          liningHeight: extent(large.tray.outside, Y),
          covering: c,
        },
        base: plateOf(small.tray, small.base, board),
        top: plateOf(large.tray, large.base, board),
        cushion: item.cushion,
      },
      settings,
    );
  },
  blanks: ({ trays, cover }, settings) => [
    ...trays.flatMap((tray) => trayBlanks(tray, settings)),
    ...caseBlanks(cover!, settings),
  ],
  cautions: ({ cover }, settings) => caseCautions(cover!, settings),
  opened(assembly) {
    const { groups, between } = openFlat(assembly);
    const pieces = [...groups.flatMap((group) => group.pieces), ...groups.flatMap(({ bed }) => bed), ...between];
    return openBodies(pieces.map(({ body }) => body));
  },
  apart: openFlat,
  order({ trays: [small, large] }, settings) {
    const form = clamshellForm(settings);
    return [
      CUT_BOARDS,
      SET_UP,
      ...trayWork(small!, form, settings),
      {
        text: "Measure the finished small tray before the large tray is cut: the large tray is made to it.",
        parts: [],
      },
      ...trayWork(large!, form, settings, small),
      settings.covering === "none" ? BARE_CASE : COVERED_CASE,
      {
        text: "Glue the spine lining over the spine, down into each joint and up on to the boards; rub the joints well.",
        parts: ["spine lining"],
      },
      CLOSURE_HERE,
      {
        text: "Close the case over both trays, dry, and check that it shuts and opens. Then glue the small tray to the back board, its spine edge at the board's, centred in height; under weight until dry the large tray to the front board in the same way.",
        parts: [],
        caution: "weight",
      },
    ];
  },
};

const COVERED_CASE: Step = {
  text: "Cut the case to the finished large tray. Glue the case boards and the case spine to the case covering, a joint apart; cut the corners and turn in head and tail, then the fore-edges.",
  parts: ["case board", "case spine", "case covering"],
  caution: "adhesive",
};

const BARE_CASE: Step = {
  text: "Cut the case to the finished large tray. Join the case boards and the case spine, a joint apart, with a hinge of your own.",
  parts: ["case board", "case spine"],
  caution: "adhesive",
};

function openFlat({ parts, cover, trays }: Assembly): Apart {
  const [small, large] = trays;
  return laidOpen(parts, cover!, small!, large!);
}

/** A joint that clears the trays by less than this will bind when the covering swells. Common practice, no source. */
const LEAST_JOINT_PLAY_MM: Mm = 0.5;

function caseCautions(
  { joint, boardCaliper: q, covering: c, leastTurnIn = 0 }: Case,
  { turnIn, leftAuto, covering, answerUnit: unit }: Settings,
): readonly string[] {
  const shown = (size: Mm) => formatLengthWithUnit(size, unit);
  const cautions: string[] = [];
  if (joint - leastJoint(q, c) < LEAST_JOINT_PLAY_MM)
    cautions.push(`joint of ${shown(joint)} leaves the trays hardly clear of the spine: it may bind`);
  if (turnIn < leastTurnIn && !leftAuto.has("turnIn") && covering !== "none")
    cautions.push(
      `turn-in of ${shown(turnIn)} leaves board bare beside the small tray: give ${shown(leastTurnIn)} or more`,
    );
  return cautions;
}

function clamshellForm(settings: Settings): TrayForm {
  return {
    construction: settings.construction ?? "around base",
    through: settings.through ?? "head",
    layers: 1,
    endCards: false,
    openSpine: true,
  };
}

function caseSpec(name: string, board: Board): PartSpec {
  return { name, tray: "", role: "case", material: "board", board, trim: 0 };
}

/** The spine stands across x; its grain runs with the boards'. */
function spinePart(board: Board, spine: Cuboid): PlacedPart {
  const tall = extent(spine, Y) >= extent(spine, Z);
  return flatPart(caseSpec("case spine", board), tall ? Y : Z, tall ? Z : Y, Y, [spine]);
}
