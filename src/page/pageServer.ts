import { InputError, Unavailable } from "../measure/errors";
import { Fault } from "../measure/fault";
import type { WorkbookEdits } from "../workbook/edits";
import type { FunctionMetadata } from "./functions/metadata";
import type { OpenedBook } from "./openedBook";
import type { WrittenBook } from "./openedBook";

/** What the page asks of its server. Whatever the server refuses is thrown as an error with its message. */
export interface PageServer {
  readonly functions: () => Promise<readonly FunctionMetadata[]>;
  readonly book: () => Promise<OpenedBook>;
  readonly open: (file: File) => Promise<OpenedBook>;
  /** Takes over what changed in the cells, then what the pane writes; nothing goes to the disk. */
  readonly write: (cells: WorkbookEdits, write: WorkbookEdits) => Promise<WrittenBook>;
  /** Takes back the last write of the pane, and keeps what was changed in other cells since. */
  readonly takeBack: (cells: WorkbookEdits) => Promise<OpenedBook>;
  readonly save: (cells: WorkbookEdits) => Promise<{ readonly name: string; readonly notes: readonly string[] }>;
}

/** The server that the page came from. */
export function pageServer(): PageServer {
  return {
    functions: async () => (await request<{ functions: FunctionMetadata[] }>("functions.json")).functions,
    book: () => request("book"),
    open: (file) => request(`open?name=${encodeURIComponent(file.name)}`, file),
    write: (cells, write) => request("write", JSON.stringify({ cells, write })),
    takeBack: (cells) => request("take-back", JSON.stringify({ cells })),
    save: (cells) => request("save", JSON.stringify({ cells })),
  };
}

async function request<Answer>(path: string, body?: BodyInit): Promise<Answer> {
  const answer = await fetch(path, body === undefined ? {} : { method: "POST", body }).catch(() => {
    throw new Unavailable("The program that serves this page is not running any more: start it again.");
  });
  if (answer.ok) return (await answer.json()) as Answer;
  const text = await answer.text();
  throw answer.headers.get("Content-Type") === "application/json" ? refusal(text) : new Fault(text);
}

/** What the server refused, in the user's words. */
function refusal(text: string): InputError {
  const { argument, got, expected, cure } = JSON.parse(text) as InputError;
  return new InputError(argument, got, expected, cure);
}
