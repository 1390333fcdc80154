import { restingItem, type Item } from "../enclosure/restingItem";
import { STACKED, type Arrangement } from "../settings/arrangement";
import type { Settings } from "../settings/schema";

/** Items that share an enclosure, as one item as large as all of them, and how they lie in it. */
export type Together = Item & { readonly arrangement: Arrangement };

/**
 * Items that share an enclosure as one. Stacked: greatest height and width, depths added. Beside each other: in their
 * order, with the sizes of the columns and rows that they lie in: each column as wide as its widest, each row as high as
 * its highest.
 *
 * @param settings as the kind reads them: which way an item rests, and whether it takes an arrangement
 */
export function together(items: readonly Item[], settings: Settings): Together {
  const { arrangement } = settings;
  if (arrangement.by === "stacked") {
    const all = (of: keyof Item) => items.map((item) => item[of]);
    return { height: greatest(all("height")), width: greatest(all("width")), depth: sum(all("depth")), arrangement };
  }
  const wanted =
    arrangement.by === "rows" ? arrangement.of : arrangement.by === "grid" ? arrangement.columns.length : items.length;
  const across = Math.min(wanted, items.length);
  // Each lies the way that it rests, before it has its place.
  const bare = { ...settings, cushionBase: 0, cushionSides: 0, cushionTop: 0, arrangement: STACKED };
  const lying = items.map((item) => restingItem(item, bare));
  const columns = Array.from({ length: across }, (_, column) =>
    greatest(lying.filter((_, index) => index % across === column).map(({ width }) => width)),
  );
  const rows = Array.from({ length: Math.ceil(items.length / across) }, (_, row) =>
    greatest(lying.slice(row * across, (row + 1) * across).map(({ height }) => height)),
  );
  const whole = { height: sum(rows), width: sum(columns), depth: greatest(lying.map(({ depth }) => depth)) };
  // Turned twice it is as it was.
  const { height, width, depth } = restingItem(whole, bare);
  return { height, width, depth, arrangement: { by: "grid", columns, rows } };
}

function greatest(sizes: readonly number[]): number {
  return Math.max(...sizes);
}

function sum(sizes: readonly number[]): number {
  return sizes.reduce((total, size) => total + size, 0);
}
