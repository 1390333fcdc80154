import type { Mm } from "../../measure/units";
import type { SettledSettings } from "../../settings/schema";
import type { Nest, Tray } from "../assembly";
import { oneFace, roundedUp } from "./allowances";
import { outsideOf, trayBoards, type BuiltTray, type TrayForm, type TrayMaterials } from "./trayBoards";

/** What a lid is like where it is not made to its box. */
interface LidMaking {
  readonly form: TrayForm;
  readonly materials: TrayMaterials;
  /** Its inside depth. */
  readonly depth: Mm;
  /** What is added to the finished depth of the box for it; undefined where that is a choice. */
  readonly madeDepth: Mm | undefined;
}

/** A lid upside down over a covered box, with how the two fit together. */
export function lidOver(
  box: Tray,
  { form, materials, depth, madeDepth }: LidMaking,
  settings: SettledSettings,
): { readonly lid: BuiltTray; readonly nest: Nest } {
  const c = oneFace(settings);
  const clearance = settings.lidClearance;
  const [width, height] = outsideOf(box);
  const over = (size: Mm) => roundedUp(size + 4 * c + clearance, settings.roundTo);
  const [inWidth, inHeight] = [over(width), over(height)];
  const { min, max } = box.outside;
  const lid = trayBoards("lid", [inWidth, inHeight, depth], form, materials, {
    at: [min[0] - (inWidth - width) / 2, min[1] - (inHeight - height) / 2, max[2] + 2 * c],
    turnedOver: true,
  });
  const lap = 2 * c + clearance;
  const nest: Nest = {
    inner: box,
    outer: lid.tray,
    play: [clearance, clearance, undefined],
    made: [lap, lap, madeDepth],
  };
  return { lid, nest };
}
