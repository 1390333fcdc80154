import fc from "fast-check";
import { coveringParts } from "../../src/covering/partList";
import type { Assembly, Tray } from "../../src/enclosure/assembly";
import type { Part } from "../../src/enclosure/part";
import { extent, X, Y, Z, type Cuboid } from "../../src/enclosure/space";
import type { Settings, SettledSettings } from "../../src/settings/schema";
import { anyItem, anyShop, assemblyOf, titled, type Structure } from "../enclosure/everyEnclosure";

const RUNS = Number(process.env["SOAK_RUNS"] ?? 12);
const NOISE = 1e-6;
/** How much less than its face a piece within a face may be: its margin of 4 or 1, and the rounding down. */
const MOST_LESS = 5 + NOISE;

type Size = readonly [number, number];
const sorted = (a: number, b: number): Size => [Math.min(a, b), Math.max(a, b)];

const noSmaller = (part: Part, a: number, b: number): void => {
  const [small, large] = sorted(a, b);
  if (part.width < small - NOISE || part.length < large - NOISE)
    throw new Error(`${part.fullName} ${part.length} x ${part.width} does not cover ${large} x ${small}`);
};

const within = (part: Part, a: number, b: number, less = MOST_LESS): void => {
  const [small, large] = sorted(a, b);
  const fits = part.width <= small + NOISE && part.length <= large + NOISE;
  if (!fits || part.width < small - less || part.length < large - less)
    throw new Error(`${part.fullName} ${part.length} x ${part.width} does not lie within ${large} x ${small}`);
};

/** What each piece that several kinds share must cover, or lie within, by the tray as it stands. */
const CHECKS: Readonly<Record<string, (part: Part, tray: Tray, assembly: Assembly, settings: Settings) => void>> = {
  "wall strip": (part, tray, _, settings) => {
    const { outside, openSpine, rim, outsideShown } = tray;
    const [width, height, depth] = [extent(outside, X), extent(outside, Y), extent(outside, Z)];
    const around = openSpine ? 2 * width + height : 2 * (width + height);
    // Up the outside, where it shows, over the rim and down inside.
    noSmaller(part, around, Math.min(outsideShown ?? depth, depth) + rim + downInside(tray, settings));
  },
  "spine-edge strip": (part, { outside, floor }) => noSmaller(part, extent(outside, Y), floor),
  "base panel": (part, { outside }) => within(part, extent(outside, X), extent(outside, Y)),
  "floor lining": (part, { inside, covering }) => {
    const faces = part.note.startsWith("before") ? 0 : 2;
    within(part, extent(inside, X) - faces * covering, extent(inside, Y) - faces * covering);
  },
  "side wall lining": (part, { inside }) => alongWall(part, extent(inside, Y), inside),
  "fore-edge wall lining": (part, { inside }) => alongWall(part, extent(inside, Y), inside),
  "one-piece blank": (part, tray, _, settings) => {
    const { outside, openSpine, rim, floor } = tray;
    const up = extent(outside, Z) + rim + downInside(tray, settings);
    const across = openSpine ? extent(outside, X) + up + floor : extent(outside, X) + 2 * up;
    noSmaller(part, across, extent(outside, Y) + 2 * up);
  },
  wrap: (part, { outside }) => noSmaller(part, extent(outside, Y), 2 * extent(outside, X) + extent(outside, Z)),
  "head panel": (part, { outside, inside }, _, { turnIn }) =>
    within(part, extent(outside, X) + Math.min(turnIn, extent(inside, X) / 2), extent(outside, Z)),
  "side lining": (part, { inside }) => within(part, extent(inside, X), extent(inside, Y), 1),
  "back wall lining": (part, { inside }) => within(part, extent(inside, Y), extent(inside, Z), 1),
  "head wall lining": (part, { inside, mouth }) => {
    if (mouth === undefined) alongWall(part, extent(inside, X), inside);
    else within(part, extent(inside, X), extent(inside, Z), 1);
  },
  "case covering": (part, _, { cover }) =>
    noSmaller(part, cover!.boardHeight, 2 * cover!.boardWidth + 2 * cover!.joint + cover!.spineWidth),
  "spine lining": (part, _, { cover }) => {
    noSmaller(part, Math.floor(cover!.liningHeight), Math.floor(cover!.spineWidth + 2 * cover!.joint));
    // Its laps end on the boards.
    const open = cover!.spineWidth + 2 * cover!.joint + 4 * cover!.boardCaliper + cover!.boardWidth;
    within(part, cover!.liningHeight, open, Infinity);
  },
  "divider covering": onDivider,
  "cross divider covering": onDivider,
  "cushion base": (part, { inside }) => within(part, extent(inside, X), extent(inside, Y)),
  "cushion top": (part, { inside }) => within(part, extent(inside, X), extent(inside, Y)),
  "cushion side": (part, { inside }) => within(part, extent(inside, Y), extent(inside, Z), Infinity),
  "cushion head": (part, { inside }) => within(part, extent(inside, X), extent(inside, Z), Infinity),
};

/** Over the upper edge and down both faces. */
function onDivider(part: Part, _: Tray, { parts }: Assembly): void {
  const { length, width, board } = parts.find(({ name }) => `${name} covering` === part.name)!;
  within(part, length, 2 * width + board.caliper, 1);
}

/** Down to the floor; a turn-in alone where walls are lined first, or where another tray is glued in. */
function downInside({ inside, tabs, filled }: Tray, { turnIn, lining }: Settings): number {
  const depth = extent(inside, Z);
  const deep = depth > 80 || depth > Math.min(extent(inside, X), extent(inside, Y)) / 2;
  return filled === true || (deep && tabs === 0 && lining !== "none") ? Math.min(turnIn, depth) : depth;
}

/** A wall lining reaches from the floor, or from on it, to under or over the turn-in. */
function alongWall(part: Part, length: number, { min, max }: Cuboid): void {
  const [along, across] = part.grain === "along width" ? [part.width, part.length] : [part.length, part.width];
  if (along > length + 10 + NOISE || along < length - 3 - NOISE) throw new Error(`${part.fullName} is ${along} long`);
  if (across > max[Z] - min[Z] + 20 + NOISE) throw new Error(`${part.fullName} is ${across} high`);
}

/** Every covering, lining and cushion piece covers its face, or lies within it. */
export function coversItsFaces(structures: readonly Structure[]): void {
  describe.each(["strip", "one piece"] as const)("cover style %s", (coverStyle) => {
    test.each(titled(structures))(
      "%s, %s: each blank covers its face or lies within it, in whole millimetres",
      (_name, _text, { kind, settings }) => {
        let pieces = 0;
        let built = 0;
        fc.assert(
          fc.property(anyItem, anyShop, (item, shop) => {
            // A roll of any length: splitting has its own tests.
            const inForce: SettledSettings = { ...settings, ...shop, coverStyle, stock: [] };
            const assembly = assemblyOf(kind, item, inForce);
            if (assembly === undefined) return;
            built += 1;
            for (const part of coveringParts(assembly, inForce)) {
              pieces += 1;
              for (const size of [part.length, part.width])
                if (!(Number.isInteger(size) && size > 0)) throw new Error(`${part.fullName} is ${size}`);
              expect(part.length).toBeGreaterThanOrEqual(part.width);
              expect(part.count).toBeGreaterThan(0);
              const tray = assembly.trays.find(({ name }) => name === part.tray) ?? assembly.holder;
              const check = CHECKS[part.name];
              if (check !== undefined) check(part, tray, assembly, inForce);
              else if (part.material !== "closure" && !kind.coverings.includes(part.name))
                throw new Error(`nothing is known of a ${part.name}`);
            }
          }),
          { numRuns: RUNS, seed: 9 },
        );
        expect(built).toBeGreaterThan(RUNS / 3);
        // Cushions are of every kind; what covers and lines is of those that list it.
        expect(pieces).toBeGreaterThan(0);
      },
    );
  });
}
