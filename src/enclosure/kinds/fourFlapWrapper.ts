import { InputError } from "../../measure/errors";
import { formatLengthWithUnit } from "../../measure/formatLength";
import type { Mm } from "../../measure/units";
import type { Settings } from "../../settings/schema";
import { freePlay, roundedUp } from "../build/allowances";
import { assembled, panelsOf, type PlacedPart, type Tray } from "../assembly";
import { foldedStrip, type FoldedStrip } from "../build/foldedStrip";
import type { Kind } from "../kind";
import type { RestingItem } from "../restingItem";
import { boundingBox, cuboid, type Vec } from "../space";

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
  constructions: [],
  boards: false,
  options: ["wrapperCard", "flaps"],
  assemble(item, settings) {
    const k = settings.wrapperCard.caliper;
    const [width, height, depth] = wrapperInside(item, settings);
    const [longer, shorter] = [Math.max(...settings.flaps), Math.min(...settings.flaps)];
    if (shorter * Math.min(width, height) < k)
      throw new InputError(
        "flaps",
        settings.flaps.join(" / "),
        `give fractions whose flaps are at least as long as the card is thick (${formatLengthWithUnit(k, settings.unit)})`,
        "or choose another enclosure for an item so narrow",
      );
    // Two flaps that overlap lie one on the other; the shorter folds first.
    const layer = longer + shorter > 1 ? k : 0;
    const inner = foldedStrip(
      wrapPath({ span: height, foot: -k / 2, over: depth + k / 2, layer, k, longer, shorter }),
      k,
      {
        from: 0,
        to: width,
        across: "y",
      },
    );
    const overInner = depth + k + layer;
    const outer = foldedStrip(
      wrapPath({ span: width, foot: -1.5 * k, over: overInner + k / 2, layer, k, longer, shorter }),
      k,
      { from: -k, to: height + k, across: "x" },
    );
    const parts = [piece("inner piece", inner, width, settings), piece("outer piece", outer, height + 2 * k, settings)];
    const tray: Tray = {
      name: "",
      shape: "wrapper",
      openSpine: false,
      inside: cuboid(0, width, 0, height, 0, depth),
      outside: boundingBox(panelsOf(parts)),
      rim: k,
      tabs: 0,
      floor: 2 * k,
    };
    return assembled({
      kind: "four-flap wrapper",
      parts,
      trays: [tray],
      holder: tray,
      cover: undefined,
      covering: 0,
      cushion: item.cushion,
    });
  },
  order() {
    return [
      { text: "Cut both pieces with the grain along the creases; check that they are square.", caution: "blade" },
      { text: "Crease each piece at its folds with a bone folder along a rule, on the inside; fold and press." },
      {
        text: "Lay the inner piece across the outer, bases centred, grain crossing; glue base to base.",
        caution: "adhesive",
      },
      { text: "Fold round the item: inner flaps first, the shorter first, then the outer flaps the same way." },
    ];
  },
};

function wrapperInside(item: RestingItem, settings: Settings): Vec {
  const fit = freePlay(settings, "snug");
  const up = (size: Mm) => roundedUp(size, settings.roundTo);
  return [up(item.width + fit.x), up(item.height + fit.y), up(item.depth + fit.z)];
}

/** The path of a strip around a span: up, over by the shorter flap first, the longer flap one layer higher. */
function wrapPath(wrap: {
  readonly span: Mm;
  readonly foot: Mm;
  readonly over: Mm;
  readonly layer: Mm;
  readonly k: Mm;
  readonly longer: number;
  readonly shorter: number;
}): readonly (readonly [Mm, Mm])[] {
  const { span, foot, over, layer, k, longer, shorter } = wrap;
  const [near, far] = [-k / 2, span + k / 2];
  return [
    [near + shorter * span, over],
    [near, over],
    [near, foot],
    [far, foot],
    [far, over + layer],
    [far - longer * span, over + layer],
  ];
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
    length,
    width,
    trim: 0,
    folds: { alongLength: folds, alongWidth: [] },
    corners: undefined,
  };
}
