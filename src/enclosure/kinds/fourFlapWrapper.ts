import { InputError } from "../../measure/errors";
import { formatLengthWithUnit } from "../../measure/formatLength";
import type { Mm } from "../../measure/units";
import type { Settings } from "../../settings/schema";
import { freePlay, roundedUp } from "../build/allowances";
import { assembled, type Assembly, type Tray } from "../assembly";
import { foldedStrip, type FoldedStrip } from "../build/foldedStrip";
import { NO_CAUTIONS, type Kind } from "../kind";
import { CLOSURE_HERE } from "../order";
import { panelsOf, type PlacedPart } from "../placedPart";
import { wholeDown } from "../part";
import type { RestingItem } from "../restingItem";
import { boundingBox, cuboid, X, Y, Z, type Cuboid, type Vec } from "../space";
import { openBodies, piecesOf, type OpenBody } from "../view";
import { wrapPath } from "../build/wrapPath";

/**
 * Two strips of card crossing under the item; the inner piece folds over it from head and tail, the outer piece from
 * spine and fore-edge.
 *
 *            +------+
 *            | flap |
 *     +------+------+------+
 *     | flap | base | flap |   outer piece, across
 *     +------+------+------+
 *            | flap |
 *            +------+          inner piece, head to tail
 */
export const fourFlapWrapper: Kind = {
  name: "four-flap wrapper",
  otherNames: ["phase wrapper", "wrapper"],
  trays: [],
  parts: ["inner piece", "outer piece"],
  coverings: [],
  constructions: [],
  body: () => "wrapper",
  folded: true,
  closes: { edges: 0, byDefault: "ties" },
  options: ["closure", "wrapperCard", "flaps", "flapRelief"],
  assemble(item, settings) {
    const k = settings.wrapperCard.caliper;
    const [width, height, depth] = wrapperInside(item, settings);
    const fractions = settings.flaps ?? FLAPS;
    const [longer, shorter] = [Math.max(...fractions), Math.min(...fractions)];
    const relief = settings.flapRelief;
    refuseRelief(relief, Math.min(width, height), settings);
    if (shorter * (Math.min(width, height) - relief) < k + LOSS_MM)
      throw new InputError(
        "flaps",
        fractions.join(" / "),
        `give fractions whose flaps are longer than ${formatLengthWithUnit(k + LOSS_MM, settings.answerUnit)}`,
        "or choose another enclosure for an item so narrow",
      );
    // Two flaps that overlap lie one on the other; the shorter folds first.
    const layer = longer + shorter > 1 ? k : 0;
    const flaps = { longer, shorter, relief };
    const sideways = middle(width, Math.min(INNER_LESS_MM, relief));
    const outerSideways = middle(height + 2 * k, 0);
    const inner = foldedStrip(wrapPath({ span: height, foot: -k / 2, over: depth + k / 2, layer, k, ...flaps }), k, {
      ...sideways,
      across: "y",
    });
    const overInner = depth + k + layer;
    const outer = foldedStrip(
      wrapPath({ span: width, foot: -1.5 * k, over: overInner + k / 2, layer, k, ...flaps }),
      k,
      { from: outerSideways.from - k, to: outerSideways.to - k, across: "x" },
    );
    const innerPiece = piece("inner piece", inner, sideways.to - sideways.from, settings);
    const outerPiece = piece("outer piece", outer, outerSideways.to - outerSideways.from, settings);
    const parts = [innerPiece, outerPiece];
    const tray: Tray = {
      name: "",
      openSpine: false,
      mouth: undefined,
      construction: undefined,
      rings: [],
      closedCorners: false,
      inside: cuboid(0, width, 0, height, 0, depth),
      outside: boundingBox(panelsOf(parts)),
      // Creases lie in mid-thickness, half a card outside at either end.
      spans: [
        { part: outerPiece, boards: 1, of: outerPiece },
        { part: innerPiece, boards: 1, of: innerPiece },
        { part: innerPiece, boards: 1, of: innerPiece },
      ],
      covering: 0,
      coveredFaces: [0, 0, 0],
      rim: k,
      tabs: 0,
      floor: 2 * k,
    };
    return assembled(
      {
        kind: fourFlapWrapper,
        parts,
        trays: [tray],
        holder: tray,
        cushion: item.cushion,
      },
      settings,
    );
  },
  blanks: () => [],
  cautions: NO_CAUTIONS,
  opened: outerFlat,
  apart: ({ parts }) => ({
    arranged: "above",
    groups: [{ pieces: piecesOf(parts), around: undefined, bed: [] }],
    between: [],
  }),
  order() {
    return [
      {
        text: "Cut both pieces with the grain along the creases; check that they are square.",
        parts: [],
        caution: "blade",
      },
      {
        text: "Crease each piece at its folds with a bone folder along a rule, on the inside; fold and press.",
        parts: [],
      },
      // A tie that goes round lies between the two bases.
      CLOSURE_HERE,
      {
        text: "Lay the inner piece across the outer, bases centred, grain crossing; glue base to base.",
        parts: ["inner piece", "outer piece"],
        caution: "adhesive",
      },
      {
        text: "Fold round the item: inner flaps first, the shorter first, then the outer flaps the same way.",
        parts: [],
      },
    ];
  },
};

/** One flap of each piece as long as its panel, one half as long. Common practice, no source. */
const FLAPS = [1, 0.5] as const;

/** How much narrower the inner piece is than its space, so that it does not bind between head and tail of the outer. */
const INNER_LESS_MM: Mm = 1;
/** The most that rounding to whole millimetres takes off the last flap. */
const LOSS_MM: Mm = 1;

/** @throws InputError naming `flap relief` when it leaves no flap */
function refuseRelief(relief: Mm, panel: Mm, { answerUnit: unit }: Settings): void {
  if (relief < panel) return;
  const shown = (size: Mm) => formatLengthWithUnit(size, unit);
  throw new InputError(
    "flap relief",
    shown(relief),
    `give none, or less than ${shown(panel)}, the shorter side of the panel`,
  );
}

/** A piece in the middle of a space: less by so much, then down to whole millimetres. */
function middle(space: Mm, less: Mm): { readonly from: Mm; readonly to: Mm } {
  const size = wholeDown(space - less);
  return { from: (space - size) / 2, to: (space + size) / 2 };
}

function wrapperInside(item: RestingItem, settings: Settings): Vec {
  const fit = freePlay(settings, "snug");
  const up = (size: Mm) => roundedUp(size, settings.roundTo);
  return [up(item.width + fit.x), up(item.height + fit.y), up(item.depth + fit.z)];
}

/** The inner piece folded over; the outer piece flat under it, its flaps at spine and fore-edge. */
function outerFlat({ parts }: Assembly): readonly OpenBody[] {
  const [inner, outer] = parts as readonly [PlacedPart, PlacedPart];
  const { min, max } = outer.panels[2] as Cuboid;
  const [, second, third] = outer.folds.alongLength as readonly [Mm, Mm, Mm, Mm];
  const start = (min[X] + max[X]) / 2 - (second + third) / 2;
  const body = cuboid(start, start + outer.length, min[Y], max[Y], min[Z], max[Z]);
  const creases = outer.folds.alongLength.map((at) => at / outer.length);
  return [...openBodies(inner.panels), { body, isItem: false, creases }];
}

/** Grain runs along the creases, across the piece's length. */
function piece(name: string, { length, folds, panels }: FoldedStrip, width: Mm, settings: Settings): PlacedPart {
  return {
    name,
    tray: "",
    role: "folded",
    material: "card",
    board: settings.wrapperCard,
    count: 1,
    panels,
    lengthAxis: undefined,
    widthAxis: undefined,
    grain: "along width",
    grainAxis: undefined,
    length,
    width,
    trim: 0,
    folds: { by: "crease", alongLength: folds, alongWidth: [] },
    corners: undefined,
  };
}
