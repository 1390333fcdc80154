import { clamshellBox } from "./kinds/clamshellBox";
import { dropFrontBox } from "./kinds/dropFrontBox";
import { flapPortfolio } from "./kinds/flapPortfolio";
import { foldedClamshell } from "./kinds/foldedClamshell";
import { foldedTray } from "./kinds/foldedTray";
import { fourFlapWrapper } from "./kinds/fourFlapWrapper";
import type { Kind } from "./kind";
import { liddedBox } from "./kinds/liddedBox";
import { slipcase } from "./kinds/slipcase";
import { threeTrayBox } from "./kinds/threeTrayBox";
import { tray } from "./kinds/tray";

/** Every kind of enclosure, in the order in which they are listed. */
export const KINDS: readonly Kind[] = [
  tray,
  foldedTray,
  liddedBox,
  threeTrayBox,
  slipcase,
  clamshellBox,
  foldedClamshell,
  fourFlapWrapper,
  flapPortfolio,
  dropFrontBox,
];
