import type { IObjectMatrixPrimitiveType, Injector, Nullable } from "@univerjs/core";
import {
  FormulaDataModel,
  FormulaDependencyTreeVirtual,
  IFormulaCurrentConfigService,
  IDependencyManagerService,
  IFormulaDependencyGenerator,
} from "@univerjs/engine-formula";
import { gridCells } from "../gridCells";
import { known } from "./known";

/** A formula of a cell as the engine lists it. */
interface Tree {
  readonly formula: string;
  readonly addressFunctionNodes: readonly unknown[];
}

/** Lists all formulas before a calculation, and finds those to be worked out. */
interface Lister {
  _generateTreeList: (...given: unknown[]) => Promise<unknown>;
  _getTreeNode: (tree: Tree) => object;
  _detectForcedRecalculationNode: (tree: Tree, node: object) => boolean;
  _getAddressFunctionNodeList: (node: object) => readonly unknown[];
  _calculateListByFunctionRefNode: (trees: readonly Tree[]) => Promise<void>;
  _createVirtualFDtree: (tree: Tree, place: { readonly x?: number; readonly y?: number }) => object;
  readonly _executedAddressFunctionNodeIds: Set<unknown>;
}

/** A cell, or what a change makes of it. */
type Cell = Nullable<{ readonly f?: Nullable<string>; readonly si?: Nullable<string> }>;
type Cells = IObjectMatrixPrimitiveType<Cell>;

/** What a calculation is asked for. */
interface Config {
  /** Asks for the formulas that read what other formulas fill, when all else is worked out. */
  loadDirtyRangesAndExcludedCell: (...filled: unknown[]) => void;
  /** Whether every formula is to be worked out. */
  _forceCalculate: boolean;
}

interface Formulas {
  updateFormulaData: (bookId: string, sheetId: string, changed: Cells) => object;
  readonly _univerInstanceService: {
    readonly getUnit: (bookId: string) => {
      readonly getSheetBySheetId: (sheetId: string) => Nullable<{ getCellRaw: (row: number, column: number) => Cell }>;
    };
  };
}

/** The engine never adds to them. */
const NO_TREES: ReadonlySet<never> = new Set();
const NO_NODES: readonly never[] = [];

/**
 * Keeps the engine from reading a formula again for each cell that shares it. Before it calculates, it lists the formulas
 * of all cells; by itself it looks each up by its text, searches all of its parts twice, and puts its cell into an index
 * that only functions such as INDIRECT need: with 3,000 rows that is most of the time of an edit. When all is to be worked
 * out and a formula fills several cells, it even works out everything twice.
 */
export function listFormulasOnce(injector: Injector): void {
  const lister = injector.get(IFormulaDependencyGenerator) as unknown as Lister;
  const numbers = injector.get(IDependencyManagerService);
  const { _generateTreeList: list, _getTreeNode: read, _detectForcedRecalculationNode: isForced } = lister;
  const { _getAddressFunctionNodeList: addresses, _calculateListByFunctionRefNode: follow } = lister;
  // What was read lasts for one list: another calculation may read the same text otherwise, such as a name that changed.
  let reads = new Map<string, object>();
  let forced = new Map<object, boolean>();
  let addressed = new Map<object, readonly unknown[]>();
  lister._generateTreeList = async (...given) => {
    reads = new Map();
    forced = new Map();
    addressed = new Map();
    return list.apply(lister, given);
  };
  lister._getTreeNode = (tree) => known(reads, tree.formula, () => read.call(lister, tree));
  lister._detectForcedRecalculationNode = (tree, node) => known(forced, node, () => isForced.call(lister, tree, node));
  lister._getAddressFunctionNodeList = (node) => known(addressed, node, () => addresses.call(lister, node));
  lister._calculateListByFunctionRefNode = async (trees) => {
    if (trees.some(({ addressFunctionNodes }) => addressFunctionNodes.length > 0)) return follow.call(lister, trees);
    lister._executedAddressFunctionNodeIds.clear();
  };
  // Thousands of records, which the engine's own constructor fills one defined property after the other.
  lister._createVirtualFDtree = (refTree, { x = 0, y = 0 }) => ({
    __proto__: FormulaDependencyTreeVirtual.prototype,
    _state: 0,
    type: 0,
    treeId: numbers.getLastTreeId(),
    children: NO_TREES,
    parents: NO_TREES,
    refTree,
    refOffsetX: x,
    refOffsetY: y,
    isCache: false,
    isDirty: false,
    addressFunctionNodes: NO_NODES,
    getDirtyData: undefined,
    featureId: undefined,
  });

  const config = injector.get(IFormulaCurrentConfigService) as unknown as Config;
  const { loadDirtyRangesAndExcludedCell: takeFilled } = config;
  config.loadDirtyRangesAndExcludedCell = (...filled) => {
    takeFilled.apply(config, filled);
    config._forceCalculate = false;
  };

  const formulas = injector.get(FormulaDataModel) as unknown as Formulas;
  const { updateFormulaData: update } = formulas;
  formulas.updateFormulaData = (bookId, sheetId, changed) => {
    const sheet = formulas._univerInstanceService.getUnit(bookId).getSheetBySheetId(sheetId);
    let isPlain = true;
    for (const [row, column, cell] of gridCells(changed))
      isPlain &&= !hasFormula(cell) && !hasFormula(sheet?.getCellRaw(row, column));
    // What is typed over a value changes no formula.
    return isPlain ? {} : update.call(formulas, bookId, sheetId, changed);
  };
}

function hasFormula(cell: Cell): boolean {
  return Boolean(cell?.f) || Boolean(cell?.si);
}
