/** Beyond so many sheets one beginning is tried, not each. */
const ALL_BEGINNINGS_UP_TO = 80;

/** Beyond so many the order that they were made in is kept. */
const ORDERED_UP_TO = 1000;

/**
 * An order of cutting in which few items are open at a time: after each sheet the one that opens the fewest new items and
 * finishes the most.
 *
 * @param items the items on each sheet
 * @returns the sheets' places in order
 */
export function orderSheets(items: readonly ReadonlySet<string>[]): readonly number[] {
  const all = Array.from(items.keys());
  if (items.length > ORDERED_UP_TO || items.length < 3) return all;
  const numbered = numberItems(items);
  const given = { order: all as readonly number[], open: mostOpenOf(numbered, all) };
  const beginnings = items.length <= ALL_BEGINNINGS_UP_TO ? all : [0];
  let best = given;
  for (const beginning of beginnings) {
    const order = followingOrder(numbered, beginning);
    const open = mostOpenOf(numbered, order);
    if (open < best.open) best = { order, open };
  }
  return best.order;
}

/** Items as numbers from 0: comparing names takes most of the time. */
interface Numbered {
  readonly items: readonly Int32Array[];
  readonly count: number;
}

function numberItems(items: readonly ReadonlySet<string>[]): Numbered {
  const numbers = new Map<string, number>();
  for (const own of items) for (const item of own) if (!numbers.has(item)) numbers.set(item, numbers.size);
  return { items: items.map((own) => Int32Array.from(own, (item) => numbers.get(item)!)), count: numbers.size };
}

function followingOrder({ items, count }: Numbered, beginning: number): readonly number[] {
  const left = new Int32Array(count);
  for (const own of items) for (const item of own) left[item]!++;
  const open = new Uint8Array(count);
  const waiting = new Set(items.keys());
  const order: number[] = [];
  const take = (sheet: number) => {
    waiting.delete(sheet);
    order.push(sheet);
    for (const item of items[sheet]!) open[item] = --left[item]! > 0 ? 1 : 0;
  };
  take(beginning);
  while (waiting.size > 0) {
    let next = -1;
    let least = Number.POSITIVE_INFINITY;
    for (const sheet of waiting) {
      let cost = 0;
      for (const item of items[sheet]!) {
        if (open[item] === 0) cost += NEW_ITEM;
        if (left[item] === 1) cost -= FINISHED_ITEM;
      }
      if (cost < least) {
        least = cost;
        next = sheet;
      }
    }
    take(next);
  }
  return order;
}

/** An item that is opened weighs a little more than one that is finished. */
const NEW_ITEM = 3;
const FINISHED_ITEM = 2;

/** Most items that are open at once in an order. */
export function mostOpen(items: readonly ReadonlySet<string>[], order: readonly number[]): number {
  return mostOpenOf(numberItems(items), order);
}

function mostOpenOf({ items, count }: Numbered, order: readonly number[]): number {
  const first = new Int32Array(count).fill(-1);
  const last = new Int32Array(count);
  order.forEach((sheet, at) => {
    for (const item of items[sheet]!) {
      if (first[item]! < 0) first[item] = at;
      last[item] = at;
    }
  });
  const change = new Int32Array(order.length + 1);
  first.forEach((at, item) => {
    if (at < 0) return;
    change[at]!++;
    change[last[item]! + 1]!--;
  });
  let open = 0;
  let most = 0;
  for (const step of change) most = Math.max(most, (open += step));
  return most;
}
