import type { Tray } from "../assembly";
import { extent, X, Y, Z } from "../space";
import type { Mm } from "../../measure/units";
import type { Settings } from "../../settings/schema";
import { half, run, runOf, stretch, type Blank, type Stretch } from "../blank";

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
  // Written out, not spread: this runs for every slipcase of a survey.
  const blank = (
    name: string,
    count: number,
    along: Run,
    across: Run,
    within: boolean,
    note: string,
    lines?: Lines,
  ) => ({
    name,
    tray: tray.name,
    material: lines === undefined ? ("covering" as const) : ("lining" as const),
    count,
    along: lengthOf(along),
    across: lengthOf(across),
    within,
    note,
    runAlong: typeof along === "number" ? undefined : along,
    runAcross: typeof across === "number" ? undefined : across,
    cutAway: undefined,
    slit: undefined,
    lines,
  });
  const lining = (name: string, count: number, along: Mm, across: Mm, face: Lines["face"]) =>
    blank(name, count, along, across, true, "line before assembly", { face, first: true });
  const panelAcross = outerDepth - PANEL_LESS_MM;
  return [
    blank("wrap", 1, wrapAlong, wrapAcross, false, "round back and sides; turn in at the mouth, head and tail"),
    blank("head panel", 2, panelAlong, panelAcross, true, "over head and tail; turn in at the mouth"),
    lining("side lining", 2, height, width, "floor"),
    lining("back wall lining", 1, height, depth, "wall"),
    lining("head wall lining", 2, width, depth, "wall"),
  ];
}

/** A length by itself, or what it is summed from. */
type Run = Mm | readonly Stretch[];

type Lines = NonNullable<Blank["lines"]>;

function lengthOf(run: Run): Mm {
  return typeof run === "number" ? run : runOf(run);
}
