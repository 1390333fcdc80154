import type { Mm } from "../../measure/units";
import type { Board } from "../../settings/boards";
import type { Fit, Settings, SettledSettings } from "../../settings/schema";

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

export function baseBoardOf(settings: SettledSettings): Board {
  return settings.baseBoard ?? settings.wallBoard;
}

export function caseBoardOf(settings: SettledSettings): Board {
  return settings.caseBoard ?? settings.wallBoard;
}

function play(fit: Fit): Mm {
  return typeof fit === "number" ? fit : (FITS[fit] as Mm);
}
