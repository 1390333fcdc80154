import { CellError, ERROR_CODES } from "./cellError";
import type { FunctionMetadata } from "./metadata";

/** A cell function as the add-in's script registers it. */
export type CellFunction = (...args: readonly unknown[]) => unknown;

export interface LoadedFunction {
  readonly metadata: FunctionMetadata;
  readonly call: CellFunction;
}

/**
 * Loads the add-in's own script of cell functions, as Excel does, and hands over what it registers.
 *
 * @param metadata the functions of `functions.json`
 * @param loadScript runs a script that lies beside the page
 * @throws Error when the script and its description do not agree
 */
export async function loadFunctions(
  metadata: readonly FunctionMetadata[],
  loadScript: (name: string) => Promise<void>,
): Promise<readonly LoadedFunction[]> {
  const known = new Map<string, CellFunction>();
  const associate = (functions: Readonly<Record<string, CellFunction>>): void => {
    for (const [id, call] of Object.entries(functions)) known.set(id, call);
  };
  Object.assign(globalThis, { [RUNTIME]: { associate, Error: CellError, ErrorCode: ERROR_CODES } });
  await loadScript("functions.js");
  return metadata.map((entry) => {
    const call = known.get(entry.id);
    if (call === undefined) throw new Error(`functions.js registers no ${entry.id}`);
    return { metadata: entry, call };
  });
}

/** The name under which the script looks for its host's runtime. */
const RUNTIME = "CustomFunctions";
