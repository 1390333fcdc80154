import { readFileSync } from "node:fs";
import path from "node:path";
import vm from "node:vm";
import { version } from "../../package.json";
import { hostBridge, type InvocationResult } from "./hostBridge";
import type { PageThreads } from "./pageThreads";
import { marshal, type Argument, type CellError, type OmittedRepeat, type ParameterMetadata } from "./marshal";

export interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description?: string;
  readonly parameters: readonly ParameterMetadata[];
  readonly result: { readonly dimensionality?: "scalar" | "matrix" };
}

/** functions.json */
export interface Metadata {
  readonly allowErrorForDataTypeAny?: boolean;
  readonly allowCustomDataForDataTypeAny?: boolean;
  readonly functions: readonly FunctionMetadata[];
}

/** The two built files that Excel loads. */
export interface Build {
  readonly script: string;
  readonly metadata: Metadata;
}

/** A cell after calculation: an error with the message that its card shows, or a value or spilled table. */
export type CellAnswer = { readonly value: unknown } | AnswerError;

export interface AnswerError extends CellError {
  readonly message?: string;
}

export interface ExcelRuntime {
  readonly metadata: Metadata;
  /** The ids that the script associated with functions. */
  readonly associatedIds: readonly string[];
  /** The scripts that the page loaded after functions.js. */
  readonly loaded: readonly string[];
  /** Calculates one cell. In a spilled table, single cells may be `{ error, message }`. */
  readonly callCell: (id: string, args: readonly Argument[]) => Promise<CellAnswer>;
  /** Calculates many cells in one message, as Excel does when a column is filled. */
  readonly callMany: (calls: readonly (readonly [id: string, args: readonly Argument[]])[]) => Promise<CellAnswer[]>;
}

/** The folder of the last build that an institution serves. */
export const DEPLOYED = path.join("dist/addin", version);

/** Reads functions.js and functions.json that are deployed. */
export function readBuild(): Build {
  const text = (name: string): string => readFileSync(path.join(DEPLOYED, name), "utf8");
  return { script: text("functions.js"), metadata: JSON.parse(text("functions.json")) as Metadata };
}

/**
 * The built cell functions inside Microsoft's own custom-functions runtime, so that a test goes through the dispatch
 * that Excel uses: argument shapes, error codes and messages, JSON both ways.
 *
 * @param threads what the page has for threads beside it; without, it has none
 * @throws Error from a call, when Excel would refuse the formula
 */
export function loadExcelRuntime(
  build: Build = readBuild(),
  omittedRepeat: OmittedRepeat = "null",
  threads?: PageThreads,
): ExcelRuntime {
  const { script, metadata } = build;
  const loaded: string[] = [];
  const waiting = new Map<number, (result: InvocationResult) => void>();
  const bridge = hostBridge((result) => {
    waiting.get(result.id)?.(result);
    waiting.delete(result.id);
  });
  // A script that the bundle loads later lies beside functions.js.
  const page = browserPage(bridge.native, ({ src, onload }) => {
    const name = path.basename(src);
    loaded.push(name);
    vm.runInContext(readFileSync(path.join(DEPLOYED, name), "utf8"), page, { filename: name });
    setTimeout(() => onload({ type: "load" }), 0);
  });
  if (threads !== undefined) page.Worker = threads.Worker;
  vm.runInContext(readFileSync(MICROSOFT_RUNTIME, "utf8"), page, { filename: MICROSOFT_RUNTIME });
  vm.runInContext(script, page, { filename: "functions.js" });

  const flags =
    (metadata.allowErrorForDataTypeAny === true ? ALLOW_ERRORS : 0) +
    (metadata.allowCustomDataForDataTypeAny === true ? ALLOW_DATA_TYPES : 0);
  const dataTypes = metadata.allowCustomDataForDataTypeAny === true;
  const byId = new Map(metadata.functions.map((entry) => [entry.id, entry]));
  let lastId = 0;

  const callMany: ExcelRuntime["callMany"] = (calls) => {
    const invocations = calls.map(([id, args]) => {
      const entry = byId.get(id);
      if (entry === undefined) throw new Error(`functions.json declares no ${id}`);
      lastId += 1;
      return [lastId, id, marshal(entry.parameters, args, omittedRepeat, dataTypes), flags] as const;
    });
    const results = invocations.map(([id]) => new Promise<InvocationResult>((resolve) => waiting.set(id, resolve)));
    bridge.invoke(invocations);
    return Promise.all(results.map(async (result) => answer(await result)));
  };

  return {
    metadata,
    loaded,
    associatedIds: vm.runInContext("Object.keys(CustomFunctions._association.mappings)", page) as string[],
    callMany,
    callCell: async (id, args) => {
      const [only] = await callMany([[id, args]]);
      if (only === undefined) throw new Error(`${id} gave no answer`);
      return only;
    },
  };
}

const MICROSOFT_RUNTIME = "node_modules/@microsoft/office-js/dist/custom-functions-runtime.debug.js";
// Between batches of results the runtime pauses up to this long, for which no test need wait. Longer delays belong to
// the loading of other scripts of the page, which never come here; let to expire, they throw.
const LONGEST_PAUSE_MS = 15_000;
// The page asks this often whether a script is there that only a browser has, and gives up with an error after some
// hundred times, which without the pauses are over in a second.
const SCRIPT_POLL_MS = 100;
const RUNTIME_ADDRESS = "https://addin.example/custom-functions-runtime.debug.js";

// Flag and error numbers of the protocol, read from the same file.
const ALLOW_ERRORS = 4;
const ALLOW_DATA_TYPES = 8;
const ERRORS: Readonly<Record<number, string>> = { 1: "#N/A", 5: "#DIV/0!", 6: "#NUM!", 8: "#NULL!" };
const CODES_WITH_MESSAGE: readonly number[] = [1, 7];

/** A script element as the bundle fills it in. */
interface LaterScript {
  readonly src: string;
  readonly onload: (event: { readonly type: string }) => void;
}

/** As much of a browser page as the runtime touches. Language built-ins are the page's own, never this process's. */
const browserPage = (native: object, load: (script: LaterScript) => void): vm.Context => {
  const nothing = (): void => undefined;
  const element = (): object => ({ setAttribute: nothing, getAttribute: () => null, appendChild: nothing, style: {} });
  const location = { href: "https://addin.example/pane.html", search: "", hash: "", protocol: "https:" };
  const page = {
    _richApiNativeBridge: native,
    setTimeout: (task: () => void, delay: number, ...args: unknown[]) =>
      delay > LONGEST_PAUSE_MS || delay === SCRIPT_POLL_MS ? undefined : setTimeout(task, 0, ...args),
    clearTimeout,
    performance,
    console,
    location,
    history: {},
    navigator: { userAgent: "", language: "en-US" },
    addEventListener: nothing,
    document: {
      readyState: "complete",
      location,
      addEventListener: nothing,
      createElement: element,
      querySelectorAll: () => [],
      // The runtime finds its own script tag to learn where it was served from.
      getElementsByTagName: () => [{ ...element(), src: RUNTIME_ADDRESS, getAttribute: () => RUNTIME_ADDRESS }],
      head: { ...element(), appendChild: (script: LaterScript) => load(script) },
      body: element(),
    },
  };
  // A context without an object of ours as its global: there every global name would be looked up in that object first,
  // sixty times as slow. Before Node 20.18 there is no such context, and the slow one serves.
  const { DONT_CONTEXTIFY } = (vm as { readonly constants?: Partial<typeof vm.constants> }).constants ?? {};
  const context = Object.assign(vm.createContext(DONT_CONTEXTIFY), page);
  context["window"] = context["self"] = context["top"] = context["parent"] = context;
  return context;
};

const answer = ({ ok, value, errorCode = 0 }: InvocationResult): CellAnswer => {
  if (!ok) {
    const message = CODES_WITH_MESSAGE.includes(errorCode) && value !== "" ? { message: String(value) } : {};
    return { error: ERRORS[errorCode] ?? "#VALUE!", ...message };
  }
  if (isErrorObject(value)) return cellError(value);
  return { value: Array.isArray(value) ? value.map((row: unknown[]) => row.map(cell)) : value };
};

const cell = (value: unknown): unknown => (isErrorObject(value) ? cellError(value) : value);

interface ErrorObject {
  readonly code: string;
  readonly message?: string;
}

const isErrorObject = (value: unknown): value is ErrorObject =>
  typeof value === "object" && value !== null && "valueType" in value && value.valueType === "CustomFunctionError";

const cellError = ({ code, message }: ErrorObject): AnswerError =>
  message === undefined ? { error: code } : { error: code, message };
