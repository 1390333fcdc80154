import { ALONG_LENGTH, ALONG_WIDTH, NONE } from "./forest";
import { fillSheets, type Block } from "./fillSheets";
import type { Job, SheetKind } from "./job";
import type { Panel } from "./panels";

/** Blocks put together, at most: where equal sides are common, they tell nothing. */
const MOST_BLOCKS = 4000;

/**
 * Sheets filled to the last corner, found by joining pieces along equal sides: what a plan without waste is made of.
 * Blocks that reach from edge to edge are strips; strips that add up to the sheet fill it.
 *
 *     +-------+-----+
 *     |   a   |  c  |    a and b have equal lengths, their block and c equal widths
 *     +-------+     |
 *     |   b   |     |
 *     +-------+-----+
 *
 * @returns sheets that share no piece; none when sides are equal so often that there is no telling
 */
export function joinEqualSides(job: Job): readonly Panel[] {
  const [kind] = job.kinds;
  if (kind === undefined) return [];
  const blocks = joinedBlocks(job, kind);
  return blocks.length < MOST_BLOCKS ? fillSheets(job, blocks, kind) : [];
}

/** All blocks that equal sides make, up to a number, strips not joined to strips. */
function joinedBlocks(job: Job, kind: SheetKind): readonly Block[] {
  const blocks = Array.from(job.area.keys()).flatMap((piece) => pieceBlocks(job, piece));
  const byLength = new Map<number, Block[]>();
  const byWidth = new Map<number, Block[]>();
  const known = new Set<string>();
  const add = (block: Block) => {
    const key = `${block.panel.length} ${block.pieces.join(" ")}`;
    if (blocks.length < MOST_BLOCKS && !known.has(key)) blocks.push(block);
    known.add(key);
  };
  for (let at = 0; at < blocks.length && blocks.length < MOST_BLOCKS; at++) {
    const block = blocks[at]!;
    const { length, width } = block.panel;
    if (length < kind.length) {
      joinsOf(block, byLength.get(length) ?? [], ALONG_WIDTH, kind.width).forEach(add);
      enter(byLength, length, block);
    }
    if (width < kind.width) {
      joinsOf(block, byWidth.get(width) ?? [], ALONG_LENGTH, kind.length).forEach(add);
      enter(byWidth, width, block);
    }
  }
  return blocks;
}

function pieceBlocks(job: Job, piece: number): readonly Block[] {
  const [length, width] = [job.length[piece]!, job.width[piece]!];
  const leaf = (along: number, across: number): Block => ({
    panel: { length: along, width: across, axis: ALONG_LENGTH, parts: [], piece },
    pieces: [piece],
  });
  return job.turn[piece] === 1 ? [leaf(length, width), leaf(width, length)] : [leaf(length, width)];
}

/** The blocks that one makes with others that have an equal side, as far as they fit the sheet. */
function joinsOf(block: Block, others: readonly Block[], axis: number, most: number): readonly Block[] {
  const size = (own: Block) => (axis === ALONG_LENGTH ? own.panel.length : own.panel.width);
  return others
    .filter((other) => size(other) + size(block) <= most && !shareAny(block.pieces, other.pieces))
    .map((other) => {
      const sum = size(other) + size(block);
      const sides =
        axis === ALONG_LENGTH ? { length: sum, width: block.panel.width } : { length: block.panel.length, width: sum };
      return {
        panel: { ...sides, axis, parts: [other.panel, block.panel], piece: NONE },
        pieces: [...block.pieces, ...other.pieces].sort((one, two) => one - two),
      };
    });
}

function shareAny(one: readonly number[], other: readonly number[]): boolean {
  for (let i = 0, j = 0; i < one.length && j < other.length;) {
    if (one[i] === other[j]) return true;
    if (one[i]! < other[j]!) i++;
    else j++;
  }
  return false;
}

function enter(index: Map<number, Block[]>, key: number, block: Block): void {
  const known = index.get(key);
  if (known === undefined) index.set(key, [block]);
  else known.push(block);
}
