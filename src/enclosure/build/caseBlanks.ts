import type { Case } from "../assembly";
import type { Settings } from "../../settings/schema";
import { half, run, runOf, stretch, type Blank } from "../blank";

export const CASE_BLANKS = ["case covering", "spine lining"] as const;

/**
 * Covering of a clamshell's case and the lining of its spine, which goes down into each joint and up again on to the
 * boards. Both of covering stock, grain parallel to the spine (common practice, no source).
 */
export function caseBlanks(cover: Case, settings: Settings): readonly Blank[] {
  const turnIn = settings.leftAuto.has("turnIn") ? Math.max(settings.turnIn, cover.leastTurnIn ?? 0) : settings.turnIn;
  const turn = half(turnIn, Math.min(cover.boardWidth, cover.boardHeight));
  const { boardWidth, boardHeight, joint, spineWidth } = cover;
  const coveringAlong = run(stretch("turn-in", turn), stretch("board", boardHeight), stretch("turn-in", turn));
  const coveringAcross = run(
    stretch("turn-in", turn),
    stretch("board", boardWidth),
    stretch("joint", joint),
    stretch("spine", spineWidth),
    stretch("joint", joint),
    stretch("board", boardWidth),
    stretch("turn-in", turn),
  );
  return [
    {
      name: "case covering",
      tray: "",
      material: "covering",
      count: 1,
      along: runOf(coveringAlong),
      across: runOf(coveringAcross),
      runAlong: coveringAlong,
      runAcross: coveringAcross,
      within: false,
      note: "over boards and spine; turn in all round",
      cutAway: undefined,
      mitred: cover.boardCaliper,
    },
    spineLining(cover),
  ];
}

/** The lining of a case's spine, of covering stock: down into each joint and up again on to the boards. */
export function spineLining({ boardWidth, boardCaliper: q, joint, spineWidth, hingeLap, liningHeight }: Case): Blank {
  const lap = half(hingeLap, boardWidth);
  const intoJoint = joint + 2 * q;
  const across = run(
    stretch("on board", lap),
    stretch("into joint", intoJoint),
    stretch("spine", spineWidth),
    stretch("into joint", intoJoint),
    stretch("on board", lap),
  );
  return {
    name: "spine lining",
    tray: "",
    material: "covering",
    count: 1,
    along: liningHeight,
    across: runOf(across),
    runAlong: undefined,
    runAcross: across,
    within: true,
    note: "down into each joint and up on to the boards",
    cutAway: undefined,
  };
}
