import type { Case } from "../enclosure/assembly";
import type { Settings } from "../settings/schema";
import type { Blank } from "./blank";
import { half } from "./trayBlanks";

/**
 * Covering of a clamshell's case and the lining of its spine, which goes down into each joint and up again on to the
 * boards. Both of covering stock, grain parallel to the spine (common practice, no source).
 */
export function caseBlanks(cover: Case, settings: Settings): readonly Blank[] {
  const turn = half(settings.turnIn, Math.min(cover.boardWidth, cover.boardHeight));
  const lap = half(cover.hingeLap, cover.boardWidth);
  const blank = { tray: "", material: "covering", count: 1 } as const;
  return [
    {
      ...blank,
      name: "case covering",
      along: cover.boardHeight + 2 * turn,
      across: 2 * cover.boardWidth + 2 * cover.joint + cover.spineWidth + 2 * turn,
      within: false,
      note: "over boards and spine; turn in all round",
    },
    {
      ...blank,
      name: "spine lining",
      along: cover.liningHeight,
      across: cover.spineWidth + 2 * cover.joint + 4 * cover.boardCaliper + 2 * lap,
      within: true,
      note: "down into each joint and up on to the boards",
    },
  ];
}
