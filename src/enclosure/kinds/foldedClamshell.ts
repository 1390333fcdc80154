import { InputError } from "../../measure/errors";
import { formatLengthWithUnit } from "../../measure/formatLength";
import type { Mm } from "../../measure/units";
import { assembled, type Assembly } from "../assembly";
import type { Blank } from "../blank";
import { freePlay, roundedUp } from "../build/allowances";
import { half, run, runOf, stretch } from "../blank";
import { openFoldedTray } from "../build/openFoldedTray";
import { NO_CAUTIONS, WELL_OPTIONS, type Kind } from "../kind";
import { CLOSURE_HERE } from "../order";
import { flatPart } from "../placedPart";
import { cuboid, extent, X, Y, Z, type Cuboid } from "../space";
import { openBodies, piecesOf, type Apart, type Piece } from "../view";

/**
 * Two trays folded up from corrugated or folding board, bare, each open at the spine: the large one closes over the small
 * one. A piece of board stands against both spine edges, hinged with cloth.
 *
 *      _______________________
 *     | |  ___large tray_____ |     creases in mid-thickness; the tabs of the small tray lie inside its fore-edge wall,
 *     |s| |                 | |     those of the large tray outside
 *     | | |   small tray    | |
 *     |_|_|_________________|_|
 */
export const foldedClamshell: Kind = {
  name: "folded clamshell",
  otherNames: ["corrugated clamshell", "folding clamshell"],
  trays: ["small", "large"],
  parts: ["blank", "spine piece"],
  coverings: ["hinge strip"],
  constructions: [],
  body: () => "cut blank",
  folded: true,
  closes: { edges: 1, byDefault: "ties" },
  options: ["closure", ...WELL_OPTIONS, "nestClearance", "hingeLap"],
  assemble(item, settings) {
    const board = settings.wallBoard;
    const t = board.caliper;
    const g = settings.nestClearance;
    const up = (size: Mm) => roundedUp(size, settings.roundTo);
    const fit = freePlay(settings, "standard");
    // Tabs lie inside the fore-edge wall, one board.
    const [width, height, depth] = [up(item.width + fit.x + t), up(item.height + fit.y), up(item.depth + fit.z)];
    if (depth < t)
      throw new InputError(
        "depth",
        formatLengthWithUnit(item.depth, settings.answerUnit),
        `give an item whose walls are at least one board high (${formatLengthWithUnit(t, settings.answerUnit)})`,
        "or choose a wrapper or a portfolio for an item so thin",
      );
    const small = openFoldedTray("small", [width, height, depth], "inside", settings);
    const inside = [width + t + g, height + 2 * t + g, depth + g] as const;
    // Its rim stands one board above the underside of the small tray.
    const large = openFoldedTray("large", inside, "outside", settings, {
      at: [0, -t - g / 2, inside[2]],
      turnedOver: true,
    });
    const [long, stands] = [inside[1] + t, inside[2] + 2 * t];
    const from = height / 2 - long / 2;
    const standing: Cuboid = cuboid(-t, 0, from, from + long, -t, stands - t);
    const tall = long >= stands;
    const spine = flatPart(
      { name: "spine piece", tray: "", role: "case", material: "board", board, trim: 0 },
      tall ? Y : Z,
      tall ? Z : Y,
      Y,
      [standing],
    );
    return assembled(
      {
        kind: foldedClamshell,
        parts: [small.blank, large.blank, spine],
        trays: [small.tray, large.tray],
        holder: small.tray,
        // Its depth stops one board above the underside of the small tray.
        nests: [{ inner: small.tray, outer: large.tray, play: [g, g, g], made: [g, g, g - t] }],
        cover: {
          boards: undefined,
          spine,
          boardWidth: extent(large.tray.outside, X),
          boardHeight: extent(large.tray.outside, Y),
          boardCaliper: t,
          spineWidth: stands,
          joint: t,
          hingeLap: settings.hingeLap,
          liningHeight: long,
          covering: 0,
        },
        cushion: item.cushion,
      },
      settings,
    );
  },
  blanks: hingeStrips,
  cautions: NO_CAUTIONS,
  opened: (assembly) => {
    const { groups, between } = openFlat(assembly);
    return openBodies([...groups.flatMap(({ pieces }) => pieces), ...between].map(({ body }) => body));
  },
  apart: openFlat,
  order: (_assembly, { covering }) => [
    {
      text: "Cut the small blank square, with the flutes parallel to the spine; then the corners and tabs as listed.",
      parts: [],
      caution: "blade",
    },
    {
      text: "Crease the small blank at its folds along a rule with a bone folder, on the inside; fold the walls up and the tabs inside the fore-edge wall, and glue the tabs.",
      parts: ["small blank"],
      caution: "adhesive",
    },
    { text: "Measure the small tray before the large blank is cut: the large tray is made to it.", parts: [] },
    {
      text: "Cut, crease and fold the large blank in the same way, with its tabs outside the fore-edge wall, and glue the tabs.",
      parts: ["large blank"],
      caution: "blade",
    },
    { text: "Close the large tray over the small one, dry: it must slide on without a push.", parts: [] },
    {
      text: `Lay small tray, spine piece and large tray flat in a row, outsides up, a board's thickness apart, and join them ${covering === "none" ? "with hinges of your own" : "with a hinge strip of cloth over each gap"}.`,
      parts: ["spine piece", ...(covering === "none" ? [] : ["hinge strip"])],
      caution: "adhesive",
    },
    CLOSURE_HERE,
    { text: "When dry, close the box and check that it opens flat.", parts: [] },
  ],
};

/** Cloth over the two gaps of a board's thickness beside the spine piece. */
function hingeStrips({ cover }: Assembly): readonly Blank[] {
  const { boardWidth, spineWidth, joint, hingeLap, liningHeight } = cover!;
  const across = run(
    stretch("on tray", half(hingeLap, boardWidth)),
    stretch("gap", joint),
    stretch("on spine piece", half(hingeLap, spineWidth)),
  );
  return [
    {
      name: "hinge strip",
      tray: "",
      material: "covering",
      count: 2,
      along: liningHeight,
      across: runOf(across),
      within: false,
      note: "over the gap, outside",
      runAcross: across,
    },
  ];
}

/** Both trays beside each other, the large one swung over; the spine piece flat between them. */
function openFlat({ parts, cover }: Assembly): Apart {
  const [small, large] = parts;
  const { spineWidth, joint } = cover!;
  const [upright] = cover!.spine!.panels as [Cuboid];
  const [min, max] = [upright.min, upright.max];
  const floor = max[Z] - joint;
  const edge = 2 * joint + spineWidth;
  const swung = ({ body, part }: Piece): Piece => ({
    body: cuboid(
      -edge - body.max[X],
      -edge - body.min[X],
      body.min[Y],
      body.max[Y],
      floor - body.max[Z],
      floor - body.min[Z],
    ),
    part,
  });
  const flat = cuboid(-joint - spineWidth, -joint, min[Y], max[Y], min[Z], min[Z] + joint);
  const group = (pieces: readonly Piece[]) => ({ pieces, around: undefined, bed: [] });
  return {
    arranged: "beside",
    groups: [group(piecesOf([small!])), group(piecesOf([large!]).map(swung))],
    between: [{ body: flat, part: cover!.spine! }],
  };
}
