import type { Mm } from "../measure/units";
import type { LoadedPlate } from "./plateSag";

/**
 * How far a base springs when its box is lifted lying flat, held at its walls: the walls are glued to the base, which
 * halves the sag of a plate that only rests on its edges, and a deep sag stiffens it.
 *
 *     w + 0.4 w^3 / t^2 = w0 / 2
 *
 * @param sag w0, of a plate that rests on its edges, small deflections
 * @param thickness t, of all that is glued together
 * @returns w, mm
 * Source: the form after the published simply supported plate with edges free to slide (NACA Report 737, from memory);
 * both constants from memory.
 */
export function springing(sag: Mm, thickness: Mm): Mm {
  // u^3 + p u = r with u = w / t, solved by its hyperbolic root: there is one, and nothing cancels.
  const p = 1 / STIFFENING;
  const r = (GLUED_SHARE * sag) / thickness / STIFFENING;
  const scale = Math.sqrt(p / 3);
  return thickness * 2 * scale * Math.sinh(Math.asinh(r / 2 / scale ** 3) / 3);
}

/**
 * A base may spring its short side over 80; one with a free edge, which spans that edge alone, the edge's length over 55.
 * Both from memory, set so that the starter guide's boards draw no caution where its rows have limits.
 */
export function springingAllowed({ spanX, spanY, freeEdge }: Pick<LoadedPlate, "spanX" | "spanY" | "freeEdge">): Mm {
  return freeEdge === "none" ? Math.min(spanX, spanY) / HELD_ALL_ROUND : spanY / HELD_ON_THREE_SIDES;
}

const HELD_ALL_ROUND = 80;
const HELD_ON_THREE_SIDES = 55;

/** The cube's share, from memory. */
const STIFFENING = 0.4;
/** What walls glued to a base leave of its sag, from memory. */
const GLUED_SHARE = 1 / 2;
