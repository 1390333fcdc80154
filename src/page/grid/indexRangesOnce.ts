import type { Injector, IUnitRange } from "@univerjs/core";
import { IDependencyManagerService } from "@univerjs/engine-formula";

/** A formula as the engine knows it: its own ranges, or those of the formula that it shares, moved. */
interface Tree {
  readonly treeId: number;
  readonly rangeList: readonly IUnitRange[];
  readonly refTree?: { readonly rangeList: readonly IUnitRange[] } | null;
  readonly refOffsetX: number;
  readonly refOffsetY: number;
}

interface Manager {
  addDependencyRTreeCache: (tree: Tree) => void;
  reset: () => void;
  _removeAllTreeMap: (treeId: number | null | undefined) => void;
  _removeDependencyRTreeCacheById: (unitId: string, sheetId: string) => void;
}

/**
 * Keeps the engine from putting the ranges of every formula into its index again at each calculation, where they pile
 * up: with 3,000 rows that is most of the time of an edit. It also makes the list of a shared formula again for
 * each range that it reads; here it is made once.
 */
export function indexRangesOnce(injector: Injector): void {
  const manager = injector.get(IDependencyManagerService) as unknown as Manager;
  const { addDependencyRTreeCache: add, reset, _removeAllTreeMap: drop } = manager;
  const { _removeDependencyRTreeCacheById: dropSheet } = manager;
  const indexed = new Map<number, string>();
  const keyOf = keysOfRanges();
  manager.addDependencyRTreeCache = (tree: Tree) => {
    const key = keyOf(tree);
    if (indexed.get(tree.treeId) === key) return;
    indexed.set(tree.treeId, key);
    const { treeId, rangeList, refOffsetX, refOffsetY } = tree;
    add.call(manager, { treeId, rangeList, refOffsetX, refOffsetY });
  };
  manager._removeAllTreeMap = (treeId) => {
    if (typeof treeId === "number") indexed.delete(treeId);
    drop.call(manager, treeId);
  };
  manager.reset = () => {
    indexed.clear();
    reset.call(manager);
  };
  // What formulas of other sheets read of this one is dropped too, and the engine counts on its being put back.
  manager._removeDependencyRTreeCacheById = (unitId, sheetId) => {
    indexed.clear();
    dropSheet.call(manager, unitId, sheetId);
  };
}

/** Names the ranges that a formula reads: the same name, the same ranges. */
function keysOfRanges(): (tree: Tree) => string {
  const numbers = new Map<string, number>();
  const known = new WeakMap<readonly IUnitRange[], number>();
  return (tree) => {
    const ranges = (tree.refTree ?? tree).rangeList;
    let number = known.get(ranges);
    if (number === undefined) {
      const text = ranges.map(({ unitId, sheetId, range }) => {
        const { startRow, startColumn, endRow, endColumn } = range;
        return [unitId, sheetId, startRow, startColumn, endRow, endColumn].join(" ");
      });
      const name = text.join("\n");
      number = numbers.get(name) ?? numbers.size;
      numbers.set(name, number);
      known.set(ranges, number);
    }
    return `${number} ${tree.refOffsetX} ${tree.refOffsetY}`;
  };
}
