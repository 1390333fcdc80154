import type { Body } from "../enclosure/kind";
import { restingItem } from "../enclosure/restingItem";
import type { Mm } from "../measure/units";
import { BOARD_KINDS, CARD_KINDS, type GuideRow } from "../settings/boardGuide";
import type { Board, BoardMaterial } from "../settings/boards";
import { plainName } from "../settings/names";
import type { Settings } from "../settings/schema";
import { STARTER_GUIDE } from "../settings/starterGuide";
import { materialsIn } from "./itemMaterials";
import { weightOf, type ItemLoad } from "./itemWeight";
import { CALIPER_MATERIALS, isWithoutLimits, preparedGuide } from "./preparedGuide";
import { stockedBoard, type StockedBoard } from "./stockedBoard";

/** The board that the guide names for an item. */
export interface GuideAnswer {
  readonly board: Board;
  readonly row: GuideRow;
  /** Whether it is the board that the row asks for, or one in its place. */
  readonly how: StockedBoard["how"];
  /** The item is beyond every limit of the guide. */
  readonly beyondLimits: boolean;
  /** No weight is known, and one could change the answer. */
  readonly bySizeAlone: boolean;
}

/**
 * The board for an item by the board guide: the first row that covers it. Limits are inclusive; a row's weight counts only
 * where the item's weight is known.
 *
 * @param settings with the shop's guide, else the starter guide is used
 * @throws InputError when the guide names an unknown kind or material
 */
export function guideAnswer(itemLoad: ItemLoad, body: Body, settings: Settings): GuideAnswer {
  const { row, rows, kg, isCovering } = foundRow(itemLoad, body, settings);
  const { board, how } = boardOfRow(row, itemLoad, body, settings);
  return {
    board,
    how,
    row,
    beyondLimits: isWithoutLimits(row) && rows.length > 1,
    bySizeAlone:
      kg === undefined &&
      row.weightKg !== undefined &&
      rows.some((each) => each.askedText !== row.askedText && isCovering(each)),
  };
}

/** The board of that answer alone: what every row of a survey asks for. */
export function guideBoard(itemLoad: ItemLoad, body: Body, settings: Settings): Board {
  return boardOfRow(foundRow(itemLoad, body, settings).row, itemLoad, body, settings).board;
}

function foundRow(itemLoad: ItemLoad, body: Body, settings: Settings) {
  const group = GROUPS[body];
  const { rows } = preparedGuide(settings.guide ?? STARTER_GUIDE, itemLoad.kind.name, group);
  const sizes = sizesOf(itemLoad, settings);
  const kg = weightOf(itemLoad, settings)?.kg;
  const isCovering = (each: GuideRow) => covers(each, sizes) && isOfMaterial(each, settings.material);
  const row = rows.find((each) => (kg === undefined || within(kg, each.weightKg)) && isCovering(each))!;
  return { row, rows, kg, isCovering };
}

function boardOfRow(row: GuideRow, { item }: ItemLoad, body: Body, settings: Settings): StockedBoard {
  const material = CALIPER_MATERIALS.includes(row.material) ? (row.material as BoardMaterial) : MATERIALS[GROUPS[body]];
  return stockedBoard(row.asked, {
    stock: settings.stock,
    material,
    laminated: body === "walls",
    longestSide: Math.max(item.height, item.width, item.depth),
  });
}

const GROUPS = {
  walls: BOARD_KINDS,
  "cut blank": BOARD_KINDS,
  "creased blank": CARD_KINDS,
  wrapper: CARD_KINDS,
} as const satisfies Record<Body, string>;

const MATERIALS = { [BOARD_KINDS]: "board", [CARD_KINDS]: "card" } as const;

const NOISE = 1e-6;

interface Sizes {
  readonly short: Mm;
  readonly long: Mm;
  readonly thickness: Mm;
}

/** The two plan sizes as the item lies in its tray, cushioning added; of one that is deeper than wide, its two greatest. */
function sizesOf({ item }: ItemLoad, settings: Settings): Sizes {
  const { height, width, depth } = restingItem(item, settings);
  const thickness = Math.min(height, width, depth);
  const long = Math.max(height, width, depth);
  return { short: Math.max(Math.min(height, width), Math.min(Math.max(height, width), depth)), long, thickness };
}

function covers({ shortSide, longSide, thickness }: GuideRow, sizes: Sizes): boolean {
  return within(sizes.short, shortSide) && within(sizes.long, longSide) && within(sizes.thickness, thickness);
}

function within(size: number, limit: number | undefined): boolean {
  return limit === undefined || size <= limit + NOISE;
}

function isOfMaterial({ material }: GuideRow, said: string): boolean {
  if (material === "" || CALIPER_MATERIALS.includes(material)) return true;
  return [...materialsIn(said).materials].some((each) => plainName(each) === material);
}
