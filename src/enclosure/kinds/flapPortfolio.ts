import { InputError } from "../../measure/errors";
import { formatLengthWithUnit } from "../../measure/formatLength";
import type { Mm } from "../../measure/units";
import type { Board } from "../../settings/boards";
import type { Settings } from "../../settings/schema";
import { assembled, type Assembly, type Tray } from "../assembly";
import { caseBoardOf, freePlay, oneFace, roundedUp } from "../build/allowances";
import { jointOf, standOffOf } from "../build/joint";
import { portfolioBlanks, PORTFOLIO_BLANKS } from "../build/portfolioBlanks";
import { portfolioOrder } from "../build/portfolioOrder";
import { laidFlat } from "../build/portfolioOpen";
import { NO_CAUTIONS, WALLS, type Kind } from "../kind";
import { flatPart, lyingPart, panelsOf, type PartSpec } from "../placedPart";
import { boundingBox, cuboid, X, Y, Z } from "../space";
import { piecesOf } from "../view";

/**
 * Two boards and a spine, with flaps on risers at head, tail and fore-edge: for things that lie flat. Everything hinges
 * on the edges of the back board.
 *
 *                      +-----------+
 *                      | head flap |
 *                      +-- riser --+
 *     +-----------+-+-+------------+-+------------+
 *     |   front   |s| |    back    |r| fore-edge  |
 *     |   board   |p| |    board   |i|    flap    |
 *     +-----------+-+-+------------+-+------------+
 *                      +-- riser --+
 *                      | tail flap |   (a head flap, by its name)
 *                      +-----------+
 */
export const flapPortfolio: Kind = {
  name: "flap portfolio",
  otherNames: ["portfolio", "portfolio case"],
  trays: [],
  parts: ["portfolio board", "portfolio spine", "head riser", "head flap", "fore-edge riser", "fore-edge flap"],
  coverings: PORTFOLIO_BLANKS,
  constructions: [],
  keptFlat: true,
  body: WALLS,
  folded: false,
  closes: { edges: 3, byDefault: "ties" },
  options: ["closure", "caseBoard", "flaps", "flapRelief", "joint", "hingeLap"],
  assemble(item, settings) {
    const [c, wall, board] = [oneFace(settings), settings.wallBoard, caseBoardOf(settings)];
    const [p, q] = [wall.caliper, board.caliper];
    const fit = freePlay(settings, "snug");
    const up = (size: Mm) => roundedUp(size, settings.roundTo);
    const [width, height] = [up(item.width + fit.x), up(item.height + fit.y)];
    // Between the covered back board and the covered flaps.
    const rise = up(item.depth + fit.z + 2 * c);
    const joint = jointOf(q, c, settings, "the risers press on the item", Math.max(p, q));
    const off = standOffOf(joint, q);
    const [headShare, foreEdgeShare] = flapShares(settings);
    // Their covered edges never meet.
    const headFlap = Math.min(headShare * relieved(height, "height", settings), (height - 2 * c) / 2);
    if (headFlap <= 0)
      throw new InputError(
        "height",
        formatLengthWithUnit(item.height, settings.answerUnit),
        "give an item higher than two thicknesses of covering",
        "or choose another enclosure for an item so small",
      );
    const foreEdgeFlap = foreEdgeShare * relieved(width, "width", settings);
    // The fore-edge flap lies on the head flaps, the front board on it; two coverings between each.
    const over = rise + p + 2 * c;
    const top = over + p + 2 * c;

    const spec = (name: string, of: Board): PartSpec => ({
      name,
      tray: "",
      role: "case",
      material: "board",
      board: of,
      trim: 0,
    });
    const boards = lyingPart(spec("portfolio board", board), "spine", [
      cuboid(0, width, 0, height, -q, 0),
      cuboid(0, width, 0, height, top, top + q),
    ]);
    const upright = height >= top;
    const spine = flatPart(spec("portfolio spine", board), upright ? Y : Z, upright ? Z : Y, Y, [
      cuboid(-off, q - off, 0, height, 0, top),
    ]);
    const long = width >= rise;
    // Opened flat, their height runs along the spine.
    const headRiser = flatPart(spec("head riser", wall), long ? X : Z, long ? Z : X, Z, [
      cuboid(0, width, -off, p - off, 0, rise),
      cuboid(0, width, height + off - p, height + off, 0, rise),
    ]);
    const headFlaps = lyingPart(spec("head flap", wall), "spine", [
      cuboid(0, width, 0, headFlap, rise, rise + p),
      cuboid(0, width, height - headFlap, height, rise, rise + p),
    ]);
    const tall = height >= over;
    const foreEdgeRiser = flatPart(spec("fore-edge riser", wall), tall ? Y : Z, tall ? Z : Y, Y, [
      cuboid(width + off - p, width + off, 0, height, 0, over),
    ]);
    const foreEdge = lyingPart(spec("fore-edge flap", wall), "spine", [
      cuboid(width - foreEdgeFlap, width, 0, height, over, over + p),
    ]);
    const parts = [boards, spine, headRiser, headFlaps, foreEdgeRiser, foreEdge];
    const holder: Tray = {
      name: "",
      openSpine: false,
      mouth: undefined,
      construction: undefined,
      rings: [],
      closedCorners: false,
      inside: cuboid(0, width, 0, height, 0, rise),
      outside: boundingBox(panelsOf(parts)),
      spans: [
        { part: boards, boards: 0, of: boards },
        { part: boards, boards: 0, of: boards },
        { part: headRiser, boards: 0, of: boards },
      ],
      covering: c,
      // On the back board and under the flaps; risers stand off the edges.
      coveredFaces: [0, 0, 2],
      rim: 0,
      tabs: 0,
      floor: q,
    };
    return assembled(
      {
        kind: flapPortfolio,
        parts,
        trays: [holder],
        holder,
        cover: {
          boards,
          spine,
          cutFirst: true,
          boardWidth: width,
          boardHeight: height,
          boardCaliper: q,
          spineWidth: top,
          joint,
          hingeLap: settings.hingeLap,
          liningHeight: height,
          covering: c,
        },
        cushion: item.cushion,
      },
      settings,
    );
  },
  blanks: portfolioBlanks,
  cautions: NO_CAUTIONS,
  opened: laidFlat,
  apart: ({ parts, holder }: Assembly) => ({
    arranged: "above",
    groups: [{ pieces: piecesOf(parts), around: holder.inside, bed: [] }],
    between: [],
  }),
  order: portfolioOrder,
};

/** Head and tail flaps meet in the middle, the fore-edge flap reaches over the whole. Common practice, no source. */
const FLAPS = [1 / 2, 1] as const;
/** Longer head and tail flaps would lie on each other. */
const LONGEST_HEAD_FLAP = 1 / 2;

function flapShares({ flaps, ownOfRow }: Settings): readonly [head: number, foreEdge: number] {
  if (flaps === undefined || flaps[0] <= LONGEST_HEAD_FLAP) return flaps ?? FLAPS;
  if (ownOfRow.has("flaps"))
    throw new InputError(
      "flaps",
      flaps.join(" / "),
      `the head and tail flaps of a portfolio are at most ${LONGEST_HEAD_FLAP} of it`,
      `give ${FLAPS.join(" / ")}: head and tail flaps / fore-edge flap`,
    );
  // In a settings sheet these are the flaps of a wrapper.
  return FLAPS;
}

/** What flaps may cover of a board. */
function relieved(size: Mm, direction: string, { flapRelief, answerUnit: unit }: Settings): Mm {
  if (flapRelief < size) return size - flapRelief;
  const shown = (length: Mm) => formatLengthWithUnit(length, unit);
  throw new InputError(
    "flap relief",
    shown(flapRelief),
    `give less than ${shown(size)}, the ${direction} of the board`,
  );
}
