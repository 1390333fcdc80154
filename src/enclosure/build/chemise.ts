import type { Mm } from "../../measure/units";
import type { Settings, SettledSettings } from "../../settings/schema";
import type { Case } from "../assembly";
import type { Blank } from "../blank";
import { flatPart, lyingPart, type PartSpec, type PlacedPart } from "../placedPart";
import type { RestingItem } from "../restingItem";
import { cuboid, moved, X, Y, Z, type Cuboid, type Vec } from "../space";
import type { Step } from "../step";
import { caseBoardOf, oneFace } from "./allowances";
import { jointOf, standOffOf } from "./joint";

/** A wrapper round a book, which goes into its slipcase with it. */
export interface Chemise {
  /** Closed round the book, covered: what the slipcase holds. */
  readonly size: Vec;
  /** Its parts, with the book's spine at x = 0, moved to their place in the slipcase. */
  readonly parts: (by: Vec) => readonly PlacedPart[];
  readonly cover: (parts: readonly PlacedPart[]) => Case | undefined;
}

/** The longest flap, and the share of the book's width that it takes. Common practice, no source. */
const FLAP_MM: Mm = 75;
const FLAP_SHARE = 1 / 3;

/**
 * A chemise of card: one piece, its flaps folded in at the fore-edge; or of board: two boards and a spine in covering.
 *
 *      ___________          ____________
 *     |  _________)        | __________     creases in mid-thickness; a fold back on itself is one crease
 *     | |_book____         |   book
 *     |___________)        |____________
 */
export function chemiseFor(item: RestingItem, settings: SettledSettings): Chemise | undefined {
  if (settings.chemise === "no") return undefined;
  return settings.chemise === "card" ? ofCard(item, settings) : ofBoard(item, settings);
}

function ofCard({ width, height, depth }: RestingItem, { wrapperCard: board }: SettledSettings): Chemise {
  const k = board.caliper;
  const flap = Math.min(FLAP_MM, width * FLAP_SHARE);
  const size: Vec = [width + 2 * k, height, depth + 4 * k];
  const sheet = (from: Mm, z: Mm) => cuboid(from, size[X], 0, height, z, z + k);
  const panels: readonly Cuboid[] = [
    sheet(size[X] - flap, k),
    sheet(k, 0),
    cuboid(0, k, 0, height, 0, size[Z]),
    sheet(k, size[Z] - k),
    sheet(size[X] - flap, size[Z] - 2 * k),
  ];
  const [cover, spine] = [width + k, depth + 3 * k];
  const folds = [flap, flap + cover, flap + cover + spine, flap + 2 * cover + spine];
  const piece = (by: Vec): PlacedPart => ({
    name: "chemise card",
    tray: "",
    role: "folded",
    material: "card",
    board,
    count: 1,
    panels: panels.map((panel) => moved(panel, by)),
    lengthAxis: undefined,
    widthAxis: undefined,
    grain: "along width",
    grainAxis: Y,
    length: 2 * (flap + cover) + spine,
    width: height,
    trim: 0,
    folds: { by: "crease", alongLength: folds, alongWidth: [] },
    corners: undefined,
  });
  return { size, parts: (by) => [piece(by)], cover: () => undefined };
}

function ofBoard({ width, height, depth }: RestingItem, settings: SettledSettings): Chemise {
  const [c, board, k] = [oneFace(settings), caseBoardOf(settings), settings.wrapperCard.caliper];
  const q = board.caliper;
  const joint = jointOf(q, c, settings, "the boards press on the book");
  const off = standOffOf(joint, q);
  const rise = depth + 2 * k + 4 * c;
  const spec = (name: string): PartSpec => ({ name, tray: "", role: "case", material: "board", board, trim: 0 });
  const lying = (z: Mm) => cuboid(c + off, c + off + width, c, c + height, z, z + q);
  const tall = height >= rise;
  const parts = (by: Vec): readonly PlacedPart[] => [
    lyingPart(spec("chemise board"), "spine", [moved(lying(c), by), moved(lying(c + q + rise), by)]),
    flatPart(spec("chemise spine"), tall ? Y : Z, tall ? Z : Y, Y, [
      moved(cuboid(c, c + q, c, c + height, c + q, c + q + rise), by),
    ]),
  ];
  return {
    size: [width + off + 2 * c, height + 2 * c, rise + 2 * q + 2 * c],
    parts,
    cover: ([boards, spine]) => ({
      boards,
      spine,
      cutFirst: true,
      boardWidth: width,
      boardHeight: height,
      boardCaliper: q,
      spineWidth: rise,
      joint,
      hingeLap: settings.hingeLap,
      liningHeight: height,
      covering: c,
    }),
  };
}

/** A book as large as the inside; in a chemise, what its spine and covers leave of it. */
export function insideChemise({ min, max }: Cuboid, round: readonly Cuboid[]): Cuboid {
  let [left, low, high] = [min[X], min[Z], max[Z]];
  const middle = (low + high) / 2;
  for (const panel of round)
    if (panel.min[Z] > middle) high = Math.min(high, panel.min[Z]);
    else if (panel.max[Z] < middle) low = Math.max(low, panel.max[Z]);
    else left = Math.max(left, panel.max[X]);
  return cuboid(left, max[X], min[Y], max[Y], low, high);
}

/** How much smaller a lining is than the board that it lies on. */
const LINING_LESS_MM: Mm = 4;

export function chemiseLining({ boardWidth, boardHeight }: Case): Blank {
  return {
    name: "chemise lining",
    tray: "",
    material: "lining",
    count: 2,
    along: boardHeight - LINING_LESS_MM,
    across: boardWidth - LINING_LESS_MM,
    within: true,
    note: "on the inside of the boards, over the turn-ins",
  };
}

/** It is made before its slipcase, which is made to it. */
export function chemiseOrder({ chemise, covering }: Settings): readonly Step[] {
  if (chemise === "no") return [];
  return [
    ...(chemise === "card" ? CARD : covering === "none" ? BARE : COVERED),
    { text: "Measure the book in its chemise before the slipcase is cut: it is made to both together.", parts: [] },
  ];
}

const CARD: readonly Step[] = [
  { text: "Cut the card for the chemise square, its grain parallel to the spine.", parts: [], caution: "blade" },
  {
    text: "Crease the chemise card at its folds along a rule with a bone folder; fold it round the book, flaps inside at the fore-edge.",
    parts: ["chemise card"],
  },
];

const CUT_CHEMISE: Step = {
  text: "Cut boards and spine of the book's wrapper, grain parallel to the spine.",
  parts: [],
  caution: "blade",
};

const LINED: Step = {
  text: "Glue the chemise linings to the insides of the boards; press flat until dry, open.",
  parts: ["chemise lining"],
};

const COVERED: readonly Step[] = [
  CUT_CHEMISE,
  {
    text: "Glue chemise boards and chemise spine to the case covering, a joint apart; turn in head and tail, then the fore-edges.",
    parts: ["chemise board", "chemise spine", "case covering"],
    caution: "adhesive",
  },
  {
    text: "Glue the spine lining over the spine, down into each joint and up on to the boards.",
    parts: ["spine lining"],
  },
  LINED,
];

const BARE: readonly Step[] = [
  CUT_CHEMISE,
  {
    text: "Glue chemise boards and chemise spine together with a hinge of your own, a joint apart.",
    parts: ["chemise board", "chemise spine"],
    caution: "adhesive",
  },
  LINED,
];
