import { InputError } from "../../measure/errors";
import { formatLengthWithUnit } from "../../measure/formatLength";
import type { Mm } from "../../measure/units";
import { oneFace } from "../build/allowances";
import { assembled, type Assembly, type Tray } from "../assembly";
import { NO_CAUTIONS, WELL_OPTIONS, type Kind } from "../kind";
import { longAxis, type Corners, type PlacedPart } from "../placedPart";
import { boundingBox, cuboid, X, Y, Z, type Cuboid } from "../space";
import { liningFirst, trayCovering } from "../order";
import { insideFor } from "./tray";
import { trayBlanks, TRAY_BLANKS } from "../build/trayBlanks";
import { wallRing } from "../build/wallRing";
import { openBodies, piecesOf, type OpenBody } from "../view";
import { jointStrips } from "../build/jointStrips";

/**
 * A tray folded up from one board.
 *
 *        +--+------+--+
 *        |  | head |  |     corners cut away; through walls a board longer at each end,
 *     +--+--+------+--+--+  or, creased, tabs on the head walls glued inside the side walls
 *     |     |      |     |
 *     |side | base |side |
 *     +--+--+------+--+--+
 *        |  | head |  |
 *        +--+------+--+
 */
export const foldedTray: Kind = {
  name: "folded tray",
  otherNames: ["scored tray"],
  trays: [],
  parts: ["blank", "joint strip"],
  coverings: TRAY_BLANKS,
  constructions: [],
  keptFlat: true,
  body: ({ fold }) => (fold === "crease" ? "creased blank" : "cut blank"),
  folded: true,
  options: [...WELL_OPTIONS, "through", "fold", "jointStrips", "insideTurn", "liningOrder", "coverStyle"],
  assemble(item, settings) {
    const board = settings.wallBoard;
    const t = board.caliper;
    const creased = settings.fold === "crease";
    const through = creased ? "side" : (settings.through ?? "side");
    if (creased && settings.through === "head" && settings.ownOfRow.has("through"))
      throw new InputError("through", '"head"', "give side with fold=crease", "the tabs are on the head walls");
    if (creased && settings.liningOrder === "before" && settings.ownOfRow.has("liningOrder"))
      throw new InputError(
        "lining order",
        '"before"',
        "give auto or after with fold=crease",
        "the tabs are glued to the inside of the side walls",
      );
    // Tabs lie inside the side walls, so they take a board on each side of the item.
    const tabs = creased ? 2 * t : 0;
    const [, height, depth] = insideFor(item, settings);
    const [width] = insideFor({ ...item, width: item.width + tabs }, settings);
    if (!creased && depth < t)
      throw new InputError(
        "depth",
        formatLengthWithUnit(item.depth, settings.answerUnit),
        `give an item whose walls are at least one board high (${formatLengthWithUnit(t, settings.answerUnit)})`,
        "or set fold=crease",
      );
    const tab = Math.min(settings.turnIn, depth, height / 2);
    const ring = wallRing({ x0: 0, x1: width, y0: 0, y1: height }, creased ? -t : 0, depth, t, {
      through,
      openSpine: false,
    });
    const base = cuboid(0, width, 0, height, -t, 0);
    const tabPanels = creased ? cornerTabs(width, height, depth, t, tab) : [];
    const panels: Cuboid[] = [base, ...ring.side, ...ring.head, ...tabPanels];

    const flap = creased ? depth + t / 2 : depth;
    const [middleWidth, middleHeight] = creased ? [width + t, height + t] : [width, height];
    const [x, y] = [middleWidth + 2 * flap, middleHeight + 2 * flap];
    const foldsX = [flap, flap + middleWidth];
    const foldsY = [flap, flap + middleHeight];
    const tall = y >= x;
    // The notch is a board narrower beside the through walls, which close the corner.
    const narrowAlongLength = (through === "side") === tall;
    const corners: Corners = creased
      ? { form: "tab", long: tab, high: depth, creasesApart: width - t }
      : {
          form: "notch",
          alongLength: narrowAlongLength ? flap - t : flap,
          alongWidth: narrowAlongLength ? flap : flap - t,
        };
    const blank: PlacedPart = {
      name: "blank",
      tray: "",
      role: "folded",
      material: creased ? "card" : "board",
      board,
      count: 1,
      panels,
      lengthAxis: undefined,
      widthAxis: undefined,
      grain: "along length",
      grainAxis: longAxis(base),
      length: tall ? y : x,
      width: tall ? x : y,
      trim: 0,
      folds: {
        by: creased ? "crease" : "cut",
        alongLength: tall ? foldsY : foldsX,
        alongWidth: tall ? foldsX : foldsY,
      },
      corners,
    };
    const tray: Tray = {
      name: "",
      openSpine: false,
      mouth: undefined,
      construction: undefined,
      rings: [],
      closedCorners: true,
      inside: cuboid(0, width, 0, height, 0, depth),
      outside: boundingBox(panels),
      // Cut part-way, a panel folds on its inner face, at the inside. A crease lies in mid-thickness, half a board
      // outside it, and a wall has but the one at its foot.
      spans: [
        { part: blank, boards: creased ? 1 : 0, of: blank },
        { part: blank, boards: creased ? 1 : 0, of: blank },
        { part: blank, boards: creased ? 1 / 2 : 0, of: blank },
      ],
      covering: oneFace(settings),
      coveredFaces: [2, 2, 1],
      rim: t,
      tabs,
      floor: t,
    };
    const strips = (settings.jointStrips ?? !creased) !== false;
    return assembled(
      {
        kind: foldedTray,
        parts: strips ? [blank, jointStrips(tray, settings)] : [blank],
        trays: [tray],
        holder: tray,
        cushion: item.cushion,
      },
      settings,
    );
  },
  blanks: ({ holder }, settings) => trayBlanks(holder, settings),
  cautions: NO_CAUTIONS,
  opened: nearWallsDown,
  apart: ({ parts }) => ({
    arranged: "above",
    groups: [{ pieces: piecesOf(parts), around: undefined, bed: [] }],
    between: [],
  }),
  order({ holder }, settings) {
    const creased = settings.fold === "crease";
    const strips = (settings.jointStrips ?? !creased) !== false;
    return [
      { text: "Cut the blank square, then the corners as listed.", parts: [], caution: "blade" },
      ...liningFirst(holder, trayBlanks(holder, settings)),
      creased
        ? { text: "Crease the blank at the folds along a rule, on the inside; fold up the walls.", parts: ["blank"] }
        : {
            text: "Cut part-way through the blank at the folds, on the outside, to about two thirds; fold up, away from the cut.",
            parts: ["blank"],
            caution: "blade",
          },
      creased
        ? {
            text: "Fold the tabs of the head walls and glue them inside the side walls.",
            parts: [],
            caution: "adhesive",
          }
        : { text: "Glue the ends of the walls together at the corners.", parts: [], caution: "adhesive" },
      ...(strips
        ? [{ text: "Glue a joint strip round each corner, half on either wall.", parts: ["joint strip"] }]
        : []),
      ...trayCovering(holder, trayBlanks(holder, settings)),
    ];
  },
};

/** The walls at spine and tail laid out flat beside the base, as before they are folded up. */
function nearWallsDown({ parts, holder: { inside, outside } }: Assembly): readonly OpenBody[] {
  const thick = inside.min[Z] - outside.min[Z];
  const floor = outside.min[Z];
  const bodies = piecesOf(parts).map(({ body: { min, max } }) => {
    const high = max[Z] - inside.min[Z];
    if (max[X] <= inside.min[X]) return cuboid(max[X] - high, max[X], min[Y], max[Y], floor, floor + thick);
    if (min[Y] >= inside.max[Y]) return cuboid(min[X], max[X], min[Y], min[Y] + high, floor, floor + thick);
    return { min, max };
  });
  return openBodies(bodies);
}

/** Tabs of the head walls, folded round and glued inside the side walls at the four corners. */
function cornerTabs(width: Mm, height: Mm, depth: Mm, t: Mm, length: Mm): readonly Cuboid[] {
  // Measured from the crease in mid-thickness of the head wall; what lies in the wall itself is the wall's.
  const reach = Math.max(length - t / 2, 0);
  if (reach === 0) return [];
  return [0, width - t].flatMap((x) => [
    cuboid(x, x + t, 0, reach, 0, depth),
    cuboid(x, x + t, height - reach, height, 0, depth),
  ]);
}
