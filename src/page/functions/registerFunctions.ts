import { BooleanNumber, type Injector } from "@univerjs/core";
import { BaseFunction, FunctionType, IFunctionService, type IFunctionInfo } from "@univerjs/engine-formula";
import { adaptFunction, type ErrorNotes, type GridAnswer } from "./adaptFunction";
import type { LoadedFunction } from "./loadFunctions";
import { NAMESPACE, type FunctionMetadata } from "./metadata";

/** The cell of a formula; rows and columns count from 0. */
export interface FormulaCell {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** Makes the functions known to the formula engine. */
export function registerFunctions(
  injector: Injector,
  functions: readonly LoadedFunction[],
  notesOf: (cell: FormulaCell) => ErrorNotes,
): void {
  injector.get(IFunctionService).registerExecutors(...functions.map((each) => new GridFunction(each, notesOf)));
}

/** What the grid shows about a function while it is typed. */
export function functionInfo({ name, description = "", parameters }: FunctionMetadata): IFunctionInfo {
  return {
    functionName: `${NAMESPACE}.${name}`,
    functionType: FunctionType.User,
    description,
    abstract: description,
    functionParameter: parameters.map((parameter) => ({
      name: parameter.name,
      detail: parameter.description ?? "",
      example: "",
      require: parameter.optional === true ? BooleanNumber.FALSE : BooleanNumber.TRUE,
      repeat: parameter.repeating === true ? BooleanNumber.TRUE : BooleanNumber.FALSE,
    })),
  };
}

/** Functions whose answer comes later, because their code is loaded when first asked for. */
const LATER: readonly string[] = ["SURVEY", "CUTLIST", "SHEETS", "LAYOUT", "ESTIMATE", "SHELF", "SIZES", "SIZE"];

class GridFunction extends BaseFunction {
  readonly #id: string;
  readonly #answer: ReturnType<typeof adaptFunction>;
  readonly #notesOf: (cell: FormulaCell) => ErrorNotes;

  constructor(loaded: LoadedFunction, notesOf: (cell: FormulaCell) => ErrorNotes) {
    super(`${NAMESPACE}.${loaded.metadata.name}`);
    this.#id = loaded.metadata.id;
    this.#answer = adaptFunction(loaded);
    this.#notesOf = notesOf;
  }

  override isCustom(): boolean {
    return true;
  }

  override isAsync(): boolean {
    return LATER.includes(this.#id);
  }

  override calculateCustom(...args: unknown[]): GridAnswer | Promise<GridAnswer> {
    const { row, column } = this;
    return this.#answer(args, this.#notesOf({ sheet: this.subUnitId ?? "", row, column }));
  }
}
