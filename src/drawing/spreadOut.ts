/** Something that wants to be at a place along a line and takes up room there. */
export interface Placing {
  readonly wanted: number;
  readonly size: number;
}

/**
 * Middles for boxes along a line, in the order given, as near as may be to where they want to be without overlapping.
 * Neighbours that push each other form a block that moves as one.
 */
export function spreadOut(boxes: readonly Placing[], from: number, to: number): readonly number[] {
  const blocks: { readonly boxes: readonly Placing[]; readonly size: number; readonly start: number }[] = [];
  for (const box of boxes) {
    let block = blockOf([box], from, to);
    for (let last = blocks.at(-1); last !== undefined && last.start + last.size > block.start; last = blocks.at(-1)) {
      blocks.pop();
      block = blockOf([...last.boxes, ...block.boxes], from, to);
    }
    blocks.push(block);
  }
  return blocks.flatMap(({ boxes: own, start }) => {
    let edge = start;
    return own.map(({ size }) => {
      edge += size;
      return edge - size / 2;
    });
  });
}

function blockOf(boxes: readonly Placing[], from: number, to: number) {
  let [size, wish] = [0, 0];
  for (const box of boxes) {
    wish += box.wanted - box.size / 2 - size;
    size += box.size;
  }
  return { boxes, size, start: Math.max(from, Math.min(wish / boxes.length, to - size)) };
}
