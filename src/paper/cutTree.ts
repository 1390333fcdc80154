import { isCut, parted, type OffCut } from "../cutting/offCuts";
import type { Cut, Placement, SheetPlan } from "../cutting/types";
import type { Mm } from "../measure/units";

/** A panel that comes off a sheet: a strip that is cut further, a piece, or what is left over. */
export interface CutPanel extends OffCut {
  /** `B` for a strip off the sheet, `B2` for what comes off it second, `B2a`; empty for what is left over. */
  readonly name: string;
  readonly placement: Placement | undefined;
  /** Whether it is cut further. */
  readonly strip: boolean;
}

/** One cut with what it frees. */
export interface NamedCut {
  readonly cut: Cut;
  /** What lies between the fence and the blade. */
  readonly off: CutPanel;
  /** What is left behind the blade, when nothing more is cut from it the same way. */
  readonly rest: CutPanel | undefined;
}

export interface CutTree {
  /** In the order of the cuts. */
  readonly cuts: readonly NamedCut[];
  readonly pieces: readonly CutPanel[];
  /** What comes off the sheet itself, from the fence edge on. */
  readonly strips: readonly CutPanel[];
  readonly firstWay: Cut["way"] | undefined;
}

interface Node {
  readonly box: OffCut;
  cut?: { readonly at: Cut; readonly off: Node; readonly rest: Node };
}

/**
 * A sheet with a name for all that comes off it, so that drawing, table and labels speak of the same thing.
 *
 * @param sheet with its cuts in the order in which they are made
 */
export function cutTree(
  sheet: SheetPlan,
  { edgeTrim, pieceGap, start = edgeTrim }: { readonly edgeTrim: Mm; readonly pieceGap: Mm; readonly start?: Mm },
): CutTree {
  const root: Node = {
    box: { x: start, y: edgeTrim, length: sheet.length - start - edgeTrim, width: sheet.width - 2 * edgeTrim },
  };
  let leaves: readonly Node[] = [root];
  for (const at of sheet.cuts)
    leaves = leaves.flatMap((node) => {
      if (!isCut(node.box, at)) return [node];
      const [off, rest] = parted(node.box, at, pieceGap).map((box): Node => ({ box }));
      node.cut = { at, off: off!, rest: rest! };
      return [off!, rest!];
    });
  const named = new Map<Node, CutPanel>();
  const name = (node: Node, own: string, depth: number): void => {
    named.set(node, panelOf(node, own, sheet.placements));
    let count = 0;
    for (const child of partsOf(node)) {
      const empty = child.cut === undefined && placementOn(child.box, sheet.placements) === undefined;
      name(child, empty ? "" : own + nameAt(depth, count), depth + 1);
      if (!empty) count++;
    }
  };
  name(root, root.cut === undefined ? nameAt(0, 0) : "", 0);
  const byCut = new Map(
    [...allNodes(root)].flatMap((node) => (node.cut === undefined ? [] : [[node.cut.at, node.cut]])),
  );
  const cuts = sheet.cuts.flatMap((cut): readonly NamedCut[] => {
    const made = byCut.get(cut);
    return made === undefined ? [] : [{ cut, off: named.get(made.off)!, rest: named.get(made.rest) }];
  });
  const panels = [...named.values()];
  return {
    cuts,
    pieces: panels.filter(({ placement }) => placement !== undefined),
    strips: root.cut === undefined ? [] : partsOf(root).map((part) => named.get(part)!),
    firstWay: root.cut?.at.way,
  };
}

/** What comes off a panel by cuts the same way, from the fence edge on, and what is left behind the last. */
function partsOf(node: Node): readonly Node[] {
  const parts: Node[] = [];
  let rest = node;
  const way = node.cut?.at.way;
  while (rest.cut !== undefined && rest.cut.at.way === way) {
    parts.push(rest.cut.off);
    rest = rest.cut.rest;
  }
  return rest === node ? parts : [...parts, rest];
}

function* allNodes(node: Node): Iterable<Node> {
  yield node;
  if (node.cut === undefined) return;
  yield* allNodes(node.cut.off);
  yield* allNodes(node.cut.rest);
}

function panelOf(node: Node, name: string, placements: readonly Placement[]): CutPanel {
  const strip = node.cut !== undefined;
  return { ...node.box, name, strip, placement: strip ? undefined : placementOn(node.box, placements) };
}

/** The piece that a panel is: its middle lies on the panel. */
function placementOn(box: OffCut, placements: readonly Placement[]): Placement | undefined {
  return placements.find(({ x, y, length, width }) => {
    const [middle, half] = [x + length / 2, y + width / 2];
    return middle > box.x && middle < box.x + box.length && half > box.y && half < box.y + box.width;
  });
}

const LETTERS = 26;

/** Letters, numbers, small letters, numbers, ... by how often the direction has changed. */
function nameAt(depth: number, index: number): string {
  if (depth % 2 === 1) return String(index + 1);
  const first = depth === 0 ? "A" : "a";
  const letter = String.fromCharCode(first.charCodeAt(0) + (index % LETTERS));
  return index < LETTERS ? letter : nameAt(depth, Math.floor(index / LETTERS) - 1) + letter;
}
