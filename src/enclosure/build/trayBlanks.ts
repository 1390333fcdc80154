import type { Tray } from "../assembly";
import { extent, X, Y, Z } from "../space";
import { nearestMark } from "../../measure/benchLength";
import type { Mm } from "../../measure/units";
import type { Settings } from "../../settings/schema";
import { dressOf } from "./trayDress";
import { wallLinings } from "./wallLinings";
import { half, run, runOf, stretch, type Blank, type CornerCut, type Stretch } from "../blank";

/** How much smaller a panel is than the outside face that it lies on, and a floor lining than the covered floor. */
const PANEL_LESS_MM: Mm = 4;
const LINING_LESS_MM: Mm = 1;

/** Names of the pieces that a tray of four walls may have, and one that is open at the spine. */
export const TRAY_BLANKS = [
  "wall strip",
  "base panel",
  "side wall lining",
  "head wall lining",
  "floor lining",
  "one-piece blank",
] as const;
export const OPEN_TRAY_BLANKS = [
  "wall strip",
  "spine-edge strip",
  "fore-edge wall lining",
  "head wall lining",
  "floor lining",
  "one-piece blank",
] as const;

/**
 * Covering and lining of a tray.
 *
 *     strip style, seen in section          turned in on the floor
 *        rim ____                                 |
 *       |    |  inside turn                  _____|
 *       |    |_______ <- turned in        T
 *       |    [_______  floor lining
 *       |____________
 *        T   <- turned in under the base, base panel over it
 *
 * Grain (common practice, no source): strips along their length, everything else with the base.
 */
export function trayBlanks(tray: Tray, settings: Settings): readonly Blank[] {
  const c = tray.covering;
  const [width, height, depth] = [extent(tray.inside, X), extent(tray.inside, Y), extent(tray.inside, Z)];
  const [outerWidth, outerHeight, outerDepth] = [
    extent(tray.outside, X),
    extent(tray.outside, Y),
    extent(tray.outside, Z),
  ];
  const dress = dressOf(tray, settings);
  const { floorTurn, footTurn, inside } = dress;
  const down = Math.min(inside, depth);
  const shownOutside = tray.outsideShown === undefined ? outerDepth : tray.outsideShown + settings.turnIn;
  const wall = run(
    stretch("outside", Math.min(shownOutside, outerDepth)),
    stretch("rim", tray.rim),
    stretch("inside", down),
    stretch("on floor", inside - down),
  );
  const wallRun = runOf(wall);
  const alongHeight = tray.openSpine || height >= width;
  const shown = (size: Mm) => nearestMark(size, settings.answerUnit);
  // Written out, not spread: this runs for every tray of every row.
  const panel = (name: string, x: Mm, y: Mm, note: string, lines?: Blank["lines"]): Blank => ({
    name,
    tray: tray.name,
    material: lines === undefined ? "covering" : "lining",
    count: 1,
    along: alongHeight ? y : x,
    across: alongHeight ? x : y,
    within: true,
    note,
    runAlong: undefined,
    runAcross: undefined,
    cutAway: undefined,
    slit: undefined,
    lines,
  });
  const linings = tray.filled === true ? [] : [...wallLinings(tray, dress, settings), floorLining()];
  if (settings.coverStyle === "one piece" && tray.outsideShown === undefined) {
    const tab = half(settings.turnIn, Math.min(outerWidth, outerHeight));
    const inward = [...wall].reverse();
    const spineEdge = run(stretch("on floor", floorTurn), stretch("spine edge", tray.floor));
    const x: readonly Stretch[] = [...(tray.openSpine ? spineEdge : inward), stretch("base", outerWidth), ...wall];
    const y: readonly Stretch[] = [...inward, stretch("base", outerHeight), ...wall];
    const [runAlong, runAcross] = alongHeight ? [y, x] : [x, y];
    // Tabs stand on the head walls; at an open spine both corners are kept.
    const [cutX, cutY] = [wallRun - tab, wallRun];
    const cutAway = {
      along: alongHeight ? cutY : cutX,
      across: alongHeight ? cutX : cutY,
      at: tray.openSpine ? "far across" : "all",
    } as const;
    const corner = `${shown(cutAway.along)} x ${shown(cutAway.across)}`;
    const note = `cut away the corners ${corner}, leaving tabs ${shown(tab)} wide`;
    return [strip(tray, "one-piece blank", runOf(runAlong), runAlong, runAcross, note, cutAway), ...linings];
  }
  const spineTurn = half(settings.turnIn, width);
  const around = tray.openSpine
    ? run(
        stretch("turn-in", spineTurn),
        stretch("head wall", outerWidth),
        stretch("fore-edge wall", outerHeight),
        stretch("head wall", outerWidth),
        stretch("turn-in", spineTurn),
      )
    : run(
        stretch("½ side wall", outerHeight / 2),
        stretch("head wall", outerWidth),
        stretch("side wall", outerHeight),
        stretch("head wall", outerWidth),
        stretch("½ side wall", outerHeight / 2),
        stretch("lap", half(settings.turnIn, Math.min(outerWidth, outerHeight))),
      );
  const hidden = tray.outsideShown !== undefined;
  const over = hidden ? wall : [...run(stretch("turn-in", footTurn)), ...wall];
  const under = hidden ? "" : ` ${shown(footTurn)} under the base,`;
  const note = `round the walls; turn in${under} ${shown(inside)} down inside`;
  const walls = strip(tray, "wall strip", runOf(around), around, over, note, undefined, inside);
  if (hidden) return [walls, ...linings];
  if (!tray.openSpine) {
    const [x, y] = [outerWidth - PANEL_LESS_MM, outerHeight - PANEL_LESS_MM];
    return [walls, panel("base panel", x, y, "under the base, over the turn-ins"), ...linings];
  }
  const edge = run(stretch("under base", footTurn), stretch("spine edge", tray.floor), stretch("on floor", floorTurn));
  return [
    walls,
    strip(tray, "spine-edge strip", outerHeight, undefined, edge, "over the spine edge of the base"),
    ...linings,
  ];

  /** Lined first the whole of the base between the walls, else what the turn-ins leave between the coverings. */
  function floorLining(): Blank {
    const less = dress.linedFirst ? 0 : 2 * c + LINING_LESS_MM;
    const words = dress.linedFirst ? "before assembly" : "on the floor, over the turn-ins";
    const lines = { face: "floor", first: dress.linedFirst } as const;
    return panel("floor lining", width - less, height - less, words, lines);
  }
}

function strip(
  tray: Tray,
  name: string,
  along: Mm,
  runAlong: readonly Stretch[] | undefined,
  runAcross: readonly Stretch[],
  note: string,
  cutAway?: CornerCut,
  slit?: Mm,
): Blank {
  return {
    name,
    tray: tray.name,
    material: "covering",
    count: 1,
    along,
    across: runOf(runAcross),
    within: false,
    note,
    runAlong,
    runAcross,
    cutAway,
    slit,
    lines: undefined,
  };
}
