import type { Mm } from "../../measure/units";
import type { Settings } from "../../settings/schema";
import type { Tray } from "../assembly";
import { half } from "../blank";
import { extent, X, Y, Z } from "../space";

/** How a tray is covered and lined inside. */
export interface TrayDress {
  /** Covering turned in on the floor, and under the base. */
  readonly floorTurn: Mm;
  readonly footTurn: Mm;
  /** Covering from the rim down inside, what lies on the floor included. */
  readonly inside: Mm;
  /** The covering leaves walls bare, so that they are lined. */
  readonly wallsLined: boolean;
  /** Walls and floor are lined before the boards are put together. */
  readonly linedFirst: boolean;
}

/** An inside deeper than this, or than this share of its short side, is hard to line when it stands. From memory. */
const DEEP_MM: Mm = 80;
const DEEP_SHARE = 1 / 2;
const NOISE_MM: Mm = 1e-6;

/** What is fixed in a tray hides its inside below the turn-in: that part is neither covered nor lined. */
export function dressOf(tray: Tray, settings: Settings): TrayDress {
  const [width, height, depth] = [extent(tray.inside, X), extent(tray.inside, Y), extent(tray.inside, Z)];
  const { turnIn, insideTurn, liningOrder, covering, lining } = settings;
  const short = Math.min(width, height);
  const floorTurn = half(turnIn, short);
  const footTurn = half(turnIn, Math.min(extent(tray.outside, X), extent(tray.outside, Y)));
  const filled = tray.filled === true;
  const lined = lining !== "none" && !filled;
  const deep = depth > DEEP_MM || depth > short * DEEP_SHARE;
  // Tabs are glued to the inside of walls, which stays bare until then.
  const first = lined && tray.tabs === 0 && (liningOrder === "before" || (liningOrder === "auto" && deep));
  const full = filled ? depth : depth + floorTurn;
  // A turn-in that reaches the floor leaves no wall to line.
  const usual = filled || (first && insideTurn === "auto" && turnIn < depth) ? Math.min(turnIn, depth) : full;
  const run = typeof insideTurn === "number" ? Math.min(insideTurn, full) : usual;
  const inside = covering === "none" ? 0 : run;
  const wallsLined = lined && inside < depth - NOISE_MM;
  return { floorTurn, footTurn, inside, wallsLined, linedFirst: first && wallsLined };
}
