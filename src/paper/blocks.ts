import type { Mm } from "../measure/units";
import type { Page, Placed } from "./page";

/** A piece of a page that is never parted: a line of type, a row of a table, a drawing. */
export interface Block {
  readonly height: Mm;
  /** It stays on the page of the block that follows: a heading. */
  readonly withNext: boolean;
  /** It begins a new page. */
  readonly onNewPage?: true;
  /** What stands above it again where a page begins with it: the heading row of its table. */
  readonly again?: Block;
  /** What it prints, its upper left corner given. */
  readonly at: (x: Mm, y: Mm) => readonly Placed[];
}

/** The part of a page that blocks flow through. */
export interface Frame {
  readonly width: Mm;
  readonly height: Mm;
  readonly margin: Mm;
  /** Kept free above and below the blocks, for the running head and foot. */
  readonly head: Mm;
  readonly foot: Mm;
  /** What is printed and when: said at the foot of every page. */
  readonly printed: string;
}

export function bodyWidth({ width, margin }: Frame): Mm {
  return width - 2 * margin;
}

export function bodyHeight({ height, margin, head, foot }: Frame): Mm {
  return height - 2 * margin - head - foot;
}

export function gap(height: Mm): Block {
  return { height, withNext: false, at: () => [] };
}

/** Blocks one below the other that stay on one page. */
export function together(blocks: readonly Block[]): Block {
  const height = blocks.reduce((sum, block) => sum + block.height, 0);
  return {
    height,
    withNext: blocks.at(-1)?.withNext ?? false,
    at: (x, y) => {
      let top = y;
      return blocks.flatMap((block) => {
        const placed = block.at(x, top);
        top += block.height;
        return placed;
      });
    },
  };
}

/** Blocks side by side, each with how far it stands from the left. */
export function beside(blocks: readonly { readonly block: Block; readonly from: Mm }[]): Block {
  return {
    height: Math.max(0, ...blocks.map(({ block }) => block.height)),
    withNext: false,
    at: (x, y) => blocks.flatMap(({ block, from }) => block.at(x + from, y)),
  };
}

/** A block on a page, at its height below the head. */
interface SetBlock {
  readonly block: Block;
  readonly y: Mm;
}

/**
 * Which blocks stand on which page, and where. Nothing is drawn, so that ways to set a page can be compared.
 *
 * @throws Error when a block is higher than a page, which is a bug
 */
export function onPages(blocks: readonly Block[], frame: Frame): readonly (readonly SetBlock[])[] {
  const room = bodyHeight(frame);
  const pages: SetBlock[][] = [[]];
  let y = 0;
  blocks.forEach((block, index) => {
    if (block.height > room + NOISE_MM) throw new Error(`a block of ${block.height} mm on a page of ${room} mm`);
    const kept = heightKept(blocks, index);
    if (y > 0 && (block.onNewPage === true || y + Math.min(kept, room) > room + NOISE_MM)) {
      // Space between things is no reason for a page, nor for an empty start of one.
      if (block.onNewPage !== true && isEmpty(block)) return;
      pages.push([]);
      y = 0;
    }
    if (y === 0 && block.again !== undefined) {
      pages.at(-1)!.push({ block: block.again, y });
      y = block.again.height;
    }
    if (y === 0 && isEmpty(block)) return;
    pages.at(-1)!.push({ block, y });
    y += block.height;
  });
  return pages;
}

function isEmpty(block: Block): boolean {
  return block.at(0, 0).length === 0;
}

/**
 * Blocks on as many pages as they need. Nothing is clipped: what does not fit goes on the next page.
 *
 * @param running what stands at the head and foot of each page
 * @throws Error when a block is higher than a page, which is a bug
 */
export function flow(
  blocks: readonly Block[],
  frame: Frame,
  running: (page: number, of: number) => readonly Placed[],
  bookmark: string,
): readonly Page[] {
  return onPages(blocks, frame).map((page, index, pages) => ({
    width: frame.width,
    height: frame.height,
    placed: [
      ...running(index + 1, pages.length),
      ...page.flatMap(({ block, y }) => block.at(frame.margin, frame.margin + frame.head + y)),
    ],
    bookmark: index === 0 ? bookmark : "",
  }));
}

const NOISE_MM: Mm = 1e-6;

/** Height of a block with those that it must not be parted from. */
function heightKept(blocks: readonly Block[], index: number): Mm {
  let height = 0;
  for (let at = index; at < blocks.length; at++) {
    height += blocks[at]!.height;
    if (!blocks[at]!.withNext) break;
  }
  return height;
}
