import { runInThisContext } from "node:vm";
import type { Injector, IUnitRange } from "@univerjs/core";
import type * as Engine from "@univerjs/engine-formula";
import { buildSync } from "esbuild";
import type * as CalculateInTurn from "../../src/page/grid/calculateInTurn";
import type * as IndexRangesOnce from "../../src/page/grid/indexRangesOnce";
import type * as ListFormulasOnce from "../../src/page/grid/listFormulasOnce";
import type * as ReadTextsOnce from "../../src/page/grid/readTextsOnce";
import { formulasOf, sameFormula } from "../../src/page/sharedFormulas";

/** The engine with our mends, put together as the page's build does: by itself it is no script that Node can read. */
function built() {
  const contents = `
    export * as engine from "@univerjs/engine-formula";
    export * from "./src/page/grid/calculateInTurn";
    export * from "./src/page/grid/indexRangesOnce";
    export * from "./src/page/grid/listFormulasOnce";
    export * from "./src/page/grid/readTextsOnce";`;
  const { outputFiles } = buildSync({
    stdin: { contents, resolveDir: process.cwd(), loader: "ts" },
    bundle: true,
    write: false,
    platform: "node",
    format: "cjs",
    mainFields: ["module", "main"],
    conditions: ["import"],
    // Of browsers alone.
    define: { reportError: "console.error" },
    logLevel: "error",
  });
  const made = { exports: {} };
  const run = runInThisContext(`(module, exports, require) => {${outputFiles[0]!.text}\n}`) as (
    ...given: unknown[]
  ) => void;
  run(made, made.exports, require);
  return made.exports as { engine: typeof Engine } & typeof CalculateInTurn &
    typeof IndexRangesOnce &
    typeof ListFormulasOnce &
    typeof ReadTextsOnce;
}

const { engine, calculateInTurn, indexRangesOnce, listFormulasOnce, readTextsOnce } = built();
const { DependencyManagerService, ValueObjectFactory } = engine;

const area = (sheetId: string, row: number, endRow = row): IUnitRange => ({
  unitId: "book",
  sheetId,
  range: { startRow: row, endRow, startColumn: 2, endColumn: 2 },
});

/** The engine's own keeper of what depends on what, and how many ranges it has put into its index. */
function manager() {
  const own = new DependencyManagerService();
  indexRangesOnce({ get: () => own } as unknown as Injector);
  const { _dependencyRTreeCache: index } = own as unknown as {
    _dependencyRTreeCache: { bulkInsert: (items: readonly unknown[]) => void };
  };
  const insert = jest.spyOn(index, "bulkInsert");
  const indexed = (): number => insert.mock.calls.reduce((count, [items]) => count + items.length, 0);
  const add = (tree: { treeId: number; rangeList: readonly IUnitRange[]; refOffsetY?: number }) =>
    own.addDependencyRTreeCache(tree as unknown as Engine.IFormulaDependencyTree);
  const found = (sheet: string, row: number): number[] => {
    own.openKdTree();
    const ids = [...own.searchDependency([area(sheet, row)])];
    own.closeKdTree();
    return ids.sort();
  };
  return { own, add, found, indexed };
}

test("what a formula reads is put into the engine's index once, and again when it reads something else", () => {
  const { add, found, indexed } = manager();
  const ranges = [area("Survey", 1), area("settings", 0, 60)];
  for (let calculation = 0; calculation < 3; calculation++) add({ treeId: 1, rangeList: [...ranges] });
  expect([indexed(), found("Survey", 1), found("settings", 7), found("Survey", 2)]).toEqual([2, [1], [1], []]);
  add({ treeId: 1, rangeList: [...ranges, area("Survey", 2)] });
  expect([indexed(), found("Survey", 2)]).toEqual([5, [1]]);
});

test("the moved ranges of a shared formula are made once", () => {
  const { add, found, indexed } = manager();
  const refTree = { rangeList: [area("Survey", 1), area("Survey", 5)] };
  let made = 0;
  const shared = (down: number) => ({
    treeId: 10 + down,
    refTree,
    refOffsetY: down,
    get rangeList() {
      made++;
      return [area("Survey", 1 + down), area("Survey", 5 + down)];
    },
  });
  for (let calculation = 0; calculation < 3; calculation++) for (const down of [1, 2]) add(shared(down));
  expect([made, indexed(), found("Survey", 7)]).toEqual([2, 4, [12]]);
});

test("a sheet that is taken in again leaves no formula of another sheet behind", () => {
  const { own, add, found } = manager();
  const tree = { treeId: 1, rangeList: [area("Survey", 1)] };
  own.addFormulaDependency("book", "Survey", 0, 9, { treeId: 2 } as never);
  add(tree);
  own.clearFormulaDependency("book", "Survey");
  expect(found("Survey", 1)).toEqual([]);
  add(tree);
  expect(found("Survey", 1)).toEqual([1]);
});

/** The engine's lister of formulas and its keeper of them, which note what they do at length. */
function listing() {
  const did: string[] = [];
  const note = <Answer>(what: string, answer: Answer): Answer => (did.push(what), answer);
  const node = { of: "=A2*2" };
  const lister = {
    _executedAddressFunctionNodeIds: new Set([1]),
    _getTreeNode: ({ formula }: { formula: string }) => note(`read ${formula}`, node),
    _detectForcedRecalculationNode: () => note("forced?", false),
    _getAddressFunctionNodeList: () => note("addresses?", [] as object[]),
    _calculateListByFunctionRefNode: () => Promise.resolve(note("followed", undefined)),
    _createVirtualFDtree: (_tree: object, _place: object): object => ({}),
    _generateTreeList: (trees: { formula: string; addressFunctionNodes: object[] }[]) => {
      for (const tree of trees) {
        const read = lister._getTreeNode(tree);
        lister._detectForcedRecalculationNode.call(lister, ...([tree, read] as unknown as []));
        lister._getAddressFunctionNodeList.call(lister, ...([read] as unknown as []));
      }
      return lister._calculateListByFunctionRefNode.call(lister, ...([trees] as unknown as []));
    },
  };
  const cells: Record<string, object> = { "1 2": { f: "=A2*2", si: "x" }, "2 2": { si: "x" }, "3 0": { v: 7 } };
  const sheet = { getCellRaw: (row: number, column: number) => cells[`${row} ${column}`] };
  const formulas = {
    _univerInstanceService: { getUnit: () => ({ getSheetBySheetId: () => sheet }) },
    updateFormulaData: (_book: string, _sheet: string, changed: object) => note("all formulas", changed),
  };
  const config = {
    _forceCalculate: true,
    loadDirtyRangesAndExcludedCell: (...filled: unknown[]) => did.push(`filled ${filled.length}`),
  };
  const parts = new Map<unknown, unknown>([
    [engine.IFormulaCurrentConfigService, config],
    [engine.IFormulaDependencyGenerator, lister],
    [engine.IDependencyManagerService, new DependencyManagerService()],
    [engine.FormulaDataModel, formulas],
  ]);
  listFormulasOnce({ get: (part: unknown) => parts.get(part) } as unknown as Injector);
  return { did, lister, formulas, config };
}

test("a formula that cells share is read once for each list, and cells are followed where a function may read any", async () => {
  const { did, lister } = listing();
  const shared = { formula: "=A2*2", addressFunctionNodes: [] as object[] };
  const once = ["read =A2*2", "forced?", "addresses?"];
  await lister._generateTreeList([shared, shared, shared]);
  expect([did, lister._executedAddressFunctionNodeIds.size]).toEqual([once, 0]);
  await lister._generateTreeList([shared, { ...shared, addressFunctionNodes: [{}] }]);
  expect(did).toEqual([...once, ...once, "followed"]);
});

test("a cell that shares a formula is listed as the engine does it", () => {
  const { lister } = listing();
  const first = Object.assign(new engine.FormulaDependencyTree(7), { row: 4, column: 2, subUnitId: "Survey" });
  const [one, other] = [{ x: 0, y: 3 }, { y: 1 }].map(
    (place) => lister._createVirtualFDtree(first, place) as Engine.FormulaDependencyTreeVirtual,
  );
  const own = Object.assign(new engine.FormulaDependencyTreeVirtual(), {
    refTree: first,
    refOffsetX: 0,
    refOffsetY: 3,
    treeId: one!.treeId,
  });
  expect(one).toEqual(own);
  expect([one!.row, one!.column, one!.subUnitId, one!.isVirtual, other!.row]).toEqual([7, 2, "Survey", true, 5]);
  expect(other!.treeId).not.toBe(one!.treeId);
});

test("after all formulas, only those that read what others fill are worked out once more", () => {
  const { did, config } = listing();
  config.loadDirtyRangesAndExcludedCell([area("Survey", 1)], {});
  expect([did, config._forceCalculate]).toEqual([["filled 2"], false]);
});

test("only what touches a formula makes the engine go through all formulas", () => {
  const { did, formulas } = listing();
  const change = (row: number, column: number, cell: object | null) =>
    formulas.updateFormulaData("book", "Survey", { [row]: { [column]: cell } });
  for (const cell of [{ v: 8 }, null]) expect(change(3, 0, cell)).toEqual({});
  expect(did).toEqual([]);
  for (const row of [1, 2]) expect(change(row, 2, { v: 8 })).toEqual({ [row]: { 2: { v: 8 } } });
  expect(change(3, 0, { f: "=B4" })).toEqual({ 3: { 0: { f: "=B4" } } });
  expect(did).toHaveLength(3);
});

test("a text is what it is for the engine, also when it is read again", () => {
  const texts = [
    "height",
    '"quoted ""twice"""',
    "2024-05-12",
    "10%",
    "0017",
    "#N/A",
    "true",
    "312.5",
    "",
    "a;b",
    "{1,2}",
  ];
  const read = (text: string, plain?: boolean) => {
    const made = ValueObjectFactory.create(text, plain);
    return [made.isString(), made.isNumber(), made.isError(), made.isArray() ? "array" : made.getValue()];
  };
  const before = texts.map((text) => [read(text), read(text, true)]);
  readTextsOnce();
  for (let times = 0; times < 2; times++) expect(texts.map((text) => [read(text), read(text, true)])).toEqual(before);
});

test("formulas are the same when they read the same, however they are shared", () => {
  const one = formulasOf({ 1: { 2: { f: "=A2", si: "x" } }, 2: { 2: { si: "x" } }, 3: { 2: { f: "=A9" } } });
  const other = formulasOf({ 1: { 2: { f: "=A2", si: "y" } }, 2: { 2: { f: "=A3" } }, 3: { 2: { si: "y" } } });
  expect([1, 2, 3, 4].map((row) => sameFormula(one, other, row, 2))).toEqual([true, true, false, true]);
});

/** The engine's parts that calculations pass through, in the order in which they are asked for. */
function calculating() {
  const begun: object[] = [];
  const trigger = {
    _waitingCommandQueue: [] as object[],
    _executingDirtyData: {},
    _setTimeoutKey: undefined as ReturnType<typeof setTimeout> | undefined,
    _generateDirty: (noted: readonly object[]) => Object.assign({}, ...noted) as object,
    _mergeDirty: (one: object, other: object) => ({ ...one, ...other }),
    _resetExecutingDirtyData: () => undefined,
  };
  const engine = {
    execute: () => Promise.resolve(),
    _executeLock: { acquire: (_: string, task: () => Promise<void>) => task() },
  };
  const calculator = {
    _calculate: (changed: object) => {
      begun.push(changed);
      return engine.execute();
    },
  };
  let listener: (command: object) => void = () => undefined;
  const commands = {
    onCommandExecuted: (listen: typeof listener) => (listener = listen),
    executeCommand: (_id: string, changed: object) => calculator._calculate(changed),
  };
  const parts = [trigger, calculator, engine, commands];
  const calculations = calculateInTurn({ get: () => parts.shift() } as unknown as Injector);
  /** A command changes a cell; the engine's own listener has noted it before ours hears of it. */
  const change = (command: object): void => {
    trigger._waitingCommandQueue.push(command);
    clearTimeout(trigger._setTimeoutKey);
    trigger._setTimeoutKey = setTimeout(() => begun.push({ late: true }), 100);
    listener(command);
  };
  return { begun, trigger, calculator, calculations, change };
}

test("what is calculated while a workbook opens waits until it is drawn, and all of it is one calculation", async () => {
  const { begun, calculator, calculations } = calculating();
  await calculations.opening("stored results hold", async () => {
    for (const sheet of ["Survey", "settings"]) void calculator._calculate({ [sheet]: "changed" });
    await new Promise((resolve) => setTimeout(resolve, 0));
    expect(begun).toEqual([]);
  });
  expect(begun).toEqual([]);
  await calculations.settled();
  expect(begun).toMatchObject([{ Survey: "changed", settings: "changed" }]);
});

test("what follows from a change is waited for from the change on", async () => {
  const { begun, trigger, calculator, calculations } = calculating();
  trigger._waitingCommandQueue = [{ id: "a cell" }];
  const settled = calculations.settled().then(() => begun.length);
  await new Promise((resolve) => setTimeout(resolve, 0));
  void calculator._calculate({ Survey: "changed" });
  trigger._waitingCommandQueue = [];
  expect(await settled).toBe(1);
});

test("changes of one key are one calculation, which does not wait for the engine's own time", async () => {
  const { begun, change, calculations } = calculating();
  change({ C2: "changed" });
  change({ D2: "changed" });
  await calculations.settled();
  await new Promise((resolve) => setTimeout(resolve, 150));
  expect(begun).toEqual([{ C2: "changed", D2: "changed" }]);
});
