import type { Mm } from "../measure/units";
import { materialOf, plyCaliper } from "../settings/boards";
import type { Material } from "../settings/stock";
import type { Assembly } from "./assembly";
import { fullName, type Corners, type Folds, type PlacedPart } from "./placedPart";

/** A line of the cut list: sizes to cut, in mm. */
export interface Part {
  /** With its tray: `lid side wall`. */
  readonly fullName: string;
  readonly name: string;
  readonly tray: string;
  readonly material: Material;
  readonly stock: string;
  /** Of what is cut: of a laminated board, of one ply. */
  readonly caliper: Mm;
  /** Pieces to cut: of a laminated board, every ply. */
  readonly count: number;
  /** Plies that are laminated into one board before it is trimmed to size; 1 for any other part. */
  readonly plies: number;
  readonly length: Mm;
  readonly width: Mm;
  readonly grain: "along length" | "along width" | "either";
  readonly folds: Folds;
  readonly corners: Corners | undefined;
  /** The placed part that it is cut for; undefined for covering, lining and cushioning. */
  readonly placed: PlacedPart | undefined;
  /** What is said of it at the bench, where it is no placed part. */
  readonly note: string;
  /** Of a piece of a board that no sheet holds whole: how many pieces a ply of it takes, and the size to cut that they make up. */
  readonly joined?: { readonly pieces: number; readonly length: Mm; readonly width: Mm };
  /** Cut out of its middle. */
  readonly recess?: { readonly length: Mm; readonly width: Mm };
}

/**
 * The boards and cards to cut, read off the assembly. A laminated card is cut larger and to whole millimetres.
 *
 * @param role only the parts of that role
 */
export function boardParts({ parts }: Assembly, role?: PlacedPart["role"]): readonly Part[] {
  return (role === undefined ? parts : parts.filter((part) => part.role === role)).map(boardPart);
}

/** Whole millimetres, ignoring binary noise. */
export function wholeUp(size: Mm): Mm {
  return Math.ceil(size - WHOLE_NOISE_MM);
}

export function wholeDown(size: Mm): Mm {
  return Math.floor(size + WHOLE_NOISE_MM);
}

const WHOLE_NOISE_MM: Mm = 1e-6;

/** What each ply is cut larger, both ways, so that the laminated board can be trimmed square. Common practice, no source. */
export const PLY_ALLOWANCE_MM: Mm = 3;

function boardPart(placed: PlacedPart): Part {
  const { name, tray, material, board, count, length, width, trim, grain, folds, corners } = placed;
  const trimmed = placed.role === "card";
  const over = board.plies === 1 ? 0 : PLY_ALLOWANCE_MM;
  return {
    fullName: fullName(placed),
    name,
    tray,
    material: materialOf(board, material),
    stock: board.stock,
    caliper: plyCaliper(board),
    count: count * board.plies,
    plies: board.plies,
    length: trimmed ? wholeUp(length + 2 * trim) : length + over,
    width: trimmed ? wholeUp(width + 2 * trim) : width + over,
    grain: board.listed?.grain === "free" ? "either" : grain,
    folds,
    corners,
    placed,
    note: "",
  };
}
