import type { Board } from "../../settings/boards";
import type { Settings } from "../../settings/schema";
import { baseBoardOf, freePlay, oneFace, roundedUp } from "../build/allowances";
import { assembled, plateOf, type Tray } from "../assembly";
import { CONSTRUCTIONS, NO_CAUTIONS, WALLS, type Kind } from "../kind";
import { CUT_BOARDS, SET_UP } from "../order";
import type { Step } from "../step";
import { along, boundingBox, cuboid, extent, moved, X, Y, Z, type Cuboid, type Vec } from "../space";
import { flatPart, lyingPart, panelsOf, type PartSpec, type PlacedPart } from "../placedPart";
import { openBodies, piecesOf } from "../view";
import { SLEEVE_BLANKS, sleeveBlanks } from "../build/sleeveBlanks";
import { caseBlanks, CASE_BLANKS } from "../build/caseBlanks";
import { chemiseFor, insideChemise, chemiseLining, chemiseOrder } from "../build/chemise";
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
  parts: ["side", "back wall", "head wall", "flange card", "chemise card", "chemise board", "chemise spine"],
  coverings: [...SLEEVE_BLANKS, ...CASE_BLANKS, "chemise lining"],
  constructions: CONSTRUCTIONS,
  body: WALLS,
  folded: false,
  options: ["construction", "through", "flangeCard", "chemise", "wrapperCard", "caseBoard", "joint", "hingeLap"],
  assemble(item, settings) {
    const wall = settings.wallBoard;
    const side = baseBoardOf(settings);
    const card = settings.flangeCard;
    const b = side.caliper;
    const construction = settings.construction ?? "on base";
    const onBase = construction === "on base";
    const flange = construction === "flanged base" ? card.caliper : 0;
    const chemise = chemiseFor(item, settings);
    const held: Vec = chemise?.size ?? [item.width, item.height, item.depth];
    const [width, height, depth] = slipcaseInside(held, settings);
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
    const sides = lyingPart(spec("side", "base", side), "spine", sheets(under, -b, depth, b));
    const backWall = flatPart(spec("back wall", "wall", wall), Y, Z, Y, ring.side as [Cuboid]);
    const headWall = flatPart(spec("head wall", "wall", wall), X, Z, X, ring.head as [Cuboid, Cuboid]);
    const parts: PlacedPart[] = [sides, backWall, headWall];
    if (flange > 0) {
      const trim = settings.cardTrim;
      const cards = sheets(ring.footprint, -b - flange, depth + b, flange);
      parts.push(
        lyingPart({ name: "flange card", tray: "", role: "card", material: "card", board: card, trim }, "spine", cards),
      );
    }
    const round = chemise?.parts([0, (height - held[Y]) / 2, (depth - held[Z]) / 2]) ?? [];
    const tray: Tray = {
      name: "",
      openSpine: true,
      mouth: X,
      construction,
      rings: [[backWall, headWall]],
      closedCorners: true,
      inside: cuboid(0, width, 0, height, 0, depth),
      outside: boundingBox(panelsOf(parts)),
      spans: [
        { part: sides, boards: onBase ? 1 : 0, of: backWall },
        { part: sides, boards: onBase ? 2 : 0, of: backWall },
        { part: backWall, boards: onBase ? 0 : 2, of: sides },
      ],
      covering: oneFace(settings),
      // At the back alone in width; on both walls and both sides.
      coveredFaces: [1, 2, 2],
      rim: wall.caliper,
      tabs: 0,
      wrapped: [held[X] - item.width, held[Y] - item.height, held[Z] - item.depth],
      floor: b + flange,
    };
    return assembled(
      {
        kind: slipcase,
        parts: [...parts, ...round],
        trays: [tray],
        holder: tray,
        cover: chemise?.cover(round),
        base: plateOf(tray, sides),
        top: plateOf(tray, sides),
        cushion: item.cushion,
      },
      settings,
    );
  },
  blanks: ({ holder, cover }, settings) => [
    ...sleeveBlanks(holder, settings),
    ...(cover === undefined ? [] : [...caseBlanks(cover, settings), chemiseLining(cover)]),
  ],
  cautions: NO_CAUTIONS,
  opened: ({ parts, holder }) => {
    const out = along(X, -DRAWN_OUT * extent(holder.inside, X));
    const round = panelsOf(chemiseParts(parts));
    const book = { body: moved(insideChemise(holder.inside, round), out), isItem: true, creases: [] };
    const drawnOut = round.map((panel) => moved(panel, out));
    return [...openBodies([...panelsOf(slipcaseParts(parts)), ...drawnOut]), book];
  },
  apart({ parts, holder, cover }) {
    const own = slipcaseParts(parts);
    const round = chemiseParts(parts);
    const group = (of: readonly PlacedPart[], around: Cuboid | undefined) => ({
      pieces: piecesOf(of),
      around,
      bed: [],
    });
    const groups = [group(own, holder.inside), group(round, cover === undefined ? undefined : holder.inside)];
    return { arranged: "above", groups: round.length === 0 ? groups.slice(0, 1) : groups, between: [] };
  },
  order(_assembly, settings) {
    const flanged = settings.construction === "flanged base";
    const lined = settings.lining !== "none";
    const [through, between] = settings.through === "head" ? ["head walls", "back wall"] : ["back wall", "head walls"];
    // Over the wall edges the walls that run through go first; beside them those that the sides match.
    const onBase = (settings.construction ?? "on base") === "on base";
    const [first, then] = onBase ? [through, between] : [between, through];
    const meets = onBase ? "between them, glued on three edges" : "over their ends";
    return [
      ...chemiseOrder(settings),
      CUT_BOARDS,
      SET_UP,
      ...(flanged
        ? [
            {
              text: "Glue each side to the middle of its larger flange card, the grain of both the same way; weight it flat until dry.",
              parts: ["side", "flange card"],
              caution: "adhesive",
            } as const,
          ]
        : []),
      ...(lined
        ? [
            {
              text: "Line the inside faces of sides and walls before assembly, with a dry adhesive; press at once, flat until dry.",
              parts: ["side lining", "back wall lining", "head wall lining"],
              caution: "adhesive",
            } as const,
          ]
        : []),
      {
        text: `Glue the ${first} to one side, then the ${then} ${meets}${lined ? "; keep the lined faces in" : ""}.`,
        parts: ["side", "back wall", "head wall"],
        caution: "adhesive",
      },
      {
        text: "Try the book before the second side goes on: it must slide without a push. Then glue the second side.",
        parts: [],
      },
      ...(flanged
        ? [
            {
              text: "When all is dry, trim the flange cards flush with the walls, with a thin knife.",
              parts: [],
              caution: "blade",
            } as const,
          ]
        : []),
      ...COVERING_STEPS,
    ];
  },
};

/** Without the chemise, which is folded or of case boards. */
function slipcaseParts(parts: readonly PlacedPart[]): readonly PlacedPart[] {
  return parts.filter(({ role }) => role !== "folded" && role !== "case");
}

function chemiseParts(parts: readonly PlacedPart[]): readonly PlacedPart[] {
  return parts.filter(({ role }) => role === "folded" || role === "case");
}

/** How far a book is drawn out of its slipcase, as a share of the width. */
const DRAWN_OUT = 0.4;

const COVERING_STEPS: readonly Step[] = [
  {
    text: "Glue the wrap round sides and back; turn it in at the mouth, then at head and tail.",
    parts: ["wrap"],
    caution: "adhesive",
  },
  { text: "Glue the head panels over head and tail, turned in at the mouth.", parts: ["head panel"] },
];

/** Inside of a slipcase: covered at the back alone in width; no play in width, so that the spine sits at the mouth. */
function slipcaseInside([wide, tall, thick]: Vec, settings: Settings): Vec {
  const c = oneFace(settings);
  const fit = freePlay(settings, "snug", 0);
  const up = (size: number) => roundedUp(size, settings.roundTo);
  return [up(wide + c + fit.x), up(tall + 2 * c + fit.y), up(thick + 2 * c + fit.z)];
}

/** Two sheets over one footprint, the first at z0, the second at z1. */
function sheets({ x0, x1, y0, y1 }: Footprint, z0: number, z1: number, thickness: number): [Cuboid, Cuboid] {
  return [cuboid(x0, x1, y0, y1, z0, z0 + thickness), cuboid(x0, x1, y0, y1, z1, z1 + thickness)];
}
