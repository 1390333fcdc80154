import { InputError, Unavailable } from "../measure/errors";
import { Fault } from "../measure/fault";
import type { WorkbookEdits } from "../workbook/edits";
import type { FunctionMetadata } from "./functions/metadata";
import type { OpenedBook, StartedBook, WrittenBook } from "./openedBook";

/** What the page asks of its server. Whatever the server refuses is thrown as an error with its message. */
export interface PageServer {
  readonly functions: () => Promise<readonly FunctionMetadata[]>;
  readonly book: () => Promise<StartedBook>;
  /** Answers when the server is there, and knows this browser. */
  readonly alive: () => Promise<void>;
  readonly open: (file: File) => Promise<StartedBook>;
  /** The workbook of an earlier page, with its changes that were not saved. */
  readonly resume: (document: string) => Promise<StartedBook>;
  /** Forgets the unsaved changes of an earlier page. */
  readonly discard: (document: string) => Promise<void>;
  /** Tells what changed in the cells; when it is not saved, the server keeps it beside the file. */
  readonly keep: (cells: WorkbookEdits, unsaved: boolean) => Promise<void>;
  /** Takes over what changed in the cells, then what the pane writes. The file is not touched. */
  readonly write: (cells: WorkbookEdits, write: WorkbookEdits) => Promise<WrittenBook>;
  /** Takes back the last write of the pane, and keeps what was changed in other cells since. */
  readonly takeBack: (cells: WorkbookEdits) => Promise<OpenedBook>;
  /** A name for a new file in the same folder, which no file there has. */
  readonly newName: () => Promise<string>;
  /** @param name of a new file in the same folder; else the next free name, or that of the save before */
  readonly save: (cells: WorkbookEdits, name?: string) => Promise<SavedFile>;
}

/** Where a save went. */
export interface SavedFile {
  readonly path: string;
  readonly name: string;
  /** Notes for the user, in plain words. */
  readonly notes: readonly string[];
}

/** The server that the page came from, for the workbook that this page has open. */
export function pageServer(): PageServer {
  let at = "";
  let base = "";
  // From its first write on, the workbook is more than the file with other cells.
  const writing = <Answer>(what: string, body: object): Promise<Answer> => {
    const asked = request<Answer>(`${what}?${at}${base}`, JSON.stringify(body));
    base = "";
    return asked;
  };
  const started = async (asked: Promise<StartedBook>): Promise<StartedBook> => {
    const book = await asked;
    at = `document=${book.document}`;
    base = book.base === undefined ? "" : `&base=${book.base}`;
    return book;
  };
  return {
    functions: async () => (await request<{ functions: FunctionMetadata[] }>("functions.json")).functions,
    book: () => started(request("book")),
    alive: () => request("alive"),
    open: (file) => started(request(`open?name=${encodeURIComponent(file.name)}`, file)),
    resume: (document) => started(request(`resume?document=${document}`, "")),
    discard: (document) => request(`discard?document=${document}`, ""),
    keep: (cells, unsaved) => request(`keep?${at}${base}`, JSON.stringify({ cells, unsaved })),
    write: (cells, write) => writing("write", { cells, write }),
    takeBack: (cells) => writing("take-back", { cells }),
    newName: async () => (await request<{ name: string }>(`new-name?${at}${base}`)).name,
    save: (cells, name) =>
      request(
        `save?${at}${base}${name === undefined ? "" : `&name=${encodeURIComponent(name)}`}`,
        JSON.stringify({ cells }),
      ),
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
