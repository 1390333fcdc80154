import fc from "fast-check";
import { roundedUp } from "../../src/enclosure/build/allowances";
import { panelsOf, type Assembly, type PlacedPart, type Tray } from "../../src/enclosure/assembly";
import { restingItem } from "../../src/enclosure/restingItem";
import { extent, X, Y, Z, type Axis, type Cuboid } from "../../src/enclosure/space";
import { InputError } from "../../src/measure/errors";
import type { Settings } from "../../src/settings/schema";
import { anyItem, anyShop, EVERY_STRUCTURE, RUNS } from "./everyEnclosure";

const NOISE = 1e-6;
const AXES: readonly Axis[] = [X, Y, Z];

/** What a setting may leave no room for on a small item: refused, never built wrong. */
const MAY_BE_REFUSED = ["lid reveal", "lid depth", "neck", "depth", "flaps"];

describe.each(EVERY_STRUCTURE.map((structure) => [structure.kind.name, structure.text, structure] as const))(
  "%s, %s",
  (_name, _text, { kind, settings }) => {
    test("holds together around any item", () => {
      let built = 0;
      fc.assert(
        fc.property(anyItem, anyShop, (item, shop) => {
          const inForce: Settings = { ...settings, ...shop };
          let assembly: Assembly;
          try {
            assembly = kind.assemble(restingItem(item, inForce), inForce);
          } catch (error) {
            if (error instanceof InputError && MAY_BE_REFUSED.includes(error.argument)) return;
            throw error;
          }
          built += 1;
          noTwoBoardsShareVolume(assembly);
          wallsTouchWhatTheyStandOn(assembly);
          insideHoldsTheItem(assembly, item, inForce);
          coveredTraysClearEachOther(assembly);
          nestedTraysHavePlay(assembly, inForce);
          noCornerGapsFromAbove(assembly);
          outsideIsTheBoundingBox(assembly);
        }),
        { numRuns: RUNS, seed: 20 },
      );
      expect(built).toBeGreaterThan(RUNS / 2);
    });
  },
);

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
    const own = parts.filter((part) => part.tray === tray.name && part.role !== "case");
    const beds = own.filter((part) => part.role === "base" || part.role === "card").flatMap((part) => part.panels);
    for (const ring of rings(own)) {
      for (const wall of ring) {
        if (!beds.some((bed) => touches(wall, bed))) fail("a wall stands on nothing", wall);
        const neighbours = ring.filter((other) => other !== wall && touches(wall, other)).length;
        const wanted = ring.length === 4 ? 2 : 1;
        if (neighbours < wanted) fail("a wall misses its neighbour at a corner", wall);
      }
    }
  }
}

/** Walls of one ring together: inner with inner, outer with outer. */
function rings(parts: readonly PlacedPart[]): readonly (readonly Cuboid[])[] {
  const walls = parts.filter((part) => part.role === "wall");
  return ["inner", "outer", undefined]
    .map((layer) =>
      walls
        .filter(({ name }) => (layer === undefined ? !/^(inner|outer) /.test(name) : name.startsWith(`${layer} `)))
        .flatMap((part) => part.panels),
    )
    .filter((ring) => ring.length > 0);
}

/** Item, coverings and fit are in; and no more than rounding beyond them. */
function insideHoldsTheItem(
  { holder, covering: c, kind }: Assembly,
  item: { height: number; width: number; depth: number },
  settings: Settings,
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
  const faces = { tray: [2, 2, 1], sleeve: [1, 2, 2], wrapper: [0, 0, 0] }[holder.shape];
  const play = typeof settings.fit === "number" ? settings.fit : { snug: 1, standard: 2, loose: 3 }[settings.fit!];
  const plays = holder.shape === "sleeve" ? [0, play, play] : [play, play, play];
  const tabs = kind === "folded tray" && settings.fold === "crease" ? 2 * holder.rim : 0;
  const wanted = [lies.width + tabs, lies.height, lies.depth].map(
    (size, axis) => size + (faces[axis] as number) * c + (plays[axis] as number),
  );
  AXES.forEach((axis) => {
    const size = extent(holder.inside, axis);
    if (Math.abs(size - roundedUp(wanted[axis]!, settings.roundTo)) > NOISE)
      fail("inside is not item + covering + fit", [axis, size, wanted]);
    if (size < wanted[axis]! - NOISE) fail("inside is too small", [axis, size, wanted]);
  });
}

/** Boards of different trays, and of the case, keep their distance when each is covered on every face. */
function coveredTraysClearEachOther({ parts, covering: c }: Assembly): void {
  const covered = parts.flatMap((part) =>
    part.panels.map((panel) => ({ body: part.role === "case" ? "case" : part.tray, panel: inflated(panel, c) })),
  );
  for (let i = 0; i < covered.length; i++)
    for (let j = 0; j < i; j++) {
      const [a, b] = [covered[i]!, covered[j]!];
      if (a.body !== b.body && overlaps(a.panel, b.panel)) fail("coverings of two trays meet", [a, b]);
    }
}

/** A tray inside another: at least the clearance in height and width together (a clamshell at the fore-edge alone). */
function nestedTraysHavePlay({ trays, covering: c, holder }: Assembly, settings: Settings): void {
  for (const outer of trays) {
    if (outer === holder || trays.length === 1) continue;
    const least = outer.name === "lid" && trays.length === 2 ? settings.lidClearance : settings.nestClearance;
    const play = (axis: Axis) => extent(outer.inside, axis) - extent(holder.outside, axis);
    const width = outer.openSpine ? play(X) - 2 * c : play(X) - 4 * c;
    if (width < least - NOISE || play(Y) - 4 * c < least - NOISE)
      fail("nested trays jam", [outer.name, width, play(Y)]);
    if (width > least + settings.roundTo + NOISE) fail("nested trays rattle", [outer.name, width]);
    if (outer.inside.min[Y] > holder.outside.min[Y] + NOISE || outer.inside.max[Y] < holder.outside.max[Y] - NOISE)
      fail("a nested tray lies outside", outer.name);
  }
  if (trays.length === 3 || (trays.length === 2 && holder.openSpine)) depthPlay(trays, holder, c, settings);
}

/** Lid floor over the holder's rim, both covered. */
function depthPlay(trays: readonly Tray[], holder: Tray, c: number, settings: Settings): void {
  const over = trays[trays.length - 1]!;
  const play = over.inside.max[Z] - c - (holder.outside.max[Z] + c);
  if (play < settings.nestClearance - NOISE) fail("no play in depth", [play, settings.nestClearance]);
}

/** Seen from above, every corner of every tray is closed: no point of its wall ring is left open. */
function noCornerGapsFromAbove({ parts, trays }: Assembly): void {
  const hair = 0.005;
  for (const tray of trays) {
    const own = parts.filter((part) => part.tray === tray.name && part.role !== "case").flatMap((part) => part.panels);
    const { min, max } = tray.outside;
    const xs = tray.openSpine ? [max[0] - hair] : [min[0] + hair, max[0] - hair];
    for (const x of xs)
      for (const y of [min[1] + hair, max[1] - hair])
        if (!own.some((panel) => within(x, panel, X) && within(y, panel, Y)))
          fail("a corner is open", [tray.name, x, y]);
  }
}

function outsideIsTheBoundingBox({ parts, covering: c, outside }: Assembly): void {
  const panels = [...panelsOf(parts)];
  AXES.forEach((axis) => {
    const low = Math.min(...panels.map((panel) => panel.min[axis])) - c;
    const high = Math.max(...panels.map((panel) => panel.max[axis])) + c;
    if (Math.abs(outside[axis] - (high - low)) > NOISE) fail("outside is not the bounding box", [axis, outside]);
  });
}

function overlaps({ min: a0, max: a1 }: Cuboid, { min: b0, max: b1 }: Cuboid): boolean {
  return (
    Math.min(a1[0], b1[0]) - Math.max(a0[0], b0[0]) > NOISE &&
    Math.min(a1[1], b1[1]) - Math.max(a0[1], b0[1]) > NOISE &&
    Math.min(a1[2], b1[2]) - Math.max(a0[2], b0[2]) > NOISE
  );
}

/** Face to face: no gap along one axis, and an area shared in the other two. */
function touches({ min: a0, max: a1 }: Cuboid, { min: b0, max: b1 }: Cuboid): boolean {
  let faces = 0;
  for (const axis of AXES) {
    const shared = Math.min(a1[axis], b1[axis]) - Math.max(a0[axis], b0[axis]);
    if (shared < -NOISE) return false;
    if (shared <= NOISE) faces += 1;
  }
  return faces === 1;
}

function within(at: number, panel: Cuboid, axis: Axis): boolean {
  return at >= panel.min[axis] && at <= panel.max[axis];
}

function inflated({ min, max }: Cuboid, c: number): Cuboid {
  return { min: [min[0] - c, min[1] - c, min[2] - c], max: [max[0] + c, max[1] + c, max[2] + c] };
}

function fail(what: string, seen: unknown): never {
  throw new Error(`${what}: ${JSON.stringify(seen)}`);
}
