import type { Job, SheetKind } from "./job";
import { raiseLengths } from "./raise";

/** Pieces of one size, span one way, with the size raised where that is allowed. */
interface PlacedSpan {
  readonly length: number;
  readonly width: number;
}

/** Equal pieces; `ways` has two entries when they may turn and fit both ways. */
export interface Group {
  readonly count: number;
  readonly ways: readonly PlacedSpan[];
}

/** How each piece can lie, one way after the other, and which piece it is. */
interface Ways {
  readonly lengths: readonly number[];
  readonly widths: readonly number[];
  readonly owner: readonly number[];
}

/** Equal pieces together, and the sheets; with one size of sheet, pieces raised or the sheet cut down. */
export function raisedGroups(job: Job): { groups: readonly Group[]; kinds: readonly SheetKind[] } {
  const ways = waysOf(job);
  const [kind] = job.kinds;
  if (kind === undefined || job.kinds.length !== 1) return { groups: groupsOf(ways), kinds: job.kinds };
  const lengths = raiseLengths(ways.lengths, ways.owner, kind.length);
  const widths = raiseLengths(ways.widths, ways.owner, kind.width);
  const raised = { lengths: lengths.lengths, widths: widths.lengths, owner: ways.owner };
  return { groups: groupsOf(raised), kinds: [{ ...kind, length: lengths.side, width: widths.side }] };
}

/** Pieces that lie the same ways, counted. */
function groupsOf({ lengths, widths, owner }: Ways): readonly Group[] {
  const groups: { count: number; ways: readonly PlacedSpan[] }[] = [];
  const oneWay = new Map<number, Map<number, { count: number }>>();
  const twoWays = new Map<string, { count: number }>();
  const add = (own: readonly PlacedSpan[]) => {
    const group = { count: 1, ways: own };
    groups.push(group);
    return group;
  };
  for (let at = 0; at < owner.length; at++) {
    const length = lengths[at]!;
    const width = widths[at]!;
    if (owner[at + 1] === owner[at]) {
      at++;
      const other = { length: lengths[at]!, width: widths[at]! };
      const key = `${length} ${width} ${other.length} ${other.width}`;
      const group = twoWays.get(key);
      if (group === undefined) twoWays.set(key, add([{ length, width }, other]));
      else group.count++;
      continue;
    }
    let byWidth = oneWay.get(length);
    if (byWidth === undefined) oneWay.set(length, (byWidth = new Map<number, { count: number }>()));
    const group = byWidth.get(width);
    if (group === undefined) byWidth.set(width, add([{ length, width }]));
    else group.count++;
  }
  return groups;
}

function waysOf(job: Job): Ways {
  const lengths: number[] = [];
  const widths: number[] = [];
  const owner: number[] = [];
  const fits = (length: number, width: number) =>
    job.kinds.some((kind) => length <= kind.length && width <= kind.width);
  const add = (piece: number, length: number, width: number) => {
    lengths.push(length);
    widths.push(width);
    owner.push(piece);
  };
  for (let piece = 0; piece < job.size; piece++) {
    const length = job.length[piece]!;
    const width = job.width[piece]!;
    const turns = job.turn[piece] === 1;
    if (!turns || fits(length, width)) add(piece, length, width);
    if (turns && fits(width, length)) add(piece, width, length);
  }
  return { lengths, widths, owner };
}
