import { boardOf } from "../../settings/boards";
import type { Settings } from "../../settings/schema";
import type { Tray } from "../assembly";
import { NO_FOLDS, type PlacedPart } from "../placedPart";
import { extent, X, Y, Z } from "../space";

/** Four strips glued round the outside of the corner joints. */
export function jointStrips({ inside, outside }: Tray, settings: Settings): PlacedPart {
  const stock = stripStock(settings);
  const shortWall = Math.min(extent(outside, X), extent(outside, Y));
  const around = 2 * Math.min(settings.turnIn, shortWall / 2);
  return {
    name: "joint strip",
    tray: "",
    role: "strip",
    material: stock.material,
    board: stock.board,
    count: 4,
    panels: [],
    lengthAxis: undefined,
    widthAxis: undefined,
    grain: "along length",
    grainAxis: undefined,
    length: extent(inside, Z),
    width: around,
    trim: 0,
    folds: NO_FOLDS,
    corners: undefined,
  };
}

/** The stock that is named, else the lining paper: card shows through the covering. */
function stripStock({ jointStrips, stock, lining }: Settings): Pick<PlacedPart, "material" | "board"> {
  const named = typeof jointStrips === "string" ? jointStrips : lining;
  const row = stock.find((each) => each.stock === named) ?? stock.find(({ material }) => material === "lining");
  return row === undefined
    ? { material: "lining", board: { stock: "lining, not in stock", caliper: 0, plies: 1, listed: undefined } }
    : { material: row.material, board: boardOf(row) };
}
