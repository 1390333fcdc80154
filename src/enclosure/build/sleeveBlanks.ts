import type { Tray } from "../assembly";
import { extent, X, Y, Z } from "../space";
import type { Mm } from "../../measure/units";
import type { Settings } from "../../settings/schema";
import { half, run, runOf, stretch, type Blank } from "../blank";

/** How much narrower a head panel is than the face it covers, and how much it stands back from its back edge. */
const PANEL_LESS_MM: Mm = 4;
const PANEL_BACK_MM: Mm = 2;

export const SLEEVE_BLANKS = ["wrap", "head panel", "side lining", "back wall lining", "head wall lining"] as const;

/**
 * Covering of a slipcase: a wrap round back and sides, panels over head and tail, all turned in at the mouth; the inside
 * faces are lined before the boards are put together.
 *
 * Grain runs parallel to the spine, of walls along their length (common practice, no source).
 */
export function sleeveBlanks(tray: Tray, settings: Settings): readonly Blank[] {
  const [width, height, depth] = [extent(tray.inside, X), extent(tray.inside, Y), extent(tray.inside, Z)];
  const [outerWidth, outerHeight, outerDepth] = [
    extent(tray.outside, X),
    extent(tray.outside, Y),
    extent(tray.outside, Z),
  ];
  const mouthTurn = half(settings.turnIn, width);
  const endTurn = half(settings.turnIn, outerDepth);
  const wrapAlong = run(stretch("turn-in", endTurn), stretch("height", outerHeight), stretch("turn-in", endTurn));
  const wrapAcross = run(
    stretch("turn-in", mouthTurn),
    stretch("side", outerWidth),
    stretch("back", outerDepth),
    stretch("side", outerWidth),
    stretch("turn-in", mouthTurn),
  );
  const panelAlong = run(stretch("face", outerWidth - PANEL_BACK_MM), stretch("turn-in", mouthTurn));
  const covering = { tray: tray.name, material: "covering", count: 1, within: false, note: "" } as const;
  const lining = {
    ...covering,
    material: "lining",
    within: true,
    note: "line before assembly",
    lines: { face: "wall", first: true },
  } as const;
  return [
    {
      ...covering,
      name: "wrap",
      along: runOf(wrapAlong),
      across: runOf(wrapAcross),
      runAlong: wrapAlong,
      runAcross: wrapAcross,
      note: "round back and sides; turn in at the mouth, head and tail",
    },
    {
      ...covering,
      name: "head panel",
      count: 2,
      along: runOf(panelAlong),
      runAlong: panelAlong,
      across: outerDepth - PANEL_LESS_MM,
      within: true,
      note: "over head and tail; turn in at the mouth",
    },
    { ...lining, name: "side lining", count: 2, along: height, across: width, lines: { face: "floor", first: true } },
    { ...lining, name: "back wall lining", along: height, across: depth },
    { ...lining, name: "head wall lining", count: 2, along: width, across: depth },
  ];
}
