import type { Board } from "../../settings/readers";
import type { Settings } from "../../settings/schema";
import { baseBoardOf, freePlay, oneFace, roundedUp, wallBoardOf } from "../build/allowances";
import { assembled, flatPart, lyingPart, panelsOf, type PartSpec, type PlacedPart, type Tray } from "../assembly";
import { CONSTRUCTIONS, type Kind } from "../kind";
import type { RestingItem } from "../restingItem";
import { CUT_BOARDS, type Step } from "../order";
import { boundingBox, cuboid, X, Y, Z, type Cuboid, type Vec } from "../space";
import { wallRing, type Footprint } from "../build/wallRing";

/**
 * Three walls between two sides, open at the spine of the book.
 *
 *          ______________
 *         |______________|   side
 *     mouth    book    | |   back wall
 *         |______________|   side
 */
export const slipcase: Kind = {
  name: "slipcase",
  otherNames: ["slip case"],
  trays: [],
  parts: ["side", "back wall", "head wall", "flange card"],
  constructions: CONSTRUCTIONS,
  boards: true,
  options: ["construction", "through", "flangeCard"],
  assemble(item, settings) {
    const wall = wallBoardOf(settings);
    const side = baseBoardOf(settings);
    const card = settings.flangeCard;
    const b = side.caliper;
    const construction = settings.construction ?? "on base";
    const onBase = construction === "on base";
    const flange = construction === "flanged base" ? card.caliper : 0;
    const [width, height, depth] = slipcaseInside(item, settings);
    const clear: Footprint = { x0: 0, x1: width, y0: 0, y1: height };
    const [foot, rim] = onBase ? [0, depth] : [-b, depth + b];
    const through = settings.through ?? "side";
    const ring = wallRing(clear, foot, rim, wall.caliper, { through, openSpine: true });
    const under = onBase ? ring.footprint : clear;

    const spec = (name: string, role: "base" | "wall", board: Board): PartSpec => ({
      name,
      tray: "",
      role,
      material: "board",
      board,
      trim: 0,
    });
    const parts: PlacedPart[] = [
      lyingPart(spec("side", "base", side), "spine", sheets(under, -b, depth, b)),
      flatPart(spec("back wall", "wall", wall), Y, Z, Y, ring.side as [Cuboid]),
      flatPart(spec("head wall", "wall", wall), X, Z, X, ring.head as [Cuboid, Cuboid]),
    ];
    if (flange > 0) {
      const trim = settings.cardTrim;
      const cards = sheets(ring.footprint, -b - flange, depth + b, flange);
      parts.push(
        lyingPart({ name: "flange card", tray: "", role: "card", material: "card", board: card, trim }, "spine", cards),
      );
    }
    const tray: Tray = {
      name: "",
      shape: "sleeve",
      openSpine: true,
      inside: cuboid(0, width, 0, height, 0, depth),
      outside: boundingBox(panelsOf(parts)),
      rim: wall.caliper,
      tabs: 0,
      floor: b + flange,
    };
    return assembled({
      kind: "slipcase",
      parts,
      trays: [tray],
      holder: tray,
      cover: undefined,
      covering: oneFace(settings),
      cushion: item.cushion,
    });
  },
  order(settings) {
    const flanged = settings.construction === "flanged base";
    const lined = settings.lining !== "none";
    const [through, between] = settings.through === "head" ? ["head walls", "back wall"] : ["back wall", "head walls"];
    return [
      CUT_BOARDS,
      ...(lined
        ? [
            {
              text: "Line the inside faces of sides and walls before assembly; press them flat and dry.",
              caution: "adhesive",
            } as const,
          ]
        : []),
      {
        text: `Glue the ${between} to one side, then the ${through}, which covers their ends${lined ? "; keep the lined faces in" : ""}.`,
        caution: "adhesive",
      },
      { text: "Try the book before the second side goes on: it must slide without a push. Then glue the second side." },
      ...(flanged
        ? [{ text: "Glue the flange cards over both sides, weight until dry, trim flush.", caution: "blade" } as const]
        : []),
      ...(settings.covering === "none" ? [] : COVERING_STEPS),
    ];
  },
};

const COVERING_STEPS: readonly Step[] = [
  {
    text: "Glue the wrap round sides and back; turn it in at the mouth, then at head and tail.",
    caution: "adhesive",
  },
  { text: "Glue the head panels over head and tail, turned in at the mouth." },
];

/** Inside of a slipcase: covered at the back alone in width; no play in width, so that the spine sits at the mouth. */
function slipcaseInside(item: RestingItem, settings: Settings): Vec {
  const c = oneFace(settings);
  const fit = freePlay(settings, "snug", 0);
  const up = (size: number) => roundedUp(size, settings.roundTo);
  return [up(item.width + c + fit.x), up(item.height + 2 * c + fit.y), up(item.depth + 2 * c + fit.z)];
}

/** Two sheets over one footprint, the first at z0, the second at z1. */
function sheets({ x0, x1, y0, y1 }: Footprint, z0: number, z1: number, thickness: number): [Cuboid, Cuboid] {
  return [cuboid(x0, x1, y0, y1, z0, z0 + thickness), cuboid(x0, x1, y0, y1, z1, z1 + thickness)];
}
