import type { Mm } from "../../measure/units";
import type { Settings } from "../../settings/schema";
import type { Assembly } from "../assembly";
import { half, run, runOf, stretch, type Blank, type Stretch } from "../blank";
import { extent, X, Y, Z } from "../space";

/** How much smaller a panel or a lining is than the face that it lies on. */
const PANEL_LESS_MM: Mm = 4;
const FLOOR_LESS_MM: Mm = 1;
/** How far the lining of the front wall stays below its rim; its foot shows when it lies open, so it is flush there. */
const BELOW_RIM_MM: Mm = 2;

export const DROP_FRONT_BLANKS = [
  "three-wall strip",
  "front-edge strip",
  "underside panel",
  "front covering",
  "front lining",
  "side wall lining",
  "head wall lining",
  "floor lining",
] as const;

/**
 * Covering and lining of the box: a strip round its three fixed walls, one over the front edge of the base, one over the
 * front wall that goes on under the base as its hinge. Walls and floor are lined before the boards are put together.
 *
 * Grain (common practice, no source): strips along their length, everything else with the base or along the hinge.
 */
export function dropFrontBlanks({ holder: tray, cover }: Assembly, settings: Settings): readonly Blank[] {
  const { turnIn, insideTurn, lining } = settings;
  const { boardWidth: frontWidth, boardHeight: frontHeight, boardCaliper: t, hingeLap, covering: c } = cover!;
  const [width, height, depth] = [extent(tray.inside, X), extent(tray.inside, Y), extent(tray.inside, Z)];
  const side = height + 2 * t;
  const back = width + 2 * t;
  const floorTurn = half(turnIn, Math.min(width, height));
  // Linings cover what a short turn-in leaves.
  const least = lining === "none" ? depth + floorTurn : half(turnIn, depth);
  const inside = typeof insideTurn === "number" && lining !== "none" ? Math.min(insideTurn, depth) : least;
  const cloth = { tray: tray.name, material: "covering", count: 1, within: false } as const;
  const paper = { ...cloth, material: "lining", within: true, note: "before assembly" } as const;
  const strip = (name: string, along: readonly Stretch[], across: readonly Stretch[], note: string): Blank => ({
    ...cloth,
    name,
    along: runOf(along),
    across: runOf(across),
    runAlong: along,
    runAcross: across,
    note,
  });
  const endTurn = half(turnIn, height);
  const frontTurn = half(turnIn, frontWidth);
  const tall = height >= width;
  const lap = half(hingeLap, height);
  const down = Math.min(inside, depth);
  // The lining goes under the turn-in, where there is one.
  const covered = settings.covering === "none" ? 0 : down;
  const lined = depth - covered + Math.min(turnIn / 2, covered);
  return [
    {
      ...strip(
        "three-wall strip",
        run(
          stretch("turn-in", endTurn),
          stretch("side wall", side),
          stretch("back wall", back),
          stretch("side wall", side),
          stretch("turn-in", endTurn),
        ),
        run(
          stretch("under base", half(turnIn, Math.min(side, back))),
          stretch("outside", depth + tray.floor),
          stretch("rim", t),
          stretch("inside", down),
          stretch("on floor", Math.max(0, inside - depth)),
        ),
        "round side and back walls; turn in at the front ends, under the base and over the rim",
      ),
      slit: inside,
    },
    strip(
      "front-edge strip",
      run(stretch("base", width)),
      run(stretch("under base", floorTurn), stretch("edge", tray.floor), stretch("on floor", floorTurn)),
      "over the front edge of the base",
    ),
    strip(
      "front covering",
      run(stretch("turn-in", frontTurn), stretch("front wall", frontWidth), stretch("turn-in", frontTurn)),
      run(
        stretch("under base", lap),
        stretch("hinge, left loose", 2 * c + t),
        stretch("front wall", frontHeight),
        stretch("rim", t),
        stretch("turn-in", half(turnIn, frontHeight)),
      ),
      "over the front wall; its lap goes under the base",
    ),
    {
      ...cloth,
      name: "underside panel",
      within: true,
      along: (tall ? height + t : back) - PANEL_LESS_MM,
      across: (tall ? back : height + t) - PANEL_LESS_MM,
      note: "under the base, over the turn-ins and the hinge",
    },
    { ...paper, name: "side wall lining", count: 2, along: height, across: lined },
    { ...paper, name: "head wall lining", along: width, across: lined, note: `${paper.note}; on the back wall` },
    {
      ...paper,
      name: "floor lining",
      along: (tall ? height : width) - 2 * c - FLOOR_LESS_MM,
      across: (tall ? width : height) - 2 * c - FLOOR_LESS_MM,
    },
    {
      ...paper,
      name: "front lining",
      along: frontWidth - PANEL_LESS_MM,
      across: frontHeight - BELOW_RIM_MM,
      note: "inside the front wall, flush with its foot, over the turn-ins",
    },
  ];
}
