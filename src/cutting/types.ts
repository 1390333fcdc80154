import type { Mm } from "../measure/units";

/** A rectangle to be cut, once or `count` times. Its length runs along the grain. */
export interface Piece {
  readonly id: string;
  /** The collection item and the part that the piece is for, so that nothing is left out without a name. */
  readonly item: string;
  readonly part: string;
  readonly length: Mm;
  readonly width: Mm;
  /** How many, 1 when left out. */
  readonly count?: number;
  /** True when the grain may run either way, so that the piece may lie turned. */
  readonly turn: boolean;
  /** Walls of the same name are cut from one board strip in the bench style; undefined for what is no wall. */
  readonly strip?: string | undefined;
  /** Directions in which the piece is cut larger and trimmed to a finished first part. */
  readonly later?: { readonly length: boolean; readonly width: boolean } | undefined;
  /** Plies of the laminated board that the piece is one of; left out for a single board. */
  readonly plies?: number | undefined;
  /** What a ply is already cut larger by, both ways, so that the pressed board can be trimmed, mm. */
  readonly pressed?: Mm | undefined;
  /** Of one of the pieces that a board is joined from, because no sheet holds it whole: how many those are. */
  readonly joinedFrom?: number | undefined;
  /** The batch that the piece is cut in, from 1; left out where all are cut together. */
  readonly batch?: number | undefined;
  /** Of a blank of the bench style: the pieces that are made of one copy of it. */
  readonly holds?: readonly Held[] | undefined;
}

/** Pieces that come out of one blank. */
export interface Held {
  readonly piece: Piece;
  readonly count: number;
}

/** How a plan is made that a worker can follow at the bench; lengths in mm. */
export interface BenchStyle {
  /** Changes of direction, the first cut being 1; a trim may follow. */
  readonly stages: number;
  /** No strip of waste is narrower. */
  readonly leastWaste: Mm;
  /** What walls and second-made parts are cut larger by, to be trimmed to what they fit; 0 cuts all to size. */
  readonly matchAllowance: Mm;
  /** Sheets more than the fewest found that may be taken to save set-ups, as a share. */
  readonly spareSheets: number;
  /** The longest cut that the shop can make; left out where there is no such limit. */
  readonly cutLength?: Mm | undefined;
  /** Panels that wait to be cut at the same time, at most, where possible. */
  readonly loosePanels?: number | undefined;
  /** A roll is first cut into lengths of about this. */
  readonly benchLength: Mm;
  /** Items that are in work at the same time, at most, where possible; left out where there is no such limit. */
  readonly openItems?: number | undefined;
  /** Items that are cut before the next ones are begun; left out, all are cut together. */
  readonly batchSize?: number | undefined;
  /** What a batch leaves and is worth keeping is stock for the batches after it. */
  readonly keepOffCuts?: boolean | undefined;
}

/** One size of sheet. Its length runs along the grain. */
export interface Sheet {
  readonly name: string;
  readonly length: Mm;
  readonly width: Mm;
  /** Price of one sheet, in any currency; off-cuts in hand cost 0. */
  readonly price: number;
  /** How many there are when no more can be had (off-cuts in hand); left out when as many as wanted can be bought. */
  readonly onHand?: number;
  /** How many are sold together, 1 when left out. */
  readonly pack?: number;
  /** Cut away all round this sheet; left out, as the options say. An off-cut has clean edges: 0. */
  readonly edgeTrim?: Mm;
}

/** Material of one width that is cut off to length. Its length runs along the grain. */
export interface Roll {
  readonly name: string;
  readonly width: Mm;
  readonly pricePerM: number;
}

export type Stock = SheetStock | { readonly kind: "roll"; readonly roll: Roll };

interface SheetStock {
  readonly kind: "sheets";
  readonly sheets: readonly Sheet[];
}

/** How far a running search has come. Costs are sheet prices, or mm of roll. */
export interface Progress {
  readonly sheets: number;
  readonly cost: number;
  readonly bound: number;
  /** (cost - bound) / bound; 0 when it is proved that no plan costs less. */
  readonly gap: number;
  readonly iterations: number;
  readonly elapsedMs: number;
}

/** When a search ends, besides reaching the bound: after `iterations` (the same plan on any machine) or `milliseconds`. */
export interface Budget {
  readonly iterations?: number;
  readonly milliseconds?: number;
}

export interface CuttingOptions {
  /** Cut away all round each sheet (of a roll: both edges and both ends), mm; default 0. */
  readonly edgeTrim?: Mm;
  /** What a cut takes away between two pieces, mm; default 0 (a knife or shear). */
  readonly pieceGap?: Mm;
  /** Limits and allowances of the bench style; left out, the fewest sheets are looked for. */
  readonly bench?: BenchStyle | undefined;
  readonly seed?: number;
  readonly budget?: Budget;
  readonly onProgress?: (progress: Progress) => void;
  /** Asked often; once true, the best plan so far is returned. */
  readonly shouldStop?: () => boolean;
}

/** Where one copy of a piece lies; x runs along the sheet's length, y along its width, from the sheet's corner. */
export interface Placement {
  readonly piece: Piece;
  /** 1 for the first copy of the piece. */
  readonly copy: number;
  readonly x: Mm;
  readonly y: Mm;
  /** The extent along the sheet's length, and along its width. */
  readonly length: Mm;
  readonly width: Mm;
  /** True when the piece's length lies along the sheet's width. */
  readonly turned: boolean;
}

/** "across" is a cut square to the sheet's length at `x = at`; "along" one that runs with the length at `y = at`. */
export type CutWay = "across" | "along";

/**
 * One edge-to-edge cut, made in the order of the list. What `pieceGap` takes away lies behind `at`, up to `at` + gap.
 * Trimming the edges, when the options ask for it, comes first and is not listed.
 */
export interface Cut {
  readonly way: CutWay;
  readonly at: Mm;
  /** The cut runs from `from` to `to`, the edges of the panel in hand. */
  readonly from: Mm;
  readonly to: Mm;
  /** Distance from the fence: the size of what comes off. */
  readonly setting: Mm;
}

/** Where an off-cut comes from: the place in the plan's sheets, counted from 0, and its corner there. */
export interface OffCutPlace {
  readonly sheet: number;
  readonly x: Mm;
  readonly y: Mm;
}

/** One sheet (or the length of roll) with what is cut out of it. */
export interface SheetPlan {
  readonly stock: string;
  /** Set where this is no new sheet but what an earlier one in the plan left. */
  readonly offCut?: OffCutPlace;
  readonly length: Mm;
  readonly width: Mm;
  /** Sheets with the same number are cut alike, so that one setting serves them all in turn. */
  readonly layout: number;
  readonly placements: readonly Placement[];
  readonly cuts: readonly Cut[];
}

export type UncuttableReason = FitsNoSheet | "longer than the longest cut" | "no sheet left";

type FitsNoSheet = "larger than every sheet" | "fits only against the grain";

/** Copies of a piece that are in no sheet of the plan. */
export interface Uncuttable {
  readonly piece: Piece;
  readonly count: number;
  readonly reason: UncuttableReason;
}

/** How much of one stock a plan takes. */
export interface StockCount {
  readonly stock: string;
  readonly sheets: number;
  /** Packs that hold that many sheets. */
  readonly packs: number;
  readonly cost: number;
}

export interface Plan {
  readonly sheets: readonly SheetPlan[];
  readonly counts: readonly StockCount[];
  readonly cost: number;
  /** No plan costs less. */
  readonly costBound: number;
  /** No plan takes fewer sheets (of the sizes there are); for a roll 1. */
  readonly sheetBound: number;
  /** Length of roll taken, and the least that any plan takes, mm; 0 for sheets. */
  readonly rollLength: Mm;
  readonly rollBound: Mm;
  /** True when no plan can be cheaper (of a roll: shorter). */
  readonly provedLeast: boolean;
  readonly uncuttable: readonly Uncuttable[];
  readonly pieceAreaM2: number;
  readonly sheetAreaM2: number;
  readonly cutCount: number;
  /** Different fence settings in the whole plan, and how often the fence is set when sheets cut alike go together. */
  readonly settings: number;
  readonly setUps: number;
  readonly iterations: number;
}
