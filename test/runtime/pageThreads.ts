import { readFileSync } from "node:fs";
import path from "node:path";
import { Worker as NodeThread } from "node:worker_threads";

/** The threads that a page starts, as threads of Node. */
export interface PageThreads {
  /** What a page calls `Worker`. */
  readonly Worker: (script: string) => object;
  /** The scripts that were started. */
  readonly started: readonly string[];
  readonly end: () => Promise<void>;
}

/** What a script finds in a browser's thread. */
const PRELUDE = `
  const { parentPort } = require("node:worker_threads");
  globalThis.self = globalThis;
  globalThis.postMessage = (message) => parentPort.postMessage(message);
  globalThis.addEventListener = (type, listener) => type === "message" && parentPort.on("message", (data) => listener({ data }));
`;

interface PageThread {
  onmessage?: (event: { readonly data: unknown }) => void;
  onerror?: (error: unknown) => void;
  readonly postMessage: (message: unknown) => void;
}

/** @param folder where the scripts lie */
export function pageThreads(folder: string): PageThreads {
  const threads: NodeThread[] = [];
  const started: string[] = [];
  // Called with `new`, it answers with the object that it makes.
  function Worker(script: string): PageThread {
    const thread = new NodeThread(PRELUDE + readFileSync(path.join(folder, script), "utf8"), { eval: true });
    threads.push(thread);
    started.push(script);
    const own: PageThread = { postMessage: (message) => thread.postMessage(message) };
    thread.on("message", (data) => own.onmessage?.({ data }));
    thread.on("error", (error) => own.onerror?.(error));
    return own;
  }
  return {
    Worker,
    started,
    end: async () => {
      await Promise.all(threads.map((thread) => thread.terminate()));
    },
  };
}
