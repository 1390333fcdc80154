import type { Settings } from "../../settings/schema";
import type { Tray } from "../assembly";
import { builtLike, liningFirst, trayCovering, trayOrder } from "../order";
import type { Step } from "../step";
import { trayBlanks } from "./trayBlanks";
import type { TrayForm } from "./trayBoards";

/**
 * All work on one tray: what is lined first, its boards, its covering and the linings that come after.
 *
 * @param model a tray of the same form that is built before it
 */
export function trayWork(tray: Tray, form: TrayForm, settings: Settings, model?: Tray): readonly Step[] {
  const blanks = trayBlanks(tray, settings);
  const boards = trayOrder(tray.name, form);
  return [
    ...liningFirst(tray, blanks),
    ...(model === undefined ? boards : builtLike(tray.name, model.name, boards)),
    ...trayCovering(tray, blanks),
  ];
}
