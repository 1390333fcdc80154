import { InputError } from "../../measure/errors";
import type { Mm } from "../../measure/units";
import type { Board } from "../../settings/readers";
import type { Fit, Settings } from "../../settings/schema";

/** Free play of the named fits. Common practice, no source. */
const FITS: Readonly<Record<string, Mm>> = { snug: 1, standard: 2, loose: 3 };

/** Differences below this are binary noise, not a size. */
const NOISE_MM: Mm = 1e-6;

/** The free play in width, height and depth. */
export function freePlay(
  settings: Settings,
  byKind: "snug" | "standard",
  widthByKind?: Mm,
): { readonly x: Mm; readonly y: Mm; readonly z: Mm } {
  const fit = settings.fit ?? byKind;
  return {
    x: settings.fitWidth === undefined && widthByKind !== undefined ? widthByKind : play(settings.fitWidth ?? fit),
    y: play(settings.fitHeight ?? fit),
    z: play(settings.fitDepth ?? fit),
  };
}

/** An inside size up to the rounding step; a step of 0 leaves it as it is. */
export function roundedUp(size: Mm, step: Mm): Mm {
  return step === 0 ? size : Math.ceil((size - NOISE_MM) / step) * step;
}

/** Down to the rounding step. */
export function roundedDown(size: Mm, step: Mm): Mm {
  return step === 0 ? size : Math.floor((size + NOISE_MM) / step) * step;
}

/** Covering on one face. */
export function oneFace(settings: Settings): Mm {
  return settings.coveringAllowance / 2;
}

/** The boards of a row whose boards are settled. */
export function wallBoardOf(settings: Settings): Board {
  return settled(settings.wallBoard, "wall board");
}

export function baseBoardOf(settings: Settings): Board {
  return settled(settings.baseBoard ?? settings.wallBoard, "base board");
}

export function caseBoardOf(settings: Settings): Board {
  return settings.caseBoard ?? wallBoardOf(settings);
}

function play(fit: Fit): Mm {
  return typeof fit === "number" ? fit : (FITS[fit] as Mm);
}

function settled(board: Board | "auto", argument: string): Board {
  if (board !== "auto") return board;
  throw new InputError(argument, '"auto"', "give a weight with auto", "or name a board or a caliper");
}
