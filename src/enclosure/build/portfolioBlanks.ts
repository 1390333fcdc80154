import type { Mm } from "../../measure/units";
import type { Settings } from "../../settings/schema";
import type { Assembly } from "../assembly";
import { half, run, runOf, stretch, type Blank } from "../blank";
import { extent, X, Y, Z, type Axis } from "../space";
import { spineLining } from "./caseBlanks";
import { portfolioParts } from "./portfolioOpen";

/** How much smaller a lining is than the board that it lies on. */
const LINING_LESS_MM: Mm = 4;

export const PORTFOLIO_BLANKS = [
  "case covering",
  "flap covering",
  "spine lining",
  "head riser lining",
  "fore-edge riser lining",
  "board lining",
  "head flap lining",
  "fore-edge flap lining",
] as const;

/**
 * Covering and lining of a portfolio: one piece over the boards from front to fore-edge flap, one over each riser and flap
 * at head and tail, cloth inside every joint, paper on every board.
 *
 * Everything with the grain parallel to the spine (common practice, no source).
 */
export function portfolioBlanks(assembly: Assembly, { turnIn }: Settings): readonly Blank[] {
  const { boardWidth: width, boardHeight: height, boardCaliper: q, joint, spineWidth, hingeLap } = assembly.cover!;
  const { headRiser, headFlap, foreEdgeRiser, foreEdgeFlap, flapJoint, flapCaliper: p } = portfolioParts(assembly);
  const size = (part: typeof headFlap, axis: Axis) => extent(part, axis);
  const [headRise, foreEdgeRise] = [size(headRiser, Z), size(foreEdgeRiser, Z)];
  const [headLong, foreEdgeLong] = [size(headFlap, Y), size(foreEdgeFlap, X)];
  const cloth = { tray: "", material: "covering", count: 1, within: false } as const;
  const paper = { ...cloth, material: "lining", within: true, note: "on the inside, over the turn-ins" } as const;

  const caseTurn = half(turnIn, Math.min(width, height, foreEdgeLong));
  const caseAlong = run(stretch("turn-in", caseTurn), stretch("board", height), stretch("turn-in", caseTurn));
  const caseAcross = run(
    stretch("turn-in", caseTurn),
    stretch("front board", width),
    stretch("joint", joint),
    stretch("spine", spineWidth),
    stretch("joint", joint),
    stretch("back board", width),
    stretch("joint", joint),
    stretch("riser", foreEdgeRise),
    stretch("joint", flapJoint),
    stretch("flap", foreEdgeLong),
    stretch("turn-in", caseTurn),
  );
  const flapTurn = half(turnIn, Math.min(width, headLong));
  const lap = (board: Mm) => half(hingeLap, board);
  const flapAlong = run(
    stretch("on board", lap(height)),
    stretch("joint", joint),
    stretch("riser", headRise),
    stretch("joint", flapJoint),
    stretch("flap", headLong),
    stretch("turn-in", flapTurn),
  );
  const flapAcross = run(stretch("turn-in", flapTurn), stretch("flap", width), stretch("turn-in", flapTurn));
  // Inside, a lining goes down into the joint and up again.
  const inside = (board: Mm, rise: Mm, flap: Mm) =>
    run(
      stretch("on board", lap(board)),
      stretch("into joint", joint + 2 * q),
      stretch("riser", rise),
      stretch("into joint", flapJoint + 2 * p),
      stretch("on flap", lap(flap)),
    );
  const headInside = inside(height, headRise, headLong);
  const foreEdgeInside = inside(width, foreEdgeRise, foreEdgeLong);
  return [
    {
      ...cloth,
      name: "case covering",
      along: runOf(caseAlong),
      across: runOf(caseAcross),
      runAlong: caseAlong,
      runAcross: caseAcross,
      mitred: q,
      note: "over boards, spine, fore-edge riser and flap; turn in all round",
    },
    {
      ...cloth,
      name: "flap covering",
      count: 2,
      along: runOf(flapAlong),
      across: runOf(flapAcross),
      runAlong: flapAlong,
      runAcross: flapAcross,
      mitred: p,
      note: "over riser and flap, lapped on to the back board; turn in the other edges",
    },
    spineLining(assembly.cover!),
    {
      ...cloth,
      name: "head riser lining",
      count: 2,
      along: runOf(headInside),
      across: width,
      within: true,
      runAlong: headInside,
      note: "down into each joint and up on to board and flap",
    },
    {
      ...cloth,
      name: "fore-edge riser lining",
      along: height,
      across: runOf(foreEdgeInside),
      within: true,
      runAcross: foreEdgeInside,
      note: "down into each joint and up on to board and flap",
    },
    { ...paper, name: "board lining", count: 2, along: height - LINING_LESS_MM, across: width - LINING_LESS_MM },
    {
      ...paper,
      name: "head flap lining",
      count: 2,
      along: headLong - LINING_LESS_MM,
      across: width - LINING_LESS_MM,
    },
    { ...paper, name: "fore-edge flap lining", along: height - LINING_LESS_MM, across: foreEdgeLong - LINING_LESS_MM },
  ];
}
