import { ICommandService, type Injector } from "@univerjs/core";
import {
  CalculateController,
  ICalculateFormulaService,
  SetFormulaCalculationStartMutation,
} from "@univerjs/engine-formula";
import { TriggerCalculationController } from "@univerjs/sheets-formula";

/** What the engine notes of cells that changed. */
type Changed = Readonly<Record<string, unknown>>;

/** Asks for a calculation when cells have changed. */
interface Trigger {
  _waitingCommandQueue: readonly unknown[];
  _setTimeoutKey: ReturnType<typeof setTimeout>;
  /** What was noted and is not in hand yet. */
  _executingDirtyData: Changed;
  readonly _generateDirty: (commands: readonly unknown[]) => Changed;
  readonly _mergeDirty: (one: Changed, other: Changed) => Changed;
  readonly _resetExecutingDirtyData: () => void;
}

interface Calculator {
  _calculate: (changed: Changed) => Promise<void>;
}

interface Engine {
  execute: (work: unknown) => Promise<void>;
  readonly _executeLock: { readonly acquire: (key: string, task: () => Promise<void>) => Promise<void> };
}

/** The calculations of the engine. */
export interface Calculations {
  /** Waits until none runs or waits. */
  readonly done: () => Promise<void>;
  /** The same, also for those that cells changed just now will ask for. */
  readonly settled: () => Promise<void>;
  /**
   * Opens a workbook. By itself the engine takes all cells of its tables for changed, and works out every formula that
   * reads them: not needed where the stored results hold, nor where all is worked out afterwards.
   */
  readonly opening: (then: "stored results hold" | "all is worked out", open: () => Promise<void>) => Promise<void>;
}

/**
 * How long more changes are waited for before they are worked out, ms: for those that come of one key. The engine's own
 * tenth of a second is a good part of what an edit takes.
 */
const SOON = 20;

/** The key of the engine's own lock. */
const ENGINE_LOCK = "FORMULA_EXECUTION_LOCK";

/**
 * Lets one calculation run at a time, each to its end. When a cell changes during a calculation, the engine by itself
 * breaks it off and forgets which formulas it had left: they stay blank. Here the change waits for its turn.
 */
export function calculateInTurn(injector: Injector): Calculations {
  const trigger = injector.get(TriggerCalculationController) as unknown as Trigger;
  const calculator = injector.get(CalculateController) as unknown as Calculator;
  const engine = injector.get(ICalculateFormulaService) as unknown as Engine;
  const { _calculate: calculate } = calculator;
  const { execute } = engine;

  // A calculation under way is what makes the trigger break it off: it sees none.
  Object.defineProperty(trigger, "_executionInProgressParams", { get: () => null, set: () => {} });

  const commands = injector.get(ICommandService);
  const take = (): void => {
    const noted = trigger._generateDirty(trigger._waitingCommandQueue);
    trigger._waitingCommandQueue = [];
    trigger._executingDirtyData = trigger._mergeDirty(trigger._executingDirtyData, noted);
    void commands.executeCommand(
      SetFormulaCalculationStartMutation.id,
      { ...trigger._executingDirtyData },
      { onlyLocal: true },
    );
  };
  commands.onCommandExecuted((command) => {
    if (trigger._waitingCommandQueue.at(-1) !== command) return;
    clearTimeout(trigger._setTimeoutKey);
    trigger._setTimeoutKey = setTimeout(take, SOON);
  });

  let done = Promise.resolve();
  engine.execute = (work) => (done = toItsEnd(execute.call(engine, work), engine));

  let waiting: Changed | undefined;
  let turns: Promise<void> | undefined;
  /** Until a workbook that opens is drawn, calculations would hold that up. */
  let drawn = Promise.resolve();
  const takeTurns = async (): Promise<void> => {
    await drawn;
    while (waiting !== undefined) {
      const next: Changed = waiting;
      waiting = undefined;
      void calculate.call(calculator, next);
      await done.catch(reportError);
    }
    turns = undefined;
  };
  /** What is worked out of what the engine notes; undefined for nothing. */
  let wanted: (noted: Changed) => Changed | undefined = (noted) => noted;
  calculator._calculate = async (noted) => {
    const changed = wanted(noted);
    // What has changed is in hand now; the trigger notes what comes after.
    trigger._resetExecutingDirtyData();
    if (changed === undefined) return;
    waiting = waiting === undefined ? changed : { ...changed, ...trigger._mergeDirty(waiting, changed) };
    turns ??= takeTurns();
    await turns;
  };
  return {
    done: () => turns ?? Promise.resolve(),
    settled: async () => {
      for (;;) {
        if (turns !== undefined) await turns;
        else if (trigger._waitingCommandQueue.length > 0) await new Promise((resolve) => setTimeout(resolve, SOON));
        else return;
      }
    },
    opening: async (then, open) => {
      const before = wanted;
      // The formulas are taken in all the same: what depends on which cell.
      wanted = (noted) =>
        then === "all is worked out" ? undefined : { ...noted, dirtyRanges: [], dirtySuperTableMap: {} };
      let isDrawn: () => void = () => undefined;
      drawn = new Promise((resolve) => (isDrawn = resolve));
      try {
        await open();
        // What was noted by now would come a little later, when somebody may have typed.
        clearTimeout(trigger._setTimeoutKey);
        const noted = trigger._generateDirty(trigger._waitingCommandQueue);
        trigger._waitingCommandQueue = [];
        void calculator._calculate(noted);
      } finally {
        wanted = before;
        // Whoever waits for the workbook comes first.
        setTimeout(isDrawn, 0);
      }
    },
  };
}

/** The engine's own promise resolves while the work still waits for its lock. */
async function toItsEnd(started: Promise<void>, { _executeLock: lock }: Engine): Promise<void> {
  await started;
  await lock.acquire(ENGINE_LOCK, () => Promise.resolve());
}
