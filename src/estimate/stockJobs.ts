import type { BenchStyle, Piece, Sheet, Stock } from "../cutting/types";
import type { Part } from "../enclosure/part";
import type { CutFacts } from "./cutFacts";
import type { Mm } from "../measure/units";
import type { Settings } from "../settings/schema";
import type { Material, StockRow } from "../settings/stock";

/** Enclosures to be made for one item: what its parts ask of the stock. */
export interface Demand {
  readonly item: string;
  /** The place of the item in the survey, for what is grouped by a heading. */
  readonly row: number;
  readonly enclosure: string;
  readonly quantity: number;
  /** What the survey's column `batch` says; empty where it has none. */
  readonly batch: string;
  /** Its board beside that of the same kind for an object of 300 x 210 x 40 mm. */
  readonly relativeSize: number;
  readonly parts: readonly Part[];
  /** Its place in the order of batch, priority and row. */
  readonly turn: number;
  /** What the bench style must know of a part; left out where nothing is known of how they go together. */
  readonly facts?: (part: Part) => CutFacts;
}

/** Sheets of one row of the stock table: those in hand cost nothing more, others are bought. */
export interface SheetSource {
  readonly row: StockRow;
  readonly inHand: boolean;
}

/** One stock and all that is to be cut from it: plain data, so that another thread can plan it. */
export interface StockJob {
  readonly stock: string;
  readonly material: Material;
  readonly pieces: readonly Piece[];
  /** Undefined where the stock table gives no size. */
  readonly source: Stock | undefined;
  /** The rows behind the sheets of `source`, in the same order; empty for a roll. */
  readonly sources: readonly SheetSource[];
  readonly edgeTrim: Mm;
  readonly pieceGap: Mm;
  /** Undefined where the fewest sheets alone count. */
  readonly bench: BenchStyle | undefined;
  /** Waste narrower than this is counted as a sliver, in either style. */
  readonly leastWaste: Mm;
  readonly stages: number;
}

/** What the demands ask of each stock, in the order of the stock table; stocks that it does not list come last. */
export function stockJobs(demands: readonly Demand[], settings: Settings): readonly StockJob[] {
  const { stock: rows, edgeTrim, pieceGap, leastWaste, stages } = settings;
  const bench = benchStyleOf(settings);
  const byStock = new Map<string, Piece[]>();
  const materials = new Map<string, Material>();
  const batches = batchesOf(demands, bench?.batchSize);
  for (const demand of demands) {
    const { item, quantity, parts, facts } = demand;
    const batch = batches.get(demand);
    for (const part of parts) {
      let pieces = byStock.get(part.stock);
      if (pieces === undefined) byStock.set(part.stock, (pieces = []));
      materials.set(part.stock, part.material);
      // Tape is cut off for all batches together.
      const own = part.material === "closure" ? undefined : batch;
      pieces.push(pieceOf(part, item, quantity, facts?.(part) ?? {}, own));
    }
  }
  const order = [...new Set([...rows.map((row) => row.stock), ...byStock.keys()])];
  return order.flatMap((stock) => {
    const asked = byStock.get(stock);
    if (asked === undefined) return [];
    const { source, sources } = sourceOf(rows.filter((row) => row.stock === stock));
    const material = materials.get(stock)!;
    const job = { stock, material, pieces: asked, source, sources, edgeTrim, pieceGap, bench, leastWaste, stages };
    // Tape is as wide as its pieces, and cut off by length alone.
    return [material === "closure" ? { ...job, edgeTrim: 0, pieceGap: 0, bench: undefined } : job];
  });
}

/** The batch of each demand, from 1; none where all are cut together. */
function batchesOf(demands: readonly Demand[], size: number | undefined): ReadonlyMap<Demand, number> {
  if (size === undefined) return new Map();
  const inTurn = [...demands].sort((one, other) => one.turn - other.turn);
  return new Map(inTurn.map((demand, index) => [demand, 1 + Math.floor(index / size)]));
}

function benchStyleOf({
  planStyle,
  stages,
  leastWaste,
  matchAllowance,
  spareSheets,
  cutLength,
  loosePanels,
  openItems,
  batchSize,
  keepOffCuts,
  benchLength,
}: Settings): BenchStyle | undefined {
  if (planStyle !== "bench") return undefined;
  return {
    stages,
    leastWaste,
    matchAllowance,
    spareSheets: spareSheets / PER_CENT,
    cutLength: cutLength === 0 ? undefined : cutLength,
    loosePanels: loosePanels === 0 ? undefined : loosePanels,
    openItems: openItems === 0 ? undefined : openItems,
    batchSize: batchSize === 0 ? undefined : batchSize,
    keepOffCuts,
    benchLength,
  };
}

const PER_CENT = 100;

/** Written out, so that all pieces are of one shape: whatever reads a hundred thousand of them then does so faster. */
function pieceOf(part: Part, item: string, quantity: number, facts: CutFacts, batch: number | undefined): Piece {
  const across = part.grain === "along width";
  return {
    id: `${item} / ${part.fullName}`,
    item,
    part: part.fullName,
    length: across ? part.width : part.length,
    width: across ? part.length : part.width,
    count: part.count * quantity,
    turn: part.grain === "either",
    strip: facts.strip,
    later: facts.later,
    plies: facts.plies,
    pressed: facts.pressed,
    joinedFrom: part.joined?.pieces,
    batch,
    holds: undefined,
  };
}

/**
 * What a stock is cut from. A row with a price is bought, and what it says is `on hand` is used first; a row with
 * `on hand` and no price is an off-cut: so many and no more.
 */
function sourceOf(rows: readonly StockRow[]): { source: Stock | undefined; sources: readonly SheetSource[] } {
  const sized = rows.filter((row) => row.sheetWidth !== undefined);
  const roll = sized.find((row) => row.sheetLength === undefined);
  if (roll !== undefined) {
    const { stock: name, sheetWidth, price } = roll;
    return { source: { kind: "roll", roll: { name, width: sheetWidth!, pricePerM: price ?? 0 } }, sources: [] };
  }
  if (sized.length === 0) return { source: undefined, sources: [] };
  const sources = sized.flatMap(sourcesOf);
  const sheets = sources.map((source) => sheetOf(source, sized.length > 1));
  return { source: { kind: "sheets", sheets }, sources };
}

function sourcesOf(row: StockRow): readonly SheetSource[] {
  const inHand = row.onHand === undefined ? [] : [{ row, inHand: true }];
  return row.onHand !== undefined && row.price === undefined ? inHand : [...inHand, { row, inHand: false }];
}

function sheetOf({ row, inHand }: SheetSource, several: boolean): Sheet {
  const [length, width] = [row.sheetLength!, row.sheetWidth!];
  const name = several ? `${row.stock} ${length} x ${width}` : row.stock;
  if (inHand) return { name: `${name}, on hand`, length, width, price: 0, onHand: row.onHand! };
  return { name, length, width, price: row.price ?? 0, pack: row.pack };
}
