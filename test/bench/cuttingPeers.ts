import { BestAreaFit, BestLongSideFit, BestShortSideFit, BottomLeft, pack2D } from "binpackingjs/2d";
import { packer } from "guillotine-packer";
import type { Instance } from "./cuttingClasses";

/** A packing library of npm, run as its manual says, grain kept. */
export interface Peer {
  readonly name: string;
  readonly sheets: (instance: Instance) => number;
}

export const peers: readonly Peer[] = [
  { name: "guillotine-packer (all strategies)", sheets: guillotinePacker },
  { name: "binpackingjs (best of four, need not be cuttable edge to edge)", sheets: binPacking },
];

function guillotinePacker({ sheet, pieces }: Instance): number {
  const items = pieces.map(({ length, width }, index) => ({ name: String(index), width: length, height: width }));
  const sheets = packer({ binWidth: sheet.length, binHeight: sheet.width, items }, { allowRotation: false });
  if (sheets === null) throw new Error("guillotine-packer found no plan");
  return sheets.length;
}

function binPacking({ sheet, pieces }: Instance): number {
  const bins = pieces.map(() => ({ width: sheet.length, height: sheet.width }));
  const boxes = pieces.map(({ length, width }) => ({ width: length, height: width, constrainRotation: true }));
  const heuristics = [new BestShortSideFit(), new BestAreaFit(), new BestLongSideFit(), new BottomLeft()];
  return Math.min(
    ...heuristics.map((heuristic) => {
      const { packedBins, unpackedBoxes } = pack2D({ bins, boxes, heuristic });
      if (unpackedBoxes.length > 0) throw new Error("binpackingjs left boxes out");
      return packedBins.filter(({ boxes: packed }) => packed.length > 0).length;
    }),
  );
}
