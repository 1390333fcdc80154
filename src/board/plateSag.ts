import { InputError, shown } from "../measure/errors";
import type { Mm } from "../measure/units";
import { requireAboveZero } from "./requireAboveZero";

/** A rectangular board held up along its edges, with a weight spread evenly over it. */
export interface LoadedPlate {
  /** clear span in x */
  readonly spanX: Mm;
  /** clear span in y */
  readonly spanY: Mm;
  /** thickness of the board, or of boards glued together */
  readonly caliper: Mm;
  /** modulus of elasticity in x, GPa */
  readonly modulusX: number;
  /** modulus of elasticity in y, GPa */
  readonly modulusY: number;
  readonly loadKg: number;
  /** `x0`: the edge at x = 0, which runs along y, has no wall (the spine edge); `none`: a wall under every edge */
  readonly freeEdge: "none" | "x0";
  /** geometric mean of the board's two Poisson's ratios; 0.3 unless given */
  readonly poisson?: number;
}

/** Standard gravity, m/s2 (3rd CGPM, 1901). */
export const GRAVITY = 9.80665;

/** A megapascal is 1 N/mm2. */
export const MPA_PER_GPA = 1000;

/** The ratio that the published plate tables use; none was found for greyboard. */
export const POISSON = 0.3;

/**
 * How far a board sags under a weight spread evenly over it, at the point that sags most: the centre when all four
 * edges are supported, the middle of the free edge when one is not.
 *
 *     y = spanY  +-------------+        edges with a wall are simply supported
 *                :             |        : the free edge, when there is one
 *           x0   :             |
 *                :             |
 *     y = 0      +-------------+
 *               x = 0       x = spanX
 *
 * The board is orthotropic, each direction with Di = Ei t^3 / (12 (1 - nu^2)). The exact divisor is 1 - nu12 nu21, the
 * two being tied by nu12 / E1 = nu21 / E2, so one number, nu = sqrt(nu12 nu21), says all that the plate needs. With
 * Huber's twisting stiffness H = sqrt(D1 D2) the plate is then an isotropic plate of that nu, D = 1, in coordinates
 * stretched by Di^(-1/4): equation, free edge and all. Both series below are that plate's.
 *
 * @returns sag in mm, without creep
 * @throws InputError when a length or modulus is not above zero, the weight is below zero, or poisson is not 0 to 0.5
 * Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (chapters on supported rectangular plates and
 * on plates of anisotropic material); Huber's stiffness as given there. Free edge: derived, see `freeEdgeFactor`.
 */
export function plateSag(plate: LoadedPlate): Mm {
  const { spanX, spanY, caliper, modulusX, modulusY, loadKg, freeEdge, poisson = POISSON } = plate;
  requireAboveZero("span", spanX);
  requireAboveZero("span", spanY);
  requireAboveZero("caliper", caliper);
  requireAboveZero("modulus", modulusX);
  requireAboveZero("modulus", modulusY);
  if (!(loadKg >= 0 && loadKg < Infinity)) throw new InputError("weight", shown(loadKg), "give a weight in kg");
  if (!(poisson >= 0 && poisson <= LARGEST_POISSON)) {
    throw new InputError("poisson", shown(poisson), `give a ratio from 0 to ${LARGEST_POISSON}`);
  }

  const pressure = (loadKg * GRAVITY) / (spanX * spanY);
  const x = spanX / stiffness(modulusX, caliper, poisson) ** STRETCH;
  const y = spanY / stiffness(modulusY, caliper, poisson) ** STRETCH;
  return pressure * (freeEdge === "none" ? sagOnFourEdges(x, y) : sagOfFreeEdge(x, y, poisson));
}

const LARGEST_POISSON = 0.5;
const STRETCH = 1 / 4;

/** Each series stops at its first term below this share of its sum; signs alternate, so the rest is smaller still. */
const RELATIVE_ERROR = 1e-7;

/** Centre sag of a simply supported strip of span 1, D = 1, pressure 1: the sum of 4 / pi^5 m^5, signs alternating. */
const STRIP = 5 / 384;

/** The weight of the term 1 / m^5 in either series. */
const SERIES = 4 / Math.PI ** 5;

/** Plate stiffness of one direction, N mm. */
function stiffness(modulusGpa: number, caliper: Mm, poisson: number): number {
  return (modulusGpa * MPA_PER_GPA * caliper ** 3) / (12 * (1 - poisson ** 2));
}

/**
 * Navier's double series at the centre, its sum over the longer direction taken in closed form (the Levy form):
 *
 *     STRIP - 4 / pi^5  sum of  +-(u tanh u + 2) / (2 m^5 cosh u),  u = m pi long / (2 short),  m = 1, 3, 5 ...
 *
 * Five terms settle a square plate, where the double series needs hundreds.
 */
function sagOnFourEdges(x: number, y: number): number {
  const short = Math.min(x, y);
  const long = Math.max(x, y);
  const sum = alternating(STRIP, (m) => {
    const u = (m * Math.PI * long) / (2 * short);
    const decay = Math.exp(-u);
    const sech = (2 * decay) / (1 + decay * decay);
    return decay === 0 ? 0 : (-SERIES * (u * Math.tanh(u) + 2) * sech) / (2 * m ** 5);
  });
  return sum * short ** 4;
}

/** Levy's series at the middle of the free edge. */
function sagOfFreeEdge(x: number, y: number, poisson: number): number {
  const sum = alternating(0, (m) => (SERIES * freeEdgeFactor((m * Math.PI * x) / y, poisson)) / m ** 5);
  return sum * y ** 4;
}

/**
 * How much more a free edge sags than a strip that spans alone, for the wave sin(m pi y / spanY).
 *
 * With s measured from the opposite edge and k = m pi / spanY, the equation's roots are k and -k, each double, so that
 * w = F(ks) sin(ky), F = 1 - cosh + (ks / 2) sinh + C sinh + D ks cosh, where w = 0 and moment = 0 at s = 0 are met.
 * At s = spanX, with u = k spanX: no moment, F'' - nu F = 0, and no Kirchhoff shear, F''' - (2 - nu) F' = 0. (Of the
 * orthotropic plate D1 w_xx + D12 w_yy = 0 and D1 w_xxx + (D12 + 4 Dk) w_xyy = 0, where Huber's D12 = nu sqrt(D1 D2),
 * 2 Dk = (1 - nu) sqrt(D1 D2).) Solved by hand for F at the edge and divided by cosh u, nothing cancels or overflows.
 */
function freeEdgeFactor(u: number, poisson: number): number {
  const decay = Math.exp(-u);
  const sech = (2 * decay) / (1 + decay * decay);
  const uSech = decay === 0 ? 0 : u * sech;
  const oneLessSech = Math.expm1(-u) ** 2 / (1 + decay * decay);
  const tanh = Math.tanh(u);
  const bending = (3 - poisson) * tanh - (1 - poisson) * uSech;
  const resisting = (1 - poisson) * ((3 + poisson) * tanh + (1 - poisson) * uSech * sech);
  return (oneLessSech * bending) / resisting;
}

/** `start` plus the terms for m = 1, 3, 5 ..., their signs alternating, until they no longer count. */
function alternating(start: number, term: (m: number) => number): number {
  let sum = start;
  let sign = 1;
  for (let m = 1; ; m += 2) {
    const next = term(m);
    sum += sign * next;
    sign = -sign;
    if (!(Math.abs(next) > RELATIVE_ERROR * Math.abs(sum))) return sum;
  }
}
