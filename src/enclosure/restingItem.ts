import type { Mm } from "../measure/units";
import type { Settings } from "../settings/schema";
import type { Cushion } from "./assembly";

/** An item as measured, each at its largest point. */
export interface Item {
  /** Head to tail. */
  readonly height: Mm;
  /** Spine to fore-edge. */
  readonly width: Mm;
  /** Thickness. */
  readonly depth: Mm;
}

/** An item as it lies in its tray, its cushioning added: what the inside is worked out from. */
export interface RestingItem extends Item {
  /** Sizes of the compartments from spine to fore-edge and from head to tail, where several items lie in one enclosure. */
  readonly columns: readonly Mm[];
  readonly rows: readonly Mm[];
  readonly cushion: Cushion;
}

/** Turns an item the way that `rests on` says, then adds the cushioning. */
export function restingItem(item: Item, settings: Settings): RestingItem {
  const { cushionBase: base, cushionSides: sides, cushionTop: top, restsOn } = settings;
  const { height, width, depth } = TURNED[restsOn](item);
  return {
    height: height + 2 * sides,
    width: width + 2 * sides,
    depth: depth + base + top,
    columns: shared(settings, "columns", width),
    rows: shared(settings, "rows", height),
    cushion: { base, sides, top },
  };
}

/** A size shared out over the columns or rows of a grid. */
function shared({ arrangement }: Settings, way: "columns" | "rows", size: Mm): readonly Mm[] {
  if (arrangement.by !== "grid") return [size];
  const shares = arrangement[way];
  const whole = shares.reduce((sum, share) => sum + share, 0);
  return shares.map((share) => (size * share) / whole);
}

const TURNED: Readonly<Record<Settings["restsOn"], (item: Item) => Item>> = {
  back: (item) => item,
  foot: ({ height, width, depth }) => ({ height: depth, width, depth: height }),
  edge: ({ height, width, depth }) => ({ height, width: depth, depth: width }),
};
