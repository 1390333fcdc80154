import type { Injector } from "@univerjs/core";
import { CalculateController, ICalculateFormulaService } from "@univerjs/engine-formula";
import { TriggerCalculationController } from "@univerjs/sheets-formula";

/** What the engine notes of cells that changed. */
type Changed = Readonly<Record<string, unknown>>;

/** Asks for a calculation when cells have changed. */
interface Trigger {
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

/** The key of the engine's own lock. */
const ENGINE_LOCK = "FORMULA_EXECUTION_LOCK";

/**
 * Lets one calculation run at a time, each to its end. When a cell changes during a calculation, the engine by itself
 * breaks it off and forgets which formulas it had left: they stay blank. Here the change waits for its turn.
 *
 * @returns waits until no calculation runs or waits
 */
export function calculateInTurn(injector: Injector): () => Promise<void> {
  const trigger = injector.get(TriggerCalculationController) as unknown as Trigger;
  const calculator = injector.get(CalculateController) as unknown as Calculator;
  const engine = injector.get(ICalculateFormulaService) as unknown as Engine;
  const { _calculate: calculate } = calculator;
  const { execute } = engine;

  // A calculation under way is what makes the trigger break it off: it sees none.
  Object.defineProperty(trigger, "_executionInProgressParams", { get: () => null, set: () => undefined });

  let done = Promise.resolve();
  engine.execute = (work) => (done = toItsEnd(execute.call(engine, work), engine));

  let waiting: Changed | undefined;
  let turns: Promise<void> | undefined;
  const takeTurns = async (): Promise<void> => {
    while (waiting !== undefined) {
      const next: Changed = waiting;
      waiting = undefined;
      void calculate.call(calculator, next);
      await done.catch(reportError);
    }
    turns = undefined;
  };
  calculator._calculate = async (changed) => {
    // What has changed is in hand now; the trigger notes what comes after.
    trigger._resetExecutingDirtyData();
    waiting = waiting === undefined ? changed : { ...changed, ...trigger._mergeDirty(waiting, changed) };
    turns ??= takeTurns();
    await turns;
  };
  return () => turns ?? Promise.resolve();
}

/** The engine's own promise resolves while the work still waits for its lock. */
async function toItsEnd(started: Promise<void>, { _executeLock: lock }: Engine): Promise<void> {
  await started;
  await lock.acquire(ENGINE_LOCK, () => Promise.resolve());
}
