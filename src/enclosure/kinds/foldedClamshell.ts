import { InputError } from "../../measure/errors";
import { formatLengthWithUnit } from "../../measure/formatLength";
import type { Mm } from "../../measure/units";
import type { Settings, SettledSettings } from "../../settings/schema";
import { assembled, type Assembly } from "../assembly";
import type { Blank } from "../blank";
import { freePlay, roundedUp } from "../build/allowances";
import { half, run, runOf, stretch } from "../blank";
import { creasedClamshell, spineAt } from "../build/creasedClamshell";
import { foldedClamshellOrder } from "../build/foldedClamshellOrder";
import { swung } from "../build/laidOpen";
import { openFoldedTray } from "../build/openFoldedTray";
import { sheetHolds } from "../build/sheetHolds";
import { WELL_OPTIONS, type Kind } from "../kind";
import { flatPart } from "../placedPart";
import type { RestingItem } from "../restingItem";
import { cuboid, extent, X, Y, Z, type Cuboid, type Vec } from "../space";
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
  options: ["closure", ...WELL_OPTIONS, "clamshellSpine", "nestClearance", "hingeLap"],
  assemble(item, settings) {
    const creased = settings.clamshellSpine === "creased" ? creasedOf(item, settings) : undefined;
    return creased ?? hingedOf(item, settings);
  },
  blanks: hingeStrips,
  cautions: hingedAfterAll,
  opened: (assembly) => {
    const { groups, between } = openFlat(assembly);
    return openBodies([...groups.flatMap(({ pieces }) => pieces), ...between].map(({ body }) => body));
  },
  apart: openFlat,
  order: foldedClamshellOrder,
};

/** Trays and spine from one blank; undefined where no sheet holds it, or the walls are too low to fold over. */
function creasedOf(item: RestingItem, settings: SettledSettings): Assembly | undefined {
  const inside = insideOf(item, settings, 0);
  const g = settings.nestClearance;
  if (inside[Z] < LEAST_FOLDED_OVER * settings.wallBoard.caliper) return undefined;
  const { blank, small, large } = creasedClamshell(inside, settings);
  if (!sheetHolds(blank, settings)) return undefined;
  return assembled(
    {
      kind: foldedClamshell,
      parts: [blank],
      trays: [small, large],
      holder: small,
      // One blank, so that nothing of it is measured first.
      nests: [{ inner: small, outer: large, play: [g, g, g], made: [undefined, undefined, undefined] }],
      cushion: item.cushion,
    },
    settings,
  );
}

/** Boards: what folds over stands beside tabs that end a board below the rim. */
const LEAST_FOLDED_OVER = 2;

/** What was asked for in one piece, and is not. */
function hingedAfterAll({ cover, holder }: Assembly, { clamshellSpine }: Settings): readonly string[] {
  if (clamshellSpine !== "creased" || cover === undefined) return [];
  const { board } = cover.spine!;
  const why =
    extent(holder.inside, Z) < LEAST_FOLDED_OVER * board.caliper
      ? "its walls are less than two boards high"
      : `no sheet of ${board.stock} holds it in one piece`;
  return [`spine hinged, not creased: ${why}`];
}

/** Clear space of the small tray. */
function insideOf(item: RestingItem, settings: SettledSettings, tabs: Mm): Vec {
  const up = (size: Mm) => roundedUp(size, settings.roundTo);
  const fit = freePlay(settings, "standard");
  return [up(item.width + fit.x + tabs), up(item.height + fit.y), up(item.depth + fit.z)];
}

function hingedOf(item: RestingItem, settings: SettledSettings): Assembly {
  const board = settings.wallBoard;
  const t = board.caliper;
  const g = settings.nestClearance;
  // Tabs lie inside the fore-edge wall, one board.
  const [width, height, depth] = insideOf(item, settings, t);
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
}

/** Cloth over the two gaps of a board's thickness beside the spine piece. */
function hingeStrips({ cover }: Assembly): readonly Blank[] {
  if (cover === undefined) return [];
  const { boardWidth, spineWidth, joint, hingeLap, liningHeight } = cover;
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

/** Both trays beside each other, the large one swung over; the spine flat between them. */
function openFlat({ parts, cover }: Assembly): Apart {
  const [first, second] = parts;
  const panels = piecesOf([first!]);
  const at = spineAt(first!);
  const [small, upright, large] =
    cover === undefined
      ? [panels.slice(0, at), panels[at]!, panels.slice(at + 1)]
      : [panels, piecesOf([cover.spine!])[0]!, piecesOf([second!])];
  const { min, max } = upright.body;
  const thick = extent(upright.body, X);
  const gap = cover?.joint ?? 0;
  const high = extent(upright.body, Z);
  const hinge = { across: 2 * gap + high, floor: min[Z] + thick, up: high - 2 * thick };
  const flat: Piece = { body: cuboid(-gap - high, -gap, min[Y], max[Y], min[Z], min[Z] + thick), part: upright.part };
  const group = (pieces: readonly Piece[]) => ({ pieces, around: undefined, bed: [] });
  const over = large.map(({ body, part }) => ({ body: swung(body, hinge), part }));
  // One blank stays together.
  return cover === undefined
    ? { arranged: "above", groups: [group([...small, flat, ...over])], between: [] }
    : { arranged: "beside", groups: [group(small), group(over)], between: [flat] };
}
