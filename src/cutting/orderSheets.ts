/** Beyond so many sheets one beginning is tried, not each. */
const ALL_BEGINNINGS_UP_TO = 80;

/** Beyond so many the order that they were made in is kept. */
const ORDERED_UP_TO = 1000;

/**
 * An order of cutting in which few items are open at a time: after each sheet the one that opens the fewest new items and
 * finishes the most.
 *
 * @param itemsOf the items on a sheet
 */
export function orderSheets<Sheet>(
  sheets: readonly Sheet[],
  itemsOf: (sheet: Sheet) => ReadonlySet<number>,
): readonly Sheet[] {
  if (sheets.length > ORDERED_UP_TO || sheets.length < 3) return sheets;
  const items = sheets.map(itemsOf);
  const all = Array.from(items.keys());
  const numbered = numberItems(items);
  const given = { order: all as readonly number[], open: mostOpenOf(numbered, all) };
  const beginnings = items.length <= ALL_BEGINNINGS_UP_TO ? all : [0];
  let best = given;
  for (const beginning of beginnings) {
    const order = followingOrder(numbered, beginning);
    const open = mostOpenOf(numbered, order);
    if (open < best.open) best = { order, open };
  }
  return best.order.map((at) => sheets[at]!);
}

/** Items as numbers from 0 without gaps. */
interface Numbered {
  readonly items: readonly Int32Array[];
  readonly count: number;
  /** The sheets that each item is on. */
  readonly sheetsOf: readonly (readonly number[])[];
}

function numberItems(items: readonly ReadonlySet<number>[]): Numbered {
  const numbers = new Map<number, number>();
  const sheetsOf: number[][] = [];
  const numbered = items.map((own, sheet) =>
    Int32Array.from(own, (item) => {
      const number = numbers.get(item) ?? sheetsOf.push([]) - 1;
      numbers.set(item, number);
      sheetsOf[number]!.push(sheet);
      return number;
    }),
  );
  return { items: numbered, count: sheetsOf.length, sheetsOf };
}

function followingOrder({ items, count, sheetsOf }: Numbered, beginning: number): readonly number[] {
  const left = Int32Array.from(sheetsOf, (own) => own.length);
  const open = new Uint8Array(count);
  // What each sheet would cost next: kept up to date as items are opened and come to their last sheet.
  const costs = Int32Array.from(items, (own) =>
    own.reduce((sum, item) => sum + NEW_ITEM - (left[item] === 1 ? FINISHED_ITEM : 0), 0),
  );
  const waiting = Array.from(items.keys());
  const order: number[] = [];
  const take = (at: number) => {
    const [sheet] = waiting.splice(at, 1);
    order.push(sheet!);
    for (const item of items[sheet!]!) {
      left[item]!--;
      const change = (open[item] === 0 ? NEW_ITEM : 0) + (left[item] === 1 ? FINISHED_ITEM : 0);
      open[item] = 1;
      if (change > 0 && left[item]! > 0) for (const other of sheetsOf[item]!) costs[other]! -= change;
    }
  };
  take(beginning);
  while (waiting.length > 0) {
    let next = 0;
    for (let at = 1; at < waiting.length; at++) if (costs[waiting[at]!]! < costs[waiting[next]!]!) next = at;
    take(next);
  }
  return order;
}

/** An item that is opened weighs a little more than one that is finished. */
const NEW_ITEM = 3;
const FINISHED_ITEM = 2;

/** Most items that are open at once in an order. */
export function mostOpen(items: readonly ReadonlySet<number>[], order: readonly number[]): number {
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
