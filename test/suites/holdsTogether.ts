import fc from "fast-check";
import { roundedUp } from "../../src/enclosure/build/allowances";
import type { Assembly, Tray } from "../../src/enclosure/assembly";
import { panelsOf } from "../../src/enclosure/placedPart";
import { restingItem, type Item } from "../../src/enclosure/restingItem";
import { extent, X, Y, Z, type Axis, type Cuboid } from "../../src/enclosure/space";
import type { SettledSettings } from "../../src/settings/schema";
import { anyItem, anyShop, assemblyOf, RUNS, titled, type Structure } from "../enclosure/everyEnclosure";

const NOISE = 1e-6;
const AXES: readonly Axis[] = [X, Y, Z];

/** Every structure is put together around any item: the rules that hold for every assembly. */
export function holdsTogether(structures: readonly Structure[]): void {
  describe.each(titled(structures))("%s, %s", (_name, _text, { kind, settings }) => {
    test("holds together around any item", () => {
      let built = 0;
      fc.assert(
        fc.property(anyItem, anyShop, (item, shop) => {
          const inForce: SettledSettings = { ...settings, ...shop };
          const assembly = assemblyOf(kind, item, inForce);
          if (assembly === undefined) return;
          built += 1;
          holds(assembly, item, inForce);
        }),
        { numRuns: RUNS, seed: 20 },
      );
      expect(built).toBeGreaterThan(RUNS / 2);
    });
  });
}

/** Everything that is so of any assembly. */
export function holds(assembly: Assembly, item: Item, settings: SettledSettings): void {
  noTwoBoardsShareVolume(assembly);
  wallsTouchWhatTheyStandOn(assembly);
  insideHoldsTheItem(assembly, item, settings);
  coveredTraysClearEachOther(assembly);
  nestedTraysHavePlay(assembly, settings.roundTo);
  noCornerGapsFromAbove(assembly);
  outsideIsTheBoundingBox(assembly);
}

function noTwoBoardsShareVolume({ parts }: Assembly): void {
  const panels = [...panelsOf(parts)];
  for (let i = 0; i < panels.length; i++)
    for (let j = 0; j < i; j++)
      if (overlaps(panels[i]!, panels[j]!)) fail("two boards share volume", [panels[i], panels[j]]);
  for (const panel of panels)
    if (AXES.some((axis) => !(extent(panel, axis) > 0))) fail("a board without thickness", panel);
}

/** Every wall touches a base, card or side of its tray, and its neighbours at the corners. */
function wallsTouchWhatTheyStandOn({ parts, trays }: Assembly): void {
  for (const tray of trays) {
    const own = parts.filter((part) => part.tray === tray.name);
    const beds = own.filter((part) => !tray.rings.flat().includes(part)).flatMap((part) => part.panels);
    for (const ring of tray.rings.map(panelsOf)) {
      for (const wall of ring) {
        if (!beds.some((bed) => touches(wall, bed))) fail("a wall stands on nothing", wall);
        if (!tray.closedCorners) continue;
        const neighbours = ring.filter((other) => other !== wall && touches(wall, other)).length;
        const wanted = ring.length === 4 ? 2 : 1;
        if (neighbours < wanted) fail("a wall misses its neighbour at a corner", wall);
      }
    }
  }
}

/** Item, coverings and fit are in; and no more than rounding beyond them. */
function insideHoldsTheItem(
  { holder }: Assembly,
  item: { height: number; width: number; depth: number },
  settings: SettledSettings,
): void {
  const lies = restingItem(item, settings);
  const turned = {
    back: item,
    foot: { ...item, height: item.depth, depth: item.height },
    edge: { ...item, width: item.depth, depth: item.width },
  }[settings.restsOn];
  const { cushionBase, cushionSides, cushionTop } = settings;
  if (Math.abs(lies.height - turned.height - 2 * cushionSides) > NOISE) fail("cushioning of the sides", lies);
  if (Math.abs(lies.depth - turned.depth - cushionBase - cushionTop) > NOISE) fail("cushioning of the depth", lies);
  const play = typeof settings.fit === "number" ? settings.fit : { snug: 1, standard: 2, loose: 3 }[settings.fit!];
  const wanted = [lies.width + holder.tabs, lies.height, lies.depth].map(
    (size, axis) =>
      size +
      (holder.wrapped?.[axis] ?? 0) +
      holder.coveredFaces[axis]! * holder.covering +
      (axis === holder.mouth ? 0 : play),
  );
  AXES.forEach((axis) => {
    const size = extent(holder.inside, axis);
    if (Math.abs(size - roundedUp(wanted[axis]!, settings.roundTo)) > NOISE)
      fail("inside is not item + covering + fit", [axis, size, wanted]);
    if (size < wanted[axis]! - NOISE) fail("inside is too small", [axis, size, wanted]);
  });
}

/** Boards of different trays, and of the case, keep their distance when each is covered on every face. */
function coveredTraysClearEachOther({ parts, trays, cover }: Assembly): void {
  const bodies = parts.flatMap((part) => {
    // One blank may make up all trays.
    const tray = trays.find(({ name }) => name === part.tray) ?? trays[0]!;
    const body = part.role === "case" ? cover! : tray;
    return part.panels.map((panel) => ({
      body,
      panel: part.role === "case" ? inflated(panel, body.covering) : covered(panel, tray),
    }));
  });
  for (let i = 0; i < bodies.length; i++)
    for (let j = 0; j < i; j++) {
      const [a, b] = [bodies[i]!, bodies[j]!];
      if (a.body !== b.body && overlaps(a.panel, b.panel)) fail("coverings of two trays meet", [a.panel, b.panel]);
    }
}

/** A tray inside another, both covered: at least the play that it is said to need, and no more than rounding beyond. */
function nestedTraysHavePlay({ nests, trays, holder }: Assembly, roundTo: number): void {
  for (const tray of trays)
    if (tray !== holder && !nests.some(({ outer }) => outer === tray)) fail("a tray goes over nothing", tray.name);
  for (const { inner, outer, play } of nests) {
    const both = inner.covering + outer.covering;
    // Two trays open at the spine stand flush there.
    const faces = inner.openSpine && outer.openSpine ? 1 : 2;
    const width = extent(outer.inside, X) - extent(inner.outside, X) - faces * both;
    const height = extent(outer.inside, Y) - extent(inner.outside, Y) - 2 * both;
    if (width < play[X] - NOISE || height < play[Y] - NOISE) fail("nested trays jam", [outer.name, width, height]);
    if (width > play[X] + roundTo + NOISE) fail("nested trays rattle", [outer.name, width]);
    if (outer.inside.min[Y] > inner.outside.min[Y] + NOISE || outer.inside.max[Y] < inner.outside.max[Y] - NOISE)
      fail("a nested tray lies outside", outer.name);
    // The floor of what comes down over the other lies over its rim.
    const depth = outer.inside.max[Z] - inner.outside.max[Z] - both;
    if (play[Z] !== undefined && depth < play[Z] - NOISE) fail("no play in depth", [depth, play[Z]]);
  }
}

/** Seen from above, every corner of every tray is closed: no point of its wall ring is left open. */
function noCornerGapsFromAbove({ parts, trays }: Assembly): void {
  const hair = 0.005;
  for (const tray of trays) {
    if (!tray.closedCorners) continue;
    const own = panelsOf(parts.filter((part) => ["", tray.name].includes(part.tray) && part.role !== "case"));
    const { min, max } = tray.outside;
    const xs = tray.openSpine ? [max[0] - hair] : [min[0] + hair, max[0] - hair];
    for (const x of xs)
      for (const y of [min[1] + hair, max[1] - hair])
        if (!own.some((panel) => within(x, panel, X) && within(y, panel, Y)))
          fail("a corner is open", [tray.name, x, y]);
  }
}

function outsideIsTheBoundingBox({ parts, holder: { covering: c }, outside }: Assembly): void {
  const panels = [...panelsOf(parts)];
  AXES.forEach((axis) => {
    const low = Math.min(...panels.map((panel) => panel.min[axis])) - c;
    const high = Math.max(...panels.map((panel) => panel.max[axis])) + c;
    if (Math.abs(outside[axis] - (high - low)) > NOISE) fail("outside is not the bounding box", [axis, outside]);
  });
}

/** Plain comparisons, the likeliest way out first: a soak asks this a billion times. */
function overlaps(a: Cuboid, b: Cuboid): boolean {
  for (const axis of AXES) if (a.max[axis] - b.min[axis] <= NOISE || b.max[axis] - a.min[axis] <= NOISE) return false;
  return AXES.every((axis) => extent(a, axis) > NOISE && extent(b, axis) > NOISE);
}

/** Face to face: no gap along one axis, and an area shared in the other two. */
function touches(a: Cuboid, b: Cuboid): boolean {
  let faces = 0;
  for (const axis of AXES) {
    const [one, other] = [a.max[axis] - b.min[axis], b.max[axis] - a.min[axis]];
    if (one < -NOISE || other < -NOISE) return false;
    if (one <= NOISE || other <= NOISE) faces += 1;
  }
  return faces === 1;
}

function within(at: number, panel: Cuboid, axis: Axis): boolean {
  return at >= panel.min[axis] && at <= panel.max[axis];
}

/** Covered on every face, but for the underside of a tray that is glued into another, and for what it is glued to. */
function covered(panel: Cuboid, { covering: c, inside, outside, outsideShown, filled }: Tray): Cuboid {
  const { min, max } = inflated(panel, c);
  const isFloor = filled === true && panel.max[Z] < inside.min[Z] + NOISE;
  return {
    min: [min[0], min[1], outsideShown === undefined ? min[2] : Math.max(min[2], outside.min[Z])],
    max: [max[0], max[1], isFloor ? Math.min(max[2], inside.min[Z]) : max[2]],
  };
}

function inflated({ min, max }: Cuboid, c: number): Cuboid {
  return { min: [min[0] - c, min[1] - c, min[2] - c], max: [max[0] + c, max[1] + c, max[2] + c] };
}

function fail(what: string, seen: unknown): never {
  throw new Error(`${what}: ${JSON.stringify(seen)}`);
}
